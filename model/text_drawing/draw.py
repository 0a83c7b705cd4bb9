"""Drawing a layout."""

from __future__ import annotations

from collections.abc import Iterator

from model.grid import Cell
from model.parts import RAILS
from model.pieces import Piece
from model.plan import Arm, ArmEnd, Plan, Route
from model.text_drawing.glyphs import EMPTY, LETTERS, RAIL_GLYPHS, SPARE_LETTERS
from model.text_drawing.settings import setting_words
from model.track.layout import Layout


def draw(layout: Layout) -> str:
    """The plan of a layout, level by level from the lowest, with rails by their shape as built.

    Every level is as wide as the whole plan, so that levels can be laid over each other: for plans small
    enough to be read.
    """
    return "\n".join((*_levels(layout), *_details(layout.plan))) or "(empty)"


def _levels(layout: Layout) -> Iterator[str]:
    pieces = tuple(layout.plan.pieces)
    legend = _letters(pieces)
    marks = {piece.at: _mark(layout, piece, legend) for piece in pieces}
    xs = range(min((c.x for c in marks), default=0), max((c.x for c in marks), default=-1) + 1)
    zs = range(min((c.z for c in marks), default=0), max((c.z for c in marks), default=-1) + 1)
    for y in sorted({cell.y for cell in marks}):
        yield f"level {y}, from {xs.start} {zs.start}".replace("-", "−")
        for z in zs:
            yield "".join(marks.get(Cell(x, y, z), EMPTY) for x in xs)
    yield from (f"{letter}: {words}" for words, letter in legend.items())


def _mark(layout: Layout, piece: Piece, legend: dict[str, str]) -> str:
    shape = layout.shape(piece.at)
    return legend[setting_words(piece)] if shape is None else RAIL_GLYPHS[piece.part][shape]


def _letters(pieces: tuple[Piece, ...]) -> dict[str, str]:
    """A letter for each way in which a part that is no rail is set."""
    words = dict.fromkeys(setting_words(piece) for piece in pieces if piece.part not in RAILS)
    own = {str(part): letter for part, letter in LETTERS.items()}
    spare = iter(SPARE_LETTERS)
    return {word: own[word] if word in own else next(spare, "?") for word in words}


def _details(plan: Plan) -> Iterator[str]:
    yield from map(_arm, plan.arms)
    yield from map(_route, plan.routes)
    if plan.details.running_side is not None:
        yield f"running side {plan.details.running_side}"


def _arm(arm: Arm) -> str:
    ends = (("in", arm.enter), ("out", arm.leave))
    return f"arm {arm.name}: " + ", ".join(_end(word, end) for word, end in ends if end is not None)


def _end(word: str, end: ArmEnd) -> str:
    return f"{word} {end.at} {end.heading.word}"


def _route(route: Route) -> str:
    words = f"route {route.start}: idle {route.idle}"
    if route.called is not None:
        words += f", called {route.called}"
    return words if route.waybill is None else f"{words}, waybill {route.waybill}"
