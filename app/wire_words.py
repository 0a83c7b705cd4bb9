"""Wirings in words, the same on the command line and in the window."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from model.edits.words import counted
from model.rules import Finding, Severity
from model.sheet.cautions import FROM_MEMORY, TEST_FIRST

if TYPE_CHECKING:  # what the search needs takes long to import, and words must not wait for it
    from model.wiring.progress import Progress
    from model.wiring.result import Unwired, Wiring

RULE: Final = "not-wired"
STAGES: Final = {
    "control table": "control table",
    "lines": "lines: round {done} of {of}",
    "shortening": "shorter lines: {done} of {of}",
    "proof": "proof: run {done} of {of}",
}
"""How far a stage of the search is, in words."""
CAUTION: Final = f"{FROM_MEMORY.title} {TEST_FIRST.title}"
TICKS_A_SECOND: Final = 20
FIRST_GROW: Final = 1
FIRST_DEPTH: Final = 6
MOST_CELLS: Final = 64
"""Beyond the track, and below it, that can be asked for."""


def progress_words(progress: Progress) -> str:
    """``attempt 3 of 40``, ``proof: run 12 of 106``."""
    if progress.stage == "attempts":
        return f"attempt {progress.done + 1:,} of {progress.of:,}"
    said = STAGES.get(progress.stage, f"{progress.stage}: {{done}} of {{of}}")
    return said.format(done=f"{progress.done:,}", of=f"{progress.of:,}")


def lines_words(wiring: Wiring) -> str:
    """``wired: 3 lines, 84 dust, 3 repeaters``."""
    if not wiring.wired:
        return "not wired"
    dust, repeaters = (sum(getattr(line, name) for line in wiring.lines) for name in ("dust", "repeaters"))
    return f"wired: {counted(len(wiring.lines), 'line')}, {dust:,} dust, {counted(repeaters, 'repeater')}"


def room_words(wiring: Wiring) -> str:
    """``180 cells from above, 4 levels below the track``."""
    cells, levels = counted(wiring.footprint_cells, "cell"), counted(wiring.depth, "level")
    return f"{cells} from above, {levels} below the track"


def proof_words(wiring: Wiring) -> str:
    """``all 108 runs passed``."""
    if not wiring.runs:
        return "not run"
    if wiring.passed == wiring.runs:
        return f"all {wiring.runs:,} runs passed" if wiring.runs > 1 else "its one run passed"
    return f"{wiring.passed:,} of {counted(wiring.runs, 'run')} passed"


def time_words(ticks: int) -> str:
    """``155 ticks, 7.75 s``."""
    return f"{counted(ticks, 'tick')}, {ticks / TICKS_A_SECOND:g} s"


def as_finding(unwired: Unwired) -> Finding:
    """What could not be wired, as a finding."""
    cells = () if unwired.at is None else (unwired.at,)
    arms = () if unwired.arm is None else (unwired.arm,)
    return Finding(RULE, Severity.ERROR, cells, arms, unwired.message)
