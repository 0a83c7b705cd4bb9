"""What lies in a cell, in words: the same for the status bar and for a screen reader."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from app.canvas.symbols.pieces import TURNED
from app.document import Document
from app.names import part_name
from app.panels.words import cell_words, listed
from app.translation import tr
from model.edits.words import held_words
from model.grid import Cell, Facing
from model.parts import CARRIERS, RAILS, Part
from model.pieces import Piece
from model.routing.control import WantedRoute
from model.routing.junction import Junction, Switch
from model.rules import RULES, Finding
from model.signals.containers import reading

ROUTES_NAMED: Final = 2
"""So many wanted routes over a cell are named; of more it is said how many there are."""


def here_sentence(document: Document, cell: Cell) -> str:
    """``x 4, y 64, z −2: switch, rests south-east, powered north-east, needs an inverter``, and so on."""
    return f"{cell_words(cell)}: {here_words(document, cell)}"


def here_words(document: Document, cell: Cell) -> str:
    """The piece with all that is set on it; the arms, wanted routes and findings there."""
    said = [_what(document, cell), *_arms(document, cell)]
    junction = _junction(document)
    if junction is not None:
        said += _routes(junction.routes_through.get(cell, ()))
    said += _findings(document.findings_at(cell))
    return "; ".join(said)


def _what(document: Document, cell: Cell) -> str:
    piece = document.plan.pieces.get(cell)
    if piece is None:
        return _empty(document, cell)
    junction = _junction(document)
    if junction is not None and cell in junction.switch_states:
        return ", ".join(_switch(next(switch for switch in junction.switches if switch.at == cell)))
    name = part_name(piece.part).lower()
    shape = document.layout.shape(cell)
    if piece.part in RAILS and shape is not None:
        return f"{name}, {tr(shape.word)}"
    faces = [tr("faces {facing}", facing=tr(piece.facing))] if piece.part in TURNED else []
    return ", ".join([name, *faces, *set_on(piece)])


def _empty(document: Document, cell: Cell) -> str:
    below = document.plan.pieces.part_at(cell.beside(Facing.DOWN))
    if below not in CARRIERS:
        return tr("nothing here")
    return tr("nothing here, carried by {part}", part=part_name(below).lower())


def _switch(switch: Switch) -> Iterator[str]:
    yield tr("switch")
    yield tr("rests {shape}", shape=tr(switch.resting.word))
    yield tr("powered {shape}", shape=tr(switch.powered.word))
    if switch.inverter:
        yield tr("needs an inverter")
    elif switch.idle is None:
        yield tr("not wired")
    if switch.called_by:
        yield tr("thrown for carts from {arms}", arms=listed(switch.called_by))
    yield tr("named {name}", name=switch.name)


def set_on(piece: Piece) -> list[str]:
    """What is set on a piece beside its facing: delay, mode, content."""
    said = []
    if piece.part is Part.REPEATER:
        said.append(tr("delay {ticks} ticks", ticks=piece.delay))
    if piece.part is Part.COMPARATOR:
        said.append(piece.mode.value)
    if piece.part is Part.BUTTON and piece.wooden:
        said.append(tr("of wood"))
    if piece.holds:
        held = ", ".join(map(held_words, piece.holds))
        said.append(tr("holds {held}, reads {strength}", held=held, strength=reading(piece)))
    return said


def _arms(document: Document, cell: Cell) -> Iterator[str]:
    for arm in document.plan.arms:
        ways = []
        if arm.enter is not None and arm.enter.at == cell:
            ways.append(tr("in heading {heading}", heading=arm.enter.heading.word))
        if arm.leave is not None and arm.leave.at == cell:
            ways.append(tr("out heading {heading}", heading=arm.leave.heading.word))
        if ways:
            yield tr("arm {name}, {ways}", name=arm.name, ways=", ".join(ways))


def _routes(routes: tuple[WantedRoute, ...]) -> Iterator[str]:
    if len(routes) > ROUTES_NAMED:
        yield tr("on {count} wanted routes", count=len(routes))
        return
    for route in routes:
        kind = tr("called") if route.called else tr("idle")
        yield tr("on the {kind} route {start} to {goal}", kind=kind, start=route.start, goal=route.goal)


def _findings(here: list[Finding]) -> Iterator[str]:
    """Those that still need the user's eye; of those set aside, only how many."""
    for finding in here:
        if not finding.waived:
            yield f"{tr(finding.severity.value)}: {tr(RULES[finding.rule].title)}"
    waived = sum(finding.waived for finding in here)
    if waived:
        yield tr("{findings} set aside", findings=tr("%n finding(s)", "", waived))


def _junction(document: Document) -> Junction | None:
    """What is worked out of the plan as it is now; ``None`` while that goes on."""
    return None if document.junction_is_old else document.junction
