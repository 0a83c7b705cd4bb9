"""The Qt binding itself: some releases take a reference off None in void calls, until Python aborts."""

from __future__ import annotations

import os
import subprocess
import sys

CALLS = """
import sys
from PySide6.QtCore import QObject
thing = QObject()
before = sys.getrefcount(None)
for _ in range(20_000):
    thing.setObjectName("name")
print(before - sys.getrefcount(None))
"""


def test_void_calls_leave_none_alone() -> None:
    # Measured: PySide6 6.12.0 with CPython 3.11 loses one reference in nearly every void call.
    environment = {**os.environ, "QT_QPA_PLATFORM": "offscreen"}
    run = subprocess.run(
        [sys.executable, "-c", CALLS], capture_output=True, text=True, check=True, env=environment, timeout=60
    )
    assert int(run.stdout) < 100
