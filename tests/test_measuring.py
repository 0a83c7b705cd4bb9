"""The table of ratios: verdicts, the change since an earlier table, and the file."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

from tests.benchmarks.measuring import Row, processor_seconds, read, seconds, table, write

AT_MOST = Row("open", "json.loads", 1.5, 2)
AT_LEAST = Row("dry run", "real time", 1.5, 2, at_least=True)
NO_GOAL = Row("order", "one replay", 650)


def test_verdicts() -> None:
    assert [row.verdict for row in (AT_MOST, AT_LEAST, NO_GOAL)] == ["met", "missed", ""]
    assert Row("open", "json.loads", 2, 2).verdict == Row("run", "time", 2, 2, at_least=True).verdict == "met"


def test_the_table_tells_what_changed() -> None:
    before = [Row("open", "json.loads", 1.2, 2), Row("dry run", "a lamp", 9)]
    assert [" ".join(line.split()) for line in table([AT_MOST, AT_LEAST, NO_GOAL], before)] == [
        "what against ratio change goal",
        "open json.loads 1.5 +25% ≤ 2 met",
        "dry run real time 1.5 ≥ 2 missed",
        "order one replay 650",
    ]


def test_what_is_written_is_read(tmp_path: Path) -> None:
    """The standard library reads it, too."""
    file = tmp_path / "ratios.json"
    assert read(file) == []
    write([AT_MOST, NO_GOAL], file)
    assert read(file) == [AT_MOST, NO_GOAL]
    written = json.loads(file.read_text())
    assert [row["verdict"] for row in written["rows"]] == ["met", ""]
    assert "processors" in written["machine"]


def test_the_clock_counts_processes_that_were_waited_for() -> None:
    """The other process counts its own time, as the standard library does, and is slower to start and end."""
    program = "import time\nwhile time.process_time() < 0.2: pass"
    own = processor_seconds()
    waited_for = seconds(lambda: subprocess.run([sys.executable, "-c", program], check=True))
    assert 0.2 <= waited_for <= processor_seconds() - own
