"""What a builder should see after a step, in words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from model.grid import Cell
from model.steps.areas import Area
from model.steps.words import NAMED, listed, parts, parts_word, places, size
from model.steps.world import Sight
from model.track.shapes import Shape
from model.track.switches import PowerStates
from model.wording import QT_TR_NOOP, tr


def sight_of_run(sight: Sight) -> str:
    """``All lie east-west. 4 64 1 has turned from north-south to south-east.``"""
    return " ".join((*_laid(sight), *_bent(sight), *_turned(sight)))


def sight_of_area(area: Area, noticed: Mapping[Cell, PowerStates]) -> str:
    """``A floor of 6 × 3 solid blocks at level 63.``

    ``noticed`` are the three-way rails to which the pieces give notice.
    """
    return " ".join(
        (
            tr("{area} at level {y}.", area=_area(area), y=area.pieces[0].at.y).replace("-", "−"),
            *_noticed(noticed),
        )
    )


def _area(area: Area) -> str:
    if not area.across:
        return parts(area.pieces)
    if area.is_broad:
        return tr("A floor of {size} {parts}", size=size(area), parts=parts_word(area.pieces))
    way = tr("to the east") if area.across > 1 else tr("to the south")
    return tr("A line of {parts} {way}", parts=parts(area.pieces), way=way)


def _noticed(rails: Mapping[Cell, PowerStates]) -> Iterator[str]:
    for cell, states in [*rails.items()][:NAMED]:
        text = (
            QT_TR_NOOP("{cell} takes notice: it lies {resting} without a signal, and {powered} with one.")
            if states.is_switch
            else QT_TR_NOOP("{cell} takes notice: it lies {resting} without a signal.")
        )
        yield tr(text, cell=cell, resting=tr(states.resting.word), powered=tr(states.powered.word))
    if len(rails) > NAMED:
        yield tr("{count:,} more rails take notice.", count=len(rails) - NAMED)


def _laid(sight: Sight) -> Iterator[str]:
    alike: dict[Shape, list[Cell]] = {}
    for cell, shape in sight.laid.items():
        alike.setdefault(shape, []).append(cell)
    most = max(alike, key=lambda shape: len(alike[shape]))
    for shape in sorted(alike, key=lambda shape: shape is not most):
        cells = alike[shape]
        verb = _lies(shape, many=len(cells) > 1)
        yield _with_for_now(f"{_who(cells, sight, most=shape is most)} {verb}", cells, sight.for_now)


def _who(cells: list[Cell], sight: Sight, *, most: bool) -> str:
    if len(cells) == 1 or not most:
        return places(cells)
    if len(cells) < len(sight.laid):
        return tr("All others")
    return tr("Both") if len(cells) == 2 else tr("All")


def _lies(shape: Shape, *, many: bool) -> str:
    """``lies south-east``, ``rise to the north``."""
    if shape.rises_to is not None:
        text = QT_TR_NOOP("rise to the {heading}") if many else QT_TR_NOOP("rises to the {heading}")
        return tr(text, heading=tr(shape.rises_to.word))
    return tr(QT_TR_NOOP("lie {shape}") if many else QT_TR_NOOP("lies {shape}"), shape=tr(shape.word))


def _with_for_now(said: str, cells: list[Cell], for_now: frozenset[Cell]) -> str:
    """The sentence, and which of the cells a later piece bends again."""
    bent_again = [cell for cell in cells if cell in for_now]
    if not bent_again:
        return tr("{said}.", said=said)
    if len(bent_again) == len(cells):
        return tr("{said} for now.", said=said)
    return tr("{said}, {places} only for now.", said=said, places=places(bent_again))


def _bent(sight: Sight) -> Iterator[str]:
    for cell, (before, after) in sight.bent.items():
        text = (
            QT_TR_NOOP("{cell} has turned from {before} to {after} for now.")
            if cell in sight.for_now
            else QT_TR_NOOP("{cell} has turned from {before} to {after}.")
        )
        yield tr(text, cell=cell, before=tr(before.word), after=tr(after.word))


def _turned(sight: Sight) -> Iterator[str]:
    if sight.turned:
        said = listed(
            tr("{cell} to {shape}", cell=cell, shape=tr(shape.word)) for cell, shape in sight.turned.items()
        )
        yield tr("The detector rail is a signal part: as it is placed it may turn {said}.", said=said)
