"""What a plan file of a module says of itself, under its key ``module``.

The file is an ordinary plan: the module, and about it what one needs to try it (levers, lamps, track), whose
cells are listed as ``outside``. ``parameters`` gives each parameter's first value. A parameter with
``choices`` takes one of them, and what that changes is applied to the file's plan; any other is the name of a
waybill, which takes the place of the first value wherever that is held or wanted.
"""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from typing import Final, Literal

import msgspec
from msgspec import UNSET, Raw, Struct, UnsetType

from model.files.document import FORMAT, VERSION
from model.files.plan_file import parse_plan
from model.grid import Cell, Facing
from model.pieces import Piece
from model.plan import Plan

KEY: Final = "module"
"""The key of the plan file under which all this stands."""
ENDING: Final = ".plan.json"


class Port(Struct, frozen=True, forbid_unknown_fields=True):
    """Where a module meets what lies about it. ``at`` is a cell outside the module.

    ``in``: the cell that must give the signal, with dust or a part that faces the module; ``out``: the cell
    that the module gives to, at 15; ``track``: a cell through which carts run. ``facing`` is the way in which
    the signal, or the cart, goes.
    """

    name: str
    kind: Literal["in", "out", "track"]
    at: Cell
    facing: Facing


class ChoiceDoc(Struct, frozen=True, forbid_unknown_fields=True):
    """What one value of a parameter changes: pieces, and whatever else is given in place of the file's."""

    take: tuple[Cell, ...] = ()
    """Cells whose pieces go; ``place`` may fill them anew."""
    place: Raw = Raw(b"[]")
    """Pieces as in ``pieces`` of a plan file; they come after all others."""
    delay: int | UnsetType = UNSET
    ports: tuple[Port, ...] | UnsetType = UNSET
    outside: tuple[Cell, ...] | UnsetType = UNSET


class ModuleDoc(Struct, frozen=True, forbid_unknown_fields=True):
    """The value of the key ``module``."""

    name: str
    about: str
    """A few sentences for the builder: what it does, and what to mind."""
    ports: tuple[Port, ...]
    delay: int
    """Ticks from a change at the first port in until the first port out changes."""
    origin: Cell = Cell(0, 0, 0)
    """The cell by which it is put down."""
    outside: tuple[Cell, ...] = ()
    """Cells of pieces that are not the module's, there to try it."""
    parameters: dict[str, str] = {}
    """The first value of each parameter."""
    choices: dict[str, dict[str, ChoiceDoc]] = {}
    """By parameter, and by value."""


def module_files() -> tuple[str, ...]:
    """The names of the modules that come with the program, sorted."""
    found = (entry.name for entry in files("resources").joinpath("modules").iterdir())
    return tuple(sorted(name.removesuffix(ENDING) for name in found if name.endswith(ENDING)))


@cache
def read_module(name: str) -> tuple[Plan, ModuleDoc]:
    """The plan of a module's file, and what it says of itself. Raises KeyError for an unknown name."""
    if name not in module_files():
        raise KeyError(name)
    data = files("resources").joinpath("modules", name + ENDING).read_bytes()
    plan = parse_plan(data, name + ENDING)
    return plan, msgspec.json.decode(dict(plan.details.kept)[KEY], type=ModuleDoc)


def pieces_of(text: Raw) -> tuple[Piece, ...]:
    """The pieces that a list in a file stands for."""
    head = f'{{"format": "{FORMAT}", "version": {VERSION}, "pieces": '
    return tuple(parse_plan(head.encode() + bytes(text) + b"}", "choice").pieces)
