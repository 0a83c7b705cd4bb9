"""Plan files: reading one, and the bytes to write."""

from __future__ import annotations

import os

from model.collector import collector_paused
from model.files.decoding import decode
from model.files.encoding import plan_bytes
from model.files.errors import PlaceError, PlanFileError
from model.files.limits import FILE_LIMIT, TOO_LARGE
from model.files.reading import plan_of_document
from model.plan import Plan

__all__ = ["PlanFileError", "parse_plan", "plan_bytes", "read_plan"]


def read_plan(path: str | os.PathLike[str]) -> Plan:
    """The plan in a file. Raises PlanFileError, also where the file cannot be opened."""
    name = os.fspath(path)
    try:
        with open(path, "rb") as stream:
            if os.fstat(stream.fileno()).st_size > FILE_LIMIT:
                raise PlanFileError(name, "", TOO_LARGE)
            data = stream.read(FILE_LIMIT + 1)  # a pipe does not tell its size; one byte over is enough
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise PlanFileError(name, "the file itself", f"a file that can be read ({reason})") from error
    return parse_plan(data, name)


def parse_plan(data: bytes, name: str) -> Plan:
    """The plan that the bytes of a file stand for; ``name`` is the file's, for messages.

    Raises PlanFileError.
    """
    try:
        with collector_paused():
            return plan_of_document(*decode(data))
    except PlaceError as fault:
        raise PlanFileError(name, fault.place, fault.expected) from None
