"""File names made from titles stay in their folder, and are legal on three systems.

Sources, from memory: POSIX (no slash, no NUL; 255 bytes), Microsoft's "Naming Files, Paths, and Namespaces"
(forbidden characters, reserved names, no trailing dot or space), Apple's APFS (255 UTF-8 bytes).
"""

from __future__ import annotations

from pathlib import PurePosixPath, PureWindowsPath

import pytest

from app.claim import _key
from app.commands.files import PLANS, FileKind, file_name
from app.network.files import NETWORKS
from tests.harness.names import hostile_names

FORBIDDEN = set('<>:"/\\|?*') | {chr(code) for code in range(32)} | {"\x7f"}
PORTS = [f"{port}{digit}" for port in ("com", "lpt") for digit in "0123456789¹²³"]
DEVICES = {"con", "prn", "aux", "nul", *PORTS}


def is_legal(name: str) -> bool:
    """On Linux, macOS and Windows alike, as one step of a path."""
    return (
        0 < len(name.encode()) <= 255
        and not FORBIDDEN & set(name)
        and name not in (".", "..")
        and name[-1] not in ". "
        and name.partition(".")[0].lower() not in DEVICES
        and PurePosixPath(name).parts == (name,) == PureWindowsPath(name).parts
    )


def check(titles: list[str], kind: FileKind) -> None:
    for title in titles:
        name = file_name(title, kind)
        assert is_legal(name), (title, name)
        assert kind.is_for(PurePosixPath(name))  # type: ignore[arg-type]


@pytest.mark.parametrize("kind", [PLANS, NETWORKS], ids=lambda kind: kind.word)
def test_names_of_files_are_legal_everywhere(kind: FileKind) -> None:
    check(hostile_names(2_000, 1), kind)


@pytest.mark.slow
@pytest.mark.parametrize("kind", [PLANS, NETWORKS], ids=lambda kind: kind.word)
def test_names_of_many_files_are_legal_everywhere(kind: FileKind) -> None:
    check(hostile_names(20_000, 2), kind)


@pytest.mark.parametrize("name", ["con.plan.json", "a/b", "..", "a:b.plan.json", "end.", "NUL", "x" * 256])
def test_a_name_that_is_legal_nowhere_is_seen(name: str) -> None:
    """Controls that must fail."""
    assert not is_legal(name)


def test_different_files_never_share_a_claim(tmp_path) -> None:
    """What is kept about a file while it is open lies under a name made of all of its path."""
    names = [name for name in hostile_names(2_000, 3, as_arms=True) if name.isprintable()]
    keys = {_key(tmp_path / name) for name in names if name not in (".", "..")}
    assert len(keys) == len({name for name in names if name not in (".", "..")})
    assert all(is_legal(f"{key}.open.lock") for key in keys)
