"""What can be worked out in depth without a screen knows no Qt."""

from __future__ import annotations

import subprocess
import sys


def test_importing_the_sight_and_the_ties_loads_no_qt() -> None:
    code = "import sys, app.depth.sight, app.depth.ties, app.depth.which; "
    code += "print([m for m in sys.modules if 'PySide' in m])"
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert ran.stdout.strip() == "[]"
