"""Modules: small circuits ready to be put down, from the plan files in ``resources/modules``."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import UNSET, Struct
from msgspec.structs import replace

from model.edits.names import name_problem
from model.edits.refusals import EditRefused
from model.grid import Cell, Turn
from model.pieces import WAYBILL, Held, Piece, Pieces
from model.plan import Plan
from model.wiring.modules.file import ChoiceDoc, ModuleDoc, Port, module_files, pieces_of, read_module
from model.wording import tr

__all__ = [
    "Module",
    "Parameter",
    "Port",
    "load_module",
    "module_names",
    "module_parameters",
    "trial_plan",
]


class Parameter(Struct, frozen=True):
    """What a builder may set: one of the choices, or, where there are none, the name of a waybill."""

    name: str
    first: str
    """The value that it has when nothing is said."""
    choices: tuple[str, ...] = ()


class Module(Struct, frozen=True):
    """A small circuit in its place; it moves and turns as a whole."""

    name: str
    title: str
    about: str
    pieces: tuple[Piece, ...]
    """In the order of placing, what carries before what stands on it."""
    ports: tuple[Port, ...]
    delay: int
    """Ticks from a change at the first port in until the first port out changes."""
    origin: Cell = Cell(0, 0, 0)

    @property
    def cells(self) -> frozenset[Cell]:
        """The cells of its pieces."""
        return frozenset(piece.at for piece in self.pieces)

    @property
    def footprint(self) -> frozenset[tuple[int, int]]:
        """The columns that it takes, each as (x, z)."""
        return frozenset((piece.at.x, piece.at.z) for piece in self.pieces)

    @property
    def depth(self) -> int:
        """The number of levels from its lowest piece to its highest."""
        levels = [piece.at.y for piece in self.pieces]
        return max(levels) - min(levels) + 1

    def port(self, name: str) -> Port:
        """The port of that name. Raises KeyError."""
        for port in self.ports:
            if port.name == name:
                return port
        raise KeyError(name)

    def turned(self, turn: Turn, to: Cell) -> Module:
        """The module turned about its origin, which then lies at ``to``; the order of placing stays."""

        def new_cell(cell: Cell) -> Cell:
            x, y, z = turn.cell(Cell(*(a - b for a, b in zip(cell, self.origin, strict=True))))
            return to.moved(x, y, z)

        pieces = (replace(p, at=new_cell(p.at), facing=turn.facing(p.facing)) for p in self.pieces)
        ports = (replace(p, at=new_cell(p.at), facing=turn.facing(p.facing)) for p in self.ports)
        return replace(self, pieces=tuple(pieces), ports=tuple(ports), origin=to)


def module_names() -> tuple[str, ...]:
    """The modules that there are, sorted."""
    return module_files()


def module_parameters(name: str) -> tuple[Parameter, ...]:
    """What may be set of a module. Raises KeyError for an unknown name."""
    _, doc = read_module(name)
    return tuple(
        Parameter(parameter, first, tuple(doc.choices.get(parameter, ())))
        for parameter, first in doc.parameters.items()
    )


def load_module(name: str, **parameters: object) -> Module:
    """The module with its parameters set; those not named have their first value.

    Raises KeyError for an unknown module or parameter, EditRefused for a value that a parameter cannot have.
    """
    plan, doc = _made(name, parameters)
    outside = frozenset(doc.outside)
    pieces = tuple(piece for piece in plan.pieces if piece.at not in outside)
    return Module(doc.name, plan.details.title, doc.about, pieces, doc.ports, doc.delay, doc.origin)


def trial_plan(name: str, **parameters: object) -> Plan:
    """The module with what stands about it to try it, its parameters set. Raises as ``load_module`` does."""
    return _made(name, parameters)[0]


def _made(name: str, parameters: Mapping[str, object]) -> tuple[Plan, ModuleDoc]:
    plan, doc = read_module(name)
    unknown = parameters.keys() - doc.parameters.keys()
    if unknown:
        raise KeyError(min(unknown))
    for parameter, first in doc.parameters.items():
        value = str(parameters.get(parameter, first))
        if parameter in doc.choices:
            plan, doc = _chosen(plan, doc, parameter, value)
        else:
            plan = _renamed(plan, first, value)
    return plan, doc


def _chosen(plan: Plan, doc: ModuleDoc, parameter: str, value: str) -> tuple[Plan, ModuleDoc]:
    choice = doc.choices[parameter].get(value)
    if choice is None:
        *most, last = doc.choices[parameter]
        possible = tr("{words} or {last}", words=", ".join(most), last=last) if most else last
        raise EditRefused(
            tr(
                "{value} is no choice for {parameter} of the {doc}: it can be {possible}.",
                value=value,
                parameter=parameter,
                doc=doc.name,
                possible=possible,
            )
        )
    gone = frozenset(choice.take)
    stay = [piece for piece in plan.pieces if piece.at not in gone]
    return replace(plan, pieces=Pieces.of([*stay, *pieces_of(choice.place)])), _said_otherwise(doc, choice)


def _said_otherwise(doc: ModuleDoc, choice: ChoiceDoc) -> ModuleDoc:
    said = {
        key: value for key in ("delay", "ports", "outside") if (value := getattr(choice, key)) is not UNSET
    }
    return replace(doc, **said)


def _renamed(plan: Plan, old: str, new: str) -> Plan:
    """The waybill by another name, in containers and in wanted routes."""
    problem = name_problem(new)
    if problem is not None:
        raise EditRefused(problem)
    pieces = Pieces.of(_holding(piece, old, new) for piece in plan.pieces)
    routes = tuple(replace(route, waybill=new) if route.waybill == old else route for route in plan.routes)
    return Plan(pieces, plan.details.replace(routes=routes))


def _holding(piece: Piece, old: str, new: str) -> Piece:
    if not piece.holds:
        return piece
    holds = (Held(WAYBILL + new, held.count) if held.item == WAYBILL + old else held for held in piece.holds)
    return replace(piece, holds=tuple(holds))
