"""Network files: reading one, with the plan files that it names, and the bytes to write."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path
from typing import Any, Final

import msgspec
from msgspec import DecodeError, ValidationError
from msgspec.structs import replace

from model.collector import collector_paused
from model.files.careful import WrittenFloat, careful_json
from model.files.decoding import WHOLE_FLOAT, at_most_unknown, check_header, place_and_missing
from model.files.document import Header
from model.files.errors import PlaceError, PlanFileError
from model.files.limits import UNKNOWN_LIMIT, at_most_values, values_in
from model.files.network_document import FORMAT, OBJECTS_BELOW, NetworkDoc, expected_at
from model.files.network_encoding import network_bytes
from model.files.network_reading import network_of_document
from model.files.opening import at_most, bytes_of, check_ordinary
from model.files.plan_file import read_plan
from model.files.unknown_keys import unknown_keys
from model.network.drawn import with_plan
from model.network.network import JunctionSpec, Network
from model.plan import Plan
from model.wording import tr

__all__ = ["network_bytes", "parse_network", "read_network", "with_plans", "with_plans_there"]

FILE_LIMIT: Final = 128 * 1024 * 1024
"""Bytes in a file."""
VALUE_LIMIT: Final = 12_000_000
"""Commas and opening brackets in a file; they bound the number of its values."""
DEPTH: Final = 6
"""Lists and objects inside one another, as far as keys are known: ``junctions[].readers[].ways[]``."""

_HEADER: Final = msgspec.json.Decoder(Header)
_QUICK: Final = msgspec.json.Decoder(NetworkDoc)


def read_network(path: str | os.PathLike[str]) -> Network:
    """The network in a file, with what the plan files say that it names.

    Raises PlanFileError, also where one of these files cannot be opened or is no plan.
    """
    name = os.fspath(path)
    network = parse_network(bytes_of(path, FILE_LIMIT), name)
    return with_plans(network, name)


def parse_network(data: bytes, name: str) -> Network:
    """The network that the bytes of a file stand for; ``name`` is the file's, for messages.

    Plan files are not looked at: a junction with a plan has no readers yet. Raises PlanFileError.
    """
    try:
        with collector_paused():
            return _network(data)
    except PlaceError as fault:
        raise PlanFileError(name, fault.place, fault.expected) from None


def with_plans(network: Network, name: str) -> Network:
    """The network with the readers and arms of the plans that it names, relative to its own file ``name``.

    Raises PlanFileError, which names both files.
    """
    read = with_plans_there(network, name, _read_ordinary)
    for index, junction in enumerate(read.junctions):
        if junction.unread:
            expected = tr("a plan file that can be read; {error}", error=junction.unread)
            raise PlanFileError(name, f"junctions[{index}].plan", expected)
    return read


def with_plans_there(network: Network, name: str, read: Callable[[Path], Plan]) -> Network:
    """The same, but a junction whose plan cannot be read stays as it is and tells why.

    ``read`` gives the plan in a file, or raises PlanFileError.
    """
    reader = _PlanReader(os.path.dirname(name), read)
    return network.replace(junctions=tuple(map(reader.drawn, network.junctions)))


def _read_ordinary(path: Path) -> Plan:
    """The user named the network, and not a pipe that it names, which may never end. Raises PlanFileError."""
    check_ordinary(path)
    return read_plan(path)


class _PlanReader:
    """Reads each plan once, though several junctions be built by it."""

    def __init__(self, folder: str, read: Callable[[Path], Plan]) -> None:
        self._folder, self._read = folder, read
        self._plans: dict[str, Plan] = {}

    def drawn(self, junction: JunctionSpec) -> JunctionSpec:
        """The junction with what its plan says, if it has one."""
        if junction.plan is None:
            return junction
        path = os.path.join(self._folder, junction.plan)
        try:
            plan = self._plans.get(path) or self._plans.setdefault(path, self._read(Path(path)))
        except PlanFileError as error:
            return replace(junction, unread=str(error))
        return with_plan(junction, plan)


def _network(data: bytes) -> Network:
    if len(data) > FILE_LIMIT:
        raise PlaceError("", at_most(FILE_LIMIT))
    if values_in(data) > VALUE_LIMIT:
        raise PlaceError("", at_most_values(VALUE_LIMIT))
    _check_quickly(data)
    value = careful_json(data)
    document = _document(value)
    return network_of_document(document, unknown_keys(value, NetworkDoc, OBJECTS_BELOW), value)


def _check_quickly(data: bytes) -> None:
    """Refuse what is no network, or says far too much beside one, before its values fill the memory.

    Raises PlaceError. What is no JSON, and whole numbers with a point, are left to the careful way.
    """
    try:
        check_header(_HEADER.decode(data), FORMAT)
        document = _QUICK.decode(data)
    except ValidationError as error:
        if WHOLE_FLOAT not in str(error):
            raise _fault(error) from None
    except (DecodeError, UnicodeDecodeError, RecursionError):
        pass
    else:
        if values_in(data) - values_in(msgspec.json.encode(document)) > UNKNOWN_LIMIT:
            raise PlaceError("", at_most_unknown())


def _document(value: Any) -> NetworkDoc:
    plain = _with_plain_numbers(value, DEPTH)
    try:
        check_header(msgspec.convert(plain, Header), FORMAT)
        return msgspec.convert(plain, NetworkDoc)
    except ValidationError as error:
        raise _fault(error) from None


def _fault(error: ValidationError) -> PlaceError:
    place, missing = place_and_missing(error)
    return PlaceError(place, missing or expected_at(place))


def _with_plain_numbers(value: Any, depth: int) -> Any:
    """The value with numbers that no longer know how they were written, as far down as known keys go."""
    if depth and isinstance(value, dict):
        return {key: _with_plain_numbers(item, depth - 1) for key, item in value.items()}
    if depth and isinstance(value, list):
        return [_with_plain_numbers(item, depth - 1) for item in value]
    return float(value) if isinstance(value, WrittenFloat) else value
