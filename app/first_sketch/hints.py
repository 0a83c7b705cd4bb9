"""The hints in their order: what each says, and when its thing is done. No Qt here.

A hint looks at the plan and at what was done, never at how: a drag, a paste and the keyboard are all one
to it.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum, auto
from typing import Final, NamedTuple

from app.first_sketch.track import longest_straight, switches
from app.translation import QT_TR_NOOP
from model.track.layout import Layout

STRAIGHT: Final = 5
"""Rails in a line that count as a straight track."""
ARMS: Final = 3


class Deed(Enum):
    """What was done that leaves no trace in the plan."""

    SWITCH_THROWN = auto()
    CART_SENT = auto()
    FINDING_READ = auto()
    SWITCH_READ = auto()
    SHEET_ASKED = auto()


@dataclass(frozen=True)
class Seen:
    """All that the hints look at."""

    layout: Layout
    deeds: frozenset[Deed] = frozenset()
    is_clear: bool = False
    """Whether the plan was checked, and nothing was found."""


class Progress(NamedTuple):
    """How much of its thing is done."""

    done: int
    wanted: int

    @property
    def is_complete(self) -> bool:
        """Whether the hint has said enough."""
        return self.done >= self.wanted


class Hint(NamedTuple):
    """One thing to do. In the text, the name of an action in braces stands for its keys."""

    title: str
    text: str
    progress: Callable[[Seen], Progress]


def _straight(seen: Seen) -> Progress:
    return Progress(min(STRAIGHT, len(longest_straight(seen.layout))), STRAIGHT)


def _branch(seen: Seen) -> Progress:
    return Progress(min(1, len(switches(seen.layout))), 1)


def _arms(seen: Seen) -> Progress:
    return Progress(min(ARMS, len(seen.layout.plan.arms)), ARMS)


def _routes(seen: Seen) -> Progress:
    """A route with an idle goal, then one that is called, too."""
    routes = seen.layout.plan.routes
    return Progress(2 if any(route.called for route in routes) else min(1, len(routes)), 2)


def _trial(seen: Seen) -> Progress:
    return Progress(len(seen.deeds & {Deed.SWITCH_THROWN, Deed.CART_SENT}), 2)


def _reading(seen: Seen) -> Progress:
    read = {Deed.FINDING_READ} if seen.is_clear else set()
    wanted = {Deed.FINDING_READ, Deed.SWITCH_READ, Deed.SHEET_ASKED}
    return Progress(len((seen.deeds | read) & wanted), len(wanted))


HINTS: Final = (
    Hint(
        QT_TR_NOOP("Lay a straight track"),
        QT_TR_NOOP(
            "Take up Lay track{tool_lay} and drag along the outline. "
            "By keys: Enter, the arrows, and Enter again."
        ),
        _straight,
    ),
    Hint(
        QT_TR_NOOP("Lay a branch"),
        QT_TR_NOOP(
            "Drag along the outline to the middle of the track. The rail at the corner becomes a curve; "
            "the rail where both tracks meet becomes a switch. By keys: Enter, the arrows, and Enter again."
        ),
        _branch,
    ),
    Hint(
        QT_TR_NOOP("Set an arm at each end"),
        QT_TR_NOOP(
            "Carts come in and leave by arms. Take up Arm{tool_arm}, click the end of a track, "
            "type a name such as Quay, and press Enter. By keys: the arrows to the end, then Enter twice."
        ),
        _arms,
    ),
    Hint(
        QT_TR_NOOP("Say what is wanted"),
        QT_TR_NOOP(
            "In Routes{show_routes}, at the right below, add a route: from one arm, idle is where an empty "
            "cart leaves. Then choose the arm under called; a cart with the waybill leaves there. "
            "By keys: Tab to Add route and Space, the arrows to a cell, and F2 to edit it."
        ),
        _routes,
    ),
    Hint(
        QT_TR_NOOP("Try it"),
        QT_TR_NOOP(
            "Take up Throw{tool_throw} and click the switch: it shows its powered state; once more, "
            "and it rests. Then take up Test cart{tool_cart} and drag a cart in from an arm. "
            "By keys: Enter on the switch; for the cart Enter, an arrow, Enter."
        ),
        _trial,
    ),
    Hint(
        QT_TR_NOOP("Read what the plan says"),
        QT_TR_NOOP(
            "Choose a finding{show_findings}: it says what is wrong, and what mends it. "
            "Choose the switch in Switches{show_switches}: a box with a circle under idle is an inverter. "
            "Then ask for the build sheet{build_sheet}."
        ),
        _reading,
    ),
)
