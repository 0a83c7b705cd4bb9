"""The characters of the notation."""

from __future__ import annotations

from typing import Final

from model.parts import Part

EMPTY: Final = "·"

RAIL_GLYPHS: Final[dict[Part, str]] = {
    Part.RAIL: "│─^>v<╭╮╰╯",
    Part.BOOSTER_RAIL: "║═⇑⇒⇓⇐",
    Part.DETECTOR_RAIL: "┆┄↑→↓←",
}
"""By part, then by shape: straight (2), rising (4), and for the plain rail the curves (4)."""

LETTERS: Final[dict[Part, str]] = {
    Part.SOLID_BLOCK: "#",
    Part.GLASS: "G",
    Part.SLAB: "S",
    Part.TARGET_BLOCK: "X",
    Part.DUST: "d",
    Part.TORCH: "T",
    Part.REPEATER: "R",
    Part.COMPARATOR: "C",
    Part.LEVER: "L",
    Part.BUTTON: "B",
    Part.HOPPER: "H",
    Part.BARREL: "U",
    Part.AUTO_CRAFTER: "A",
    Part.LAMP: "O",
}
"""Parts as they come out of the tray."""

SPARE_LETTERS: Final = "abcefghijklmnopqrstuwxyzDEFIJKMNPQVWYZ0123456789"
"""For parts that face another way or are set otherwise, each with a line in the legend."""

TYPED: Final = {"|": "│", "-": "─", "=": "═", ".": EMPTY}
"""What may be typed on any keyboard instead."""
