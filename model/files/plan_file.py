"""Plan files: reading one, and the bytes to write."""

from __future__ import annotations

import os

from model.collector import collector_paused
from model.files.decoding import decode
from model.files.encoding import plan_bytes
from model.files.errors import PlaceError, PlanFileError
from model.files.limits import FILE_LIMIT
from model.files.opening import bytes_of
from model.files.reading import plan_of_document
from model.plan import Plan

__all__ = ["PlanFileError", "parse_plan", "plan_bytes", "read_plan"]


def read_plan(path: str | os.PathLike[str]) -> Plan:
    """The plan in a file. Raises PlanFileError, also where the file cannot be opened."""
    return parse_plan(bytes_of(path, FILE_LIMIT), os.fspath(path))


def parse_plan(data: bytes, name: str) -> Plan:
    """The plan that the bytes of a file stand for; ``name`` is the file's, for messages.

    Raises PlanFileError.
    """
    try:
        with collector_paused():
            return plan_of_document(*decode(data))
    except PlaceError as fault:
        raise PlanFileError(name, fault.place, fault.expected) from None
