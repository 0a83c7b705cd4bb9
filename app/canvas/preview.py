"""What is being previewed: switches thrown, a reader that holds, the ways of test carts. No Qt here."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final, NamedTuple

from app.tools.paths import heading_between
from app.translation import QT_TR_NOOP, from_to, tr
from model.grid import Cell, Heading
from model.routing.junction import Junction, SettingShapes
from model.track.carts import Outcome, Way
from model.track.layout import Layout
from model.track.switches import rails_in_setting

NAMED_AT_MOST: Final = 4
"""Switches that the chip names; of more it gives the number."""


class Words(NamedTuple):
    """A word for the plan, and a sentence on it for the help; each is looked up where it is shown."""

    word: str
    about: str


ENDINGS: Final = {
    Outcome.ARM: Words(
        QT_TR_NOOP("leaves by {arm}"),
        QT_TR_NOOP("The cart leaves by an arm, whether or not rails go on beyond it."),
    ),
    Outcome.LEAVES_TRACK: Words(
        QT_TR_NOOP("leaves the track"),
        QT_TR_NOOP("No rail follows, or the next one cannot be entered from here; a bar ends the way."),
    ),
    Outcome.STOPPED: Words(
        QT_TR_NOOP("stopped by a block"),
        QT_TR_NOOP("Something that a cart cannot run into stands before it; a bar ends the way."),
    ),
    Outcome.LOOPS: Words(
        QT_TR_NOOP("runs in a loop"),
        QT_TR_NOOP("The cart comes to a cell again with the same heading, and goes round without end."),
    ),
}
"""Why the way of a cart ends."""
LOADS: Final = {
    False: Words(
        QT_TR_NOOP("empty"),
        QT_TR_NOOP("The way of a cart without the waybill: an unbroken edge, and one chevron."),
    ),
    True: Words(
        QT_TR_NOOP("with the waybill"),
        QT_TR_NOOP("The way of a called cart while its reader holds: a dashed edge, and two chevrons."),
    ),
}
"""Whether a cart carries the waybill."""


@dataclass(frozen=True)
class Run:
    """The way of a test cart, or of a called cart while its reader holds."""

    way: Way
    entering: Heading
    """The cart's heading as it comes onto the first cell."""
    called: bool
    """Whether it carries the waybill."""
    start: str
    """The arm or the cell from where it goes."""
    waybill: str | None = None
    driven: bool = True
    """Whether a cart is shown running."""

    @property
    def reason(self) -> str:
        """Why the way ended, in words; the arm's name where it ended at an arm."""
        return tr(ENDINGS[self.way.outcome].word, arm=self.way.arm)

    @property
    def words(self) -> str:
        """A line of the key: ``Quay → Mill, with Salt``."""
        named = self.called and self.waybill
        load = tr("with {waybill}", waybill=named) if named else tr(LOADS[self.called].word)
        if self.way.arm is not None:
            return f"{from_to(self.start, self.way.arm)}, {load}"
        if self.way.outcome is Outcome.LOOPS:
            return f"{self.start}, {load}: {self.reason}"
        ended = tr("{reason} at {place}", reason=self.reason, place=self.way.path[-1])
        return f"{self.start}, {load}: {ended}"


@dataclass(frozen=True)
class Preview:
    """A setting of the switches with the shapes that it gives, and the ways shown in it."""

    powered: frozenset[Cell] = frozenset()
    shapes: SettingShapes | None = None
    """``None``: as built."""
    title: str = ""
    runs: tuple[Run, ...] = ()
    thrown_by_hand: bool = False
    """Whether the switches were thrown one by one, and no reader holds."""


NO_PREVIEW: Final = Preview()


def thrown(layout: Layout, names: dict[Cell, str], powered: frozenset[Cell]) -> Preview:
    """Exactly these switches wired and powered."""
    placed = [(entry.rank, cell) for cell in powered if (entry := layout.plan.pieces.placed(cell))]
    in_order = [cell for _, cell in sorted(placed)]
    shapes = SettingShapes(rails_in_setting(layout, in_order, in_order))
    title = tr(
        "Preview: {names}",
        names=_powered([names.get(cell, str(cell)) for cell in in_order]),
    )
    return Preview(powered, shapes, title, thrown_by_hand=True)


def reader_holds(junction: Junction, arm: str) -> Preview:
    """The reader of an arm holds: what it throws, and the way of the called cart."""
    powered = junction.choice.setting((arm,))
    title = tr("Preview: the {arm} reader holds — {states}", arm=arm, states=_states(junction, arm))
    runs: tuple[Run, ...] = ()
    if junction.can_enter(arm):
        runs = (_run_in_by(junction, arm, True, powered, None, driven=False),)
    return Preview(powered, junction.shapes(powered), title, runs)


def cart_in_by(junction: Junction, before: Preview, arm: str, called: bool) -> Preview:
    """A test cart that comes in by an arm. Needs an ``in`` with a rail; see ``Junction.can_enter``."""
    if before.thrown_by_hand:
        run = _run_in_by(junction, arm, called, before.powered, before.powered)
        return _with_run(before, before.powered, before.shapes, run)
    route = next((route for route in junction.plan.routes if route.start == arm), None)
    held = (arm,) if called and route is not None and route.called is not None else ()
    powered = junction.choice.setting(held)
    run = _run_in_by(junction, arm, called, powered, None)
    return _with_run(before, powered, junction.shapes(powered), run)


def cart_from(junction: Junction, before: Preview, cell: Cell, heading: Heading, called: bool) -> Preview:
    """A test cart set on a rail, in the setting shown. Needs a rail in the cell."""
    powered = before.powered if before.shapes is not None else junction.choice.setting()
    wired = powered if before.thrown_by_hand else None
    way = junction.way_from(cell, heading, powered, wired)
    run = Run(way, heading, called, str(cell))
    return _with_run(before, powered, junction.shapes(powered, wired), run)


def _run_in_by(
    junction: Junction,
    arm: str,
    called: bool,
    powered: frozenset[Cell],
    wired: frozenset[Cell] | None,
    driven: bool = True,
) -> Run:
    known = junction.plan.details.arm(arm)
    assert known is not None
    assert known.enter is not None
    route = next((route for route in junction.plan.routes if route.start == arm), None)
    way = junction.way_of(known, powered, wired)
    return Run(way, known.enter.heading, called, arm, route.waybill if route else None, driven)


def _with_run(before: Preview, powered: frozenset[Cell], shapes: SettingShapes | None, run: Run) -> Preview:
    """The newest run of each kind is shown: one of an empty cart, one of a cart with the waybill."""
    others = tuple(other for other in before.runs if other.called != run.called)
    return Preview(
        powered, shapes, tr("Test cart: {run}", run=run.words), (*others, run), before.thrown_by_hand
    )


def _states(junction: Junction, arm: str) -> str:
    """How the switches lie that the reader throws."""
    powered = junction.choice.setting((arm,))
    switches = [switch for switch in junction.switches if arm in switch.called_by]
    if not switches:
        return tr("it throws no switch")
    on = [switch.name for switch in switches if switch.at in powered]
    off = [switch.name for switch in switches if switch.at not in powered]
    parts = [_powered(on)] if on else []
    return ", ".join(parts + ([_resting(off)] if off else []))


def _powered(names: Sequence[str]) -> str:
    if len(names) > NAMED_AT_MOST:
        return tr("{count} switches powered", count=len(names))
    return tr("{names} powered", names=", ".join(names))


def _resting(names: Sequence[str]) -> str:
    if len(names) > NAMED_AT_MOST:
        return tr("{count} switches resting", count=len(names))
    return tr("{names} resting", names=", ".join(names))


def headings_of(run: Run) -> list[tuple[Cell, Heading, Heading]]:
    """Each cell of a run with the cart's heading as it comes in and as it leaves."""
    path = run.way.path
    between = [heading_between(a, b) for a, b in pairwise(path)]
    known = [heading for heading in between if heading is not None]
    return list(zip(path, [run.entering, *known], [*known, run.way.heading], strict=True))
