"""How large a symbol is drawn: line widths, the grid of whole pixels, and how much detail is shown.

Wide to narrow lines are 2:1 after ISO 128 (from memory), on screen and on paper.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import IntEnum


class Detail(IntEnum):
    """How much is drawn, from one pixel a piece to everything."""

    DOT = 0
    LINES = 1
    SMALL = 2
    FIGURES = 3
    STRENGTHS = 4
    ALL = 5


WIDE_FROM_MM = ((8.0, 0.7), (4.0, 0.5), (2.0, 0.35))
"""From how many mm a cell wide lines on paper have which width; plans are drawn at 5 mm and more."""
WIDE_LEAST_MM = 0.25
DETAIL_FROM_MM = ((2.5, Detail.ALL), (0.8, Detail.LINES))
"""From how many mm a cell each detail is shown; only the picture on a cover is ever so small."""

DETAIL_FROM = (
    (40, Detail.ALL),
    (24, Detail.STRENGTHS),
    (20, Detail.FIGURES),
    (12, Detail.SMALL),
    (5, Detail.LINES),
)
"""From how many px a cell each detail is shown."""


def detail_at(c: float) -> Detail:
    """The detail at ``c`` px a cell."""
    return next((detail for least, detail in DETAIL_FROM if c >= least), Detail.DOT)


@dataclass(frozen=True, slots=True)
class Size:
    """The measures of one cell, in the painter's units: device pixels on screen, mm on paper."""

    c: float
    """Side of the cell."""
    wide: float
    """Width of a wide line; a narrow one is half of it."""
    detail: Detail
    side_gate_figures: bool
    """Whether a torch on the side carries its "1"."""
    unit: float
    """One px of the visual measures."""
    snaps: bool
    """Whether lines keep to whole pixels."""

    @property
    def narrow(self) -> float:
        """Width of a narrow line."""
        return self.wide / 2

    @property
    def hatch_width(self) -> float:
        """Width of a hatching line."""
        return max(0.75 * self.narrow, 0.8 * self.unit) if self.snaps else 0.75 * self.narrow

    @property
    def hatch_pitch(self) -> float:
        """Distance of hatching lines along the edge."""
        return max(4 * self.unit, self.c / 6)

    @property
    def is_small(self) -> bool:
        """Whether the small forms are drawn."""
        return self.detail <= Detail.SMALL

    def line(self, at: float, width: float) -> float:
        """Where the middle of a line comes that was meant at ``at``: its edge on a whole pixel.

        It is the same seen from both sides of the cell; only a line in the middle that is too odd to be
        centred leans to the south and east.
        """
        if not self.snaps:
            return at
        middle = self.c / 2
        if abs(at - middle) < 1e-6:
            return math.ceil(at - width / 2 - 1e-6) + width / 2
        if at < middle:
            return self.c - self.line(self.c - at, width)
        return math.floor(at + width / 2 + 0.5) - width / 2

    def edge(self, at: float) -> float:
        """The whole pixel nearest to ``at``, the same seen from both sides of the cell."""
        return self.line(at, 0)


def screen(c: float, ratio: float = 1.0) -> Size:
    """A cell of ``c`` px on a screen with ``ratio`` device pixels a px, measured in device pixels."""
    wide = max(round(2 * ratio), round(c * ratio / 12))
    side = max(1, round(c * ratio))
    return Size(side, wide, detail_at(c), c >= 36, ratio, snaps=True)


def paper(mm: float) -> Size:
    """A cell of ``mm`` on paper, measured in mm."""
    wide = next((wide for least, wide in WIDE_FROM_MM if mm >= least), WIDE_LEAST_MM)
    detail = next((detail for least, detail in DETAIL_FROM_MM if mm >= least), Detail.DOT)
    return Size(mm, wide, detail, True, 0.175, snaps=False)
