"""What a builder must know before the first block."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from typing import Final, Protocol

import msgspec

from model.routing.junction import Junction, Switch
from model.sheet.drawn import has_drive
from model.sheet.levels import LevelPage
from model.steps import Step


class Finding(Protocol):
    """What the sheet needs of a finding."""

    @property
    def rule(self) -> str: ...
    @property
    def severity(self) -> str: ...
    @property
    def message(self) -> str: ...
    @property
    def waived(self) -> bool: ...


class Caution(msgspec.Struct, frozen=True):
    """A caution on the cover."""

    severity: str
    """``error``, ``warning`` or ``note``: which marker stands beside it."""
    title: str
    text: str


TEST_FIRST = Caution(
    "warning", "A test cart before the first passenger.", "Go through the test checklist when all is built."
)
FROM_MEMORY = Caution(
    "warning",
    "The rules are common practice, from memory.",
    "Your world may run by others: try one switch before you build the rest.",
)
ONE_ORIENTATION = Caution(
    "warning", "Build in this orientation only.", "Turned or mirrored, switches can rest the other way."
)
NUMBERS = Caution("note", "Lay the numbered rails in order.", "Their shape follows from the order.")
ARROWS = Caution("note", "Face the way of the arrow where a rail has one.", "It would lie across else.")


STEPS: Final = Caution(
    "note", "Go step by step: some parts come late.", "Each of them says why it waits for a higher level."
)


def cautions(
    junction: Junction, findings: Iterable[Finding], levels: Sequence[LevelPage], steps: Iterable[Step]
) -> tuple[Caution, ...]:
    """All cautions, the gravest first; the last two stand on every sheet."""
    drives = [switch for switch in junction.switches if has_drive(junction, switch)]
    rails = [one.rail for page in levels for one in page.pieces if one.rail is not None]
    notes = [NUMBERS] if any(rail.number for rail in rails) else []
    notes += [ARROWS] if any(rail.faces for rail in rails) else []
    return (
        *_errors(findings),
        *([ONE_ORIENTATION] if drives else []),
        *_power_once(junction, drives),
        *(_levels_in_order(levels) if _climb(steps) else [STEPS]),
        *notes,
        FROM_MEMORY,
        TEST_FIRST,
    )


def _errors(findings: Iterable[Finding]) -> Iterator[Caution]:
    """Errors that are not set aside, those of one rule together."""
    by_rule: dict[str, list[Finding]] = {}
    for finding in findings:
        if finding.severity == "error" and not finding.waived:
            by_rule.setdefault(finding.rule, []).append(finding)
    for first, *others in by_rule.values():
        more = f"And {len(others):,} more of this kind. " if others else ""
        yield Caution("error", first.message, f"{more}Mend the plan before you build it.")


def _power_once(junction: Junction, drives: Iterable[Switch]) -> Iterator[Caution]:
    """For switches that were built into another shape than the one in which they rest."""
    names = [switch.name for switch in drives if junction.layout.shape(switch.at) != switch.resting]
    if names:
        *most, last = names
        listed = f"{', '.join(most)} and {last}" if most else last
        rest = "It rests" if not most else "They rest"
        yield Caution("warning", f"Power {listed} once.", f"{rest} wrong until the first signal.")


def _climb(steps: Iterable[Step]) -> bool:
    """Whether no step goes back to a lower level."""
    return all(before.level <= after.level for before, after in pairwise(steps))


def _levels_in_order(levels: Sequence[LevelPage]) -> Iterator[Caution]:
    if len(levels) > 1:
        low, high = levels[0].level, levels[-1].level
        title = (
            f"Level {low} before level {high}."
            if len(levels) == 2
            else f"The levels in order, from {low} up to {high}."
        )
        yield Caution("note", title.replace("-", "−"), "Rails fall where nothing carries them.")
