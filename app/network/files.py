"""Networks and their files. In a window the plans of junctions are named in full, in a file beside it."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path
from typing import Final

import msgspec

from app.commands.file_words import NETWORK_WORDS
from app.commands.files import FileKind, plan_in
from model.files.network_file import FILE_LIMIT, network_bytes, parse_network, with_plans_there
from model.files.opening import bytes_of, check_ordinary
from model.network.network import Network

ENDING: Final = ".network.json"


def read(path: Path, beside: Path | None = None) -> Network:
    """The network in a file, with the plans that can be read; ``beside``: where it belongs, if it is a copy.

    Raises PlanFileError or OSError.
    """
    check_ordinary(path)
    own = (beside or path).absolute()
    network = parse_network(bytes_of(path, FILE_LIMIT), str(path))
    named = _renamed(network, lambda plan: os.path.normpath(own.parent / plan))
    return with_plans_there(named, str(own), plan_in)


def to_bytes(network: Network, path: Path | None) -> bytes:
    """What stands in its file; one that has none yet names plans in full."""
    if path is None:
        return network_bytes(network)
    folder = path.absolute().parent
    return network_bytes(_renamed(network, lambda plan: _beside(plan, folder)))


def _beside(plan: str, folder: Path) -> str:
    try:
        return Path(os.path.relpath(plan, folder)).as_posix()
    except ValueError:  # another drive
        return plan


def _renamed(network: Network, name: Callable[[str], str]) -> Network:
    junctions = tuple(
        junction if junction.plan is None else msgspec.structs.replace(junction, plan=name(junction.plan))
        for junction in network.junctions
    )
    return network.replace(junctions=junctions)


NETWORKS: Final = FileKind("network", ENDING, NETWORK_WORDS, read)
