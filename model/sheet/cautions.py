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
from model.wording import QT_TR_NOOP, tr


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
    "warning",
    QT_TR_NOOP("A test cart before the first passenger."),
    QT_TR_NOOP("Go through the test checklist when all is built."),
)
FROM_MEMORY = Caution(
    "warning",
    QT_TR_NOOP("The rules are common practice, from memory."),
    QT_TR_NOOP("Your world may run by others: try one switch before you build the rest."),
)
ONE_ORIENTATION = Caution(
    "warning",
    QT_TR_NOOP("Build in this orientation only."),
    QT_TR_NOOP("Turned or mirrored, switches can rest the other way."),
)
NUMBERS = Caution(
    "note", QT_TR_NOOP("Lay the numbered rails in order."), QT_TR_NOOP("Their shape follows from the order.")
)
ARROWS = Caution(
    "note",
    QT_TR_NOOP("Face the way of the arrow where a rail has one."),
    QT_TR_NOOP("It would lie across else."),
)


STEPS: Final = Caution(
    "note",
    QT_TR_NOOP("Go step by step: some parts come late."),
    QT_TR_NOOP("Each of them says why it waits for a higher level."),
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
        *([_said(ONE_ORIENTATION)] if drives else []),
        *_power_once(junction, drives),
        *(_levels_in_order(levels) if _climb(steps) else [_said(STEPS)]),
        *map(_said, (*notes, FROM_MEMORY, TEST_FIRST)),
    )


def _said(caution: Caution) -> Caution:
    """In the language of the user."""
    return Caution(caution.severity, tr(caution.title), tr(caution.text))


def _errors(findings: Iterable[Finding]) -> Iterator[Caution]:
    """Errors that are not set aside, those of one rule together."""
    by_rule: dict[str, list[Finding]] = {}
    for finding in findings:
        if finding.severity == "error" and not finding.waived:
            by_rule.setdefault(finding.rule, []).append(finding)
    for first, *others in by_rule.values():
        mend = tr("Mend the plan before you build it.")
        more = tr("And {count:,} more of this kind.", count=len(others)) if others else ""
        yield Caution("error", first.message, f"{more} {mend}".strip())


def _power_once(junction: Junction, drives: Iterable[Switch]) -> Iterator[Caution]:
    """For switches that were built into another shape than the one in which they rest."""
    names = [switch.name for switch in drives if junction.layout.shape(switch.at) != switch.resting]
    if names:
        *most, last = names
        listed = tr("{most} and {last}", most=", ".join(most), last=last) if most else last
        one, several = (
            QT_TR_NOOP("It rests wrong until the first signal."),
            QT_TR_NOOP("They rest wrong until the first signal."),
        )
        yield Caution(
            "warning",
            tr("Power {listed} once.", listed=listed),
            tr(several if most else one),
        )


def _climb(steps: Iterable[Step]) -> bool:
    """Whether no step goes back to a lower level."""
    return all(before.level <= after.level for before, after in pairwise(steps))


def _levels_in_order(levels: Sequence[LevelPage]) -> Iterator[Caution]:
    if len(levels) > 1:
        low, high = levels[0].level, levels[-1].level
        title = (
            tr("Level {low} before level {high}.", low=low, high=high)
            if len(levels) == 2
            else tr("The levels in order, from {low} up to {high}.", low=low, high=high)
        )
        yield Caution("note", title.replace("-", "−"), tr("Rails fall where nothing carries them."))
