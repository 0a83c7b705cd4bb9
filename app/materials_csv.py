"""The materials as comma-separated values, for the command line and the window."""

from __future__ import annotations

import csv
import io

from model.sheet.materials import Materials


def materials_csv(needed: Materials) -> str:
    """A header, then one row a part and level (RFC 4180, lines ending in CR LF).

    The words of the parts are the only text, and none begins what a spreadsheet takes for a formula.
    """
    text = io.StringIO(newline="")
    rows = csv.writer(text)
    rows.writerow(("part", "level", "pieces"))
    for material in needed.parts:
        rows.writerows((material.part, level, pieces) for level, pieces in material.levels.items())
    return text.getvalue()
