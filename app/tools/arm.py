"""Arm: a drag across the end of a track makes an arm there, and its name is typed in place.

From outside onto the track: carts come in. From the track outward: carts leave. There and back, or a
click on a track's end: both. A click on an arm's tag opens its name and ends again.
"""

from __future__ import annotations

from dataclasses import dataclass

import msgspec

from app.tools.events import PointerEvent
from app.tools.host import ArmQuestion, Ends, Ghost
from app.tools.paths import Path, extended, heading_between
from app.tools.tool import Tool
from app.tools.track_ends import TrackEnd, crossing, end_at
from app.translation import tr
from model.edits import EditRefused, add_arm, set_arm
from model.plan import Arm, ArmEnd, Change, Plan
from model.rules.words import listed


@dataclass(frozen=True)
class Crossing:
    """The button is down; the drag went along these cells, with every step back kept."""

    trail: Path
    tag: str | None = None
    """The arm on whose tag the button went down."""


@dataclass(frozen=True)
class Naming:
    """The name is being typed."""

    end: TrackEnd
    old: Arm | None
    """The arm whose name and ends are opened again."""


class ArmTool(Tool):
    """Idle (state ``None``), crossing, or naming."""

    name = "arm"
    drags_by_key = True
    state: Crossing | Naming | None = None

    @property
    def is_busy(self) -> bool:
        """While the button is down or the name is typed."""
        return self.state is not None

    def press(self, event: PointerEvent) -> None:
        """Begins a drag; a name that is being typed is dropped."""
        self.cancel()
        tag = self.host.tag_at(event)
        self.state = Crossing((event.cell,), tag.arm if tag else None)

    def drag(self, event: PointerEvent) -> None:
        """Shows the arm that the drag would make; a change of level drops it, asked for its name or not."""
        if self.state is None:
            return
        begun = self.state.trail[0] if isinstance(self.state, Crossing) else self.state.end.cell
        if event.cell.y != begun.y:
            self.interrupt()
            return
        if not isinstance(self.state, Crossing):
            return
        if event.cell != self.state.trail[-1]:
            steps = extended(self.state.trail[-1:], event.cell)
            self.state = Crossing((*self.state.trail, *steps[1:]))
        self._show()

    def release(self, event: PointerEvent) -> None:
        """Asks for the name."""
        self.drag(event)
        self.complete()

    def complete(self) -> bool:
        """Ends the drag; the name is answered in place."""
        if not isinstance(self.state, Crossing):
            return False
        if self.state.tag is not None:
            self._open_again(self.state.tag)
        else:
            self._ask(self._found(self.state.trail))
        return True

    def cancel(self) -> bool:
        """Drops the drag or the name."""
        if self.state is None:
            return False
        if isinstance(self.state, Naming):
            self.host.drop_question()
        self.state = None
        self.host.show_ghost(None)
        return True

    def show_ends(self, ends: Ends) -> None:
        """Shows the ends of a new arm while its name is typed; those of a known arm show its tags."""
        if isinstance(self.state, Naming) and self.state.old is None:
            cell, outward = self.state.end
            self.host.show_ghost(Ghost(crossing=(cell, outward, ends)))

    def answer(self, name: str, ends: Ends) -> str | None:
        """Makes the arm; returns what is wrong with the answer, or ``None``."""
        if not isinstance(self.state, Naming):
            return None
        try:
            change = _change(self.host.plan, self.state, name.strip(), ends)
        except EditRefused as refused:
            return str(refused)
        words = self._moved(name.strip(), ends)
        self.cancel()
        self.host.commit(change)
        self.host.say(words)
        return None

    def _moved(self, name: str, ends: Ends) -> str:
        """What is said of a name that is given again: an arm has one in and one out, so they move here."""
        assert isinstance(self.state, Naming)
        known = self.host.plan.details.arm(name)
        if self.state.old is not None or known is None:
            return ""
        came = known.enter.at if known.enter and Ends.IN in ends else None
        left = known.leave.at if known.leave and Ends.OUT in ends else None
        places = sorted({cell for cell in (came, left) if cell not in (None, self.state.end.cell)})
        return (
            tr(
                "{name} was at {places}; it is here now.",
                name=name,
                places=listed(map(str, places)),
            )
            if places
            else ""
        )

    def _found(self, trail: Path) -> tuple[TrackEnd, Ends] | None:
        layout = self.host.layout
        if len(trail) == 1:
            end = end_at(layout, trail[0])
            return None if end is None else (end, Ends.BOTH)
        return crossing(layout, trail)

    def _show(self) -> None:
        assert isinstance(self.state, Crossing)
        found = self._found(self.state.trail)
        if found is None:
            self.host.show_ghost(None)
        else:
            (cell, outward), ends = found
            self.host.show_ghost(Ghost(crossing=(cell, outward, ends)))

    def _ask(self, found: tuple[TrackEnd, Ends] | None) -> None:
        if found is None:
            self.cancel()
            self.host.say(tr("No end of a track here: drag across one, onto the track or off it."))
            return
        end, ends = found
        name = suggested_name(self.host.plan, end, ends)
        self._begin_naming(Naming(end, None), ends, name)

    def _open_again(self, name: str) -> None:
        arm = self.host.plan.details.arm(name)
        end = None if arm is None else _an_end(arm)
        if arm is None or end is None:
            self.cancel()
        else:
            self._begin_naming(Naming(end, arm), _ends(arm), name)

    def _begin_naming(self, naming: Naming, ends: Ends, name: str) -> None:
        self.state = naming
        self.show_ends(ends)
        cell, outward = naming.end
        self.host.ask_arm(ArmQuestion(cell, outward, ends, name, self.show_ends, self.answer))


def suggested_name(plan: Plan, end: TrackEnd, ends: Ends) -> str:
    """The name of an arm that has this place already, or that wants just such an end close by; else empty."""
    here = [arm.name for arm in plan.arms if end in _places(arm)]
    beside = [arm.name for arm in plan.arms if not _ends(arm) & ends and _lies_beside(arm, end)]
    return next(iter(here + beside), "")


def _lies_beside(arm: Arm, end: TrackEnd) -> bool:
    """Whether an end of the arm points the same way, a few cells to the side."""
    for cell, outward in _places(arm):
        step = heading_between(end.cell, cell)
        near = abs(cell.x - end.cell.x) + abs(cell.z - end.cell.z) <= 4 and cell.y == end.cell.y
        if outward is end.outward and near and step not in (outward, outward.opposite):
            return True
    return False


def _change(plan: Plan, naming: Naming, name: str, ends: Ends) -> Change:
    if naming.old is not None:
        return set_arm(plan, naming.old.name, _with_ends(naming.old, naming.end, ends, name))
    known = plan.details.arm(name)
    if known is None:
        return add_arm(plan, _with_ends(Arm(name), naming.end, ends, name))
    return set_arm(plan, name, _joined(known, naming.end, ends))


def _with_ends(arm: Arm, end: TrackEnd, ends: Ends, name: str) -> Arm:
    """The arm with just these ends: those that it has stay where they are, new ones come to ``end``."""
    enter = arm.enter or ArmEnd(end.cell, end.outward.opposite)
    leave = arm.leave or ArmEnd(end.cell, end.outward)
    return msgspec.structs.replace(
        arm,
        name=name,
        enter=enter if Ends.IN in ends else None,
        leave=leave if Ends.OUT in ends else None,
    )


def _joined(arm: Arm, end: TrackEnd, ends: Ends) -> Arm:
    """A known arm with these ends put at ``end``; its other end stays."""
    enter = ArmEnd(end.cell, end.outward.opposite) if Ends.IN in ends else arm.enter
    leave = ArmEnd(end.cell, end.outward) if Ends.OUT in ends else arm.leave
    return msgspec.structs.replace(arm, enter=enter, leave=leave)


def _ends(arm: Arm) -> Ends:
    return (Ends.IN if arm.enter else Ends.NONE) | (Ends.OUT if arm.leave else Ends.NONE)


def _places(arm: Arm) -> list[TrackEnd]:
    places = []
    if arm.enter is not None:
        places.append(TrackEnd(arm.enter.at, arm.enter.heading.opposite))
    if arm.leave is not None:
        places.append(TrackEnd(arm.leave.at, arm.leave.heading))
    return places


def _an_end(arm: Arm) -> TrackEnd | None:
    return next(iter(_places(arm)), None)
