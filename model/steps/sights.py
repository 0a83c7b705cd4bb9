"""What a builder should see after a step, in words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from model.grid import Cell
from model.steps.areas import Area
from model.steps.words import NAMED, listed, parts, parts_word, places, size
from model.steps.world import Sight
from model.track.shapes import Shape
from model.track.switches import PowerStates


def sight_of_run(sight: Sight) -> str:
    """``All lie east-west. 4 64 1 has turned from north-south to south-east.``"""
    return " ".join((*_laid(sight), *_bent(sight), *_turned(sight)))


def sight_of_area(area: Area, noticed: Mapping[Cell, PowerStates]) -> str:
    """``A floor of 6 × 3 solid blocks at level 63.``

    ``noticed`` are the three-way rails to which the pieces give notice.
    """
    return " ".join((f"{_area(area)} at level {area.pieces[0].at.y}.".replace("-", "−"), *_noticed(noticed)))


def _area(area: Area) -> str:
    if not area.across:
        return parts(area.pieces)
    if area.is_broad:
        return f"A floor of {size(area)} {parts_word(area.pieces)}"
    way = "to the east" if area.across > 1 else "to the south"
    return f"A line of {parts(area.pieces)} {way}"


def _noticed(rails: Mapping[Cell, PowerStates]) -> Iterator[str]:
    for cell, states in [*rails.items()][:NAMED]:
        powered = f", and {states.powered.word} with one" if states.is_switch else ""
        yield f"{cell} takes notice: it lies {states.resting.word} without a signal{powered}."
    if len(rails) > NAMED:
        yield f"{len(rails) - NAMED:,} more rails take notice."


def _laid(sight: Sight) -> Iterator[str]:
    alike: dict[Shape, list[Cell]] = {}
    for cell, shape in sight.laid.items():
        alike.setdefault(shape, []).append(cell)
    most = max(alike, key=lambda shape: len(alike[shape]))
    for shape in sorted(alike, key=lambda shape: shape is not most):
        cells = alike[shape]
        verb = _lies(shape, many=len(cells) > 1)
        yield f"{_who(cells, sight, most=shape is most)} {verb}{_for_now(cells, sight.for_now)}."


def _who(cells: list[Cell], sight: Sight, *, most: bool) -> str:
    if len(cells) == 1 or not most:
        return places(cells)
    if len(cells) < len(sight.laid):
        return "All others"
    return "Both" if len(cells) == 2 else "All"


def _lies(shape: Shape, *, many: bool) -> str:
    """``lies south-east``, ``rise to the north``."""
    if shape.rises_to is not None:
        return f"{'rise' if many else 'rises'} to the {shape.rises_to.word}"
    return f"{'lie' if many else 'lies'} {shape.word}"


def _for_now(cells: list[Cell], for_now: frozenset[Cell]) -> str:
    bent_again = [cell for cell in cells if cell in for_now]
    if len(bent_again) == len(cells):
        return " for now"
    return f", {places(bent_again)} only for now" if bent_again else ""


def _bent(sight: Sight) -> Iterator[str]:
    for cell, (before, after) in sight.bent.items():
        yield f"{cell} has turned from {before.word} to {after.word}{_for_now([cell], sight.for_now)}."


def _turned(sight: Sight) -> Iterator[str]:
    if sight.turned:
        said = listed(f"{cell} to {shape.word}" for cell, shape in sight.turned.items())
        yield f"The detector rail is a signal part: as it is placed it may turn {said}."
