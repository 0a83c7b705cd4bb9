"""The tools know no Qt: they are driven without a screen."""

from __future__ import annotations

import subprocess
import sys


def test_importing_every_tool_loads_no_qt() -> None:
    code = "import sys, app.tools.table, app.tools.paste; print([m for m in sys.modules if 'PySide' in m])"
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert ran.stdout.strip() == "[]"
