"""Wirings in words, the same on the command line and in the window."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from app.translation import QT_TR_NOOP, tr
from model.parts import STACK, TRAITS, Part
from model.rules import Finding, Severity
from model.sheet.cautions import FROM_MEMORY, TEST_FIRST

if TYPE_CHECKING:  # what the search needs takes long to import, and words must not wait for it
    from model.progress import Progress
    from model.wiring.result import Unwired, Wiring

RULE: Final = "not-wired"
STAGES: Final = {
    "attempts": ("attempt", QT_TR_NOOP("{next:,} of {of:,}")),
    "lines": ("lines", QT_TR_NOOP("round {done:,} of {of:,}")),
    "shortening": ("lines", QT_TR_NOOP("made shorter, {done:,} of {of:,}")),
    "proof": ("proof", QT_TR_NOOP("run {done:,} of {of:,}")),
}
"""What a stage of the search works at, and how far it is, in words."""
CAUTIONS: Final = (FROM_MEMORY.title, TEST_FIRST.title)
ROOM: Final = TRAITS[Part.BARREL].slots * STACK
BARRELS: Final = QT_TR_NOOP(
    "Empty the barrel of each reader before it is full, at {room:,} waybills: then its line stays on."
)
TICKS_A_SECOND: Final = 20
FIRST_GROW: Final = 1
FIRST_DEPTH: Final = 6
MOST_CELLS: Final = 64
"""Beyond the track, and below it, that can be asked for."""


def stage_words(progress: Progress) -> tuple[str, str]:
    """What the search works at, and how far it is: ``proof`` and ``run 12 of 106``."""
    name, said = STAGES.get(progress.stage, (progress.stage, QT_TR_NOOP("{done:,} of {of:,}")))
    return name, tr(said, done=progress.done, next=progress.done + 1, of=progress.of)


def progress_words(progress: Progress) -> str:
    """``proof: run 12 of 106``."""
    return ": ".join(stage_words(progress))


def lines_words(wiring: Wiring) -> str:
    """``wired: 3 lines, 84 dust, 3 repeaters``."""
    if not wiring.wired:
        return tr("not wired")
    dust, repeaters = (sum(getattr(line, name) for line in wiring.lines) for name in ("dust", "repeaters"))
    return tr(
        "wired: {lines}, {dust:,} dust, {repeaters}",
        lines=tr("%n line(s)", "", len(wiring.lines)),
        dust=dust,
        repeaters=tr("%n repeater(s)", "", repeaters),
    )


def room_words(wiring: Wiring) -> str:
    """``180 cells from above, 4 levels below the track``."""
    cells, levels = tr("%n cell(s)", "", wiring.footprint_cells), tr("%n level(s)", "", wiring.depth)
    return tr("{cells} from above, {levels} below the track", cells=cells, levels=levels)


def proof_words(wiring: Wiring) -> str:
    """``all 108 runs passed``."""
    if not wiring.runs:
        return tr("not run")
    if wiring.passed == wiring.runs:
        return (
            tr("all {runs:,} runs passed", runs=wiring.runs) if wiring.runs > 1 else tr("its one run passed")
        )
    return tr("{passed:,} of {runs} passed", passed=wiring.passed, runs=tr("%n run(s)", "", wiring.runs))


def time_words(ticks: int) -> str:
    """``155 ticks, 7.75 s``."""
    return tr("{ticks}, {seconds:g} s", ticks=tr("%n tick(s)", "", ticks), seconds=ticks / TICKS_A_SECOND)


def as_finding(unwired: Unwired) -> Finding:
    """What could not be wired, as a finding."""
    cells = () if unwired.at is None else (unwired.at,)
    arms = () if unwired.arm is None else (unwired.arm,)
    return Finding(RULE, Severity.ERROR, cells, arms, unwired.message)
