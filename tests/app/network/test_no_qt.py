"""The tools of the map, and all that they stand on, know no Qt: they can be driven without a screen."""

from __future__ import annotations

import subprocess
import sys


def test_importing_the_tools_of_the_map_loads_no_qt() -> None:
    modules = "app.network.tools.table, app.network.placing, app.network.passages, app.network.ways"
    code = f"import sys, {modules}; print([m for m in sys.modules if 'PySide' in m])"
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert ran.stdout.strip() == "[]"
