"""Sheets of paper: sizes after ISO 216, margins and frame after ISO 5457 (from memory). All lengths in mm."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QRectF

FILING_EDGE: Final = 20.0
MARGIN: Final = 10.0
BLOCK_WIDTH: Final = 180.0
BLOCK_HEIGHT: Final = 36.0


@dataclass(frozen=True)
class Paper:
    """A sheet as it lies on the desk; A4 stands, A3 lies."""

    name: str
    width: float
    height: float

    @property
    def frame(self) -> QRectF:
        """The drawing space, with the filing edge on the left."""
        return QRectF(FILING_EDGE, MARGIN, self.width - FILING_EDGE - MARGIN, self.height - 2 * MARGIN)

    @property
    def block(self) -> QRectF:
        """The title block, in the frame's bottom right corner."""
        right, bottom = self.frame.right(), self.frame.bottom()
        return QRectF(right - BLOCK_WIDTH, bottom - BLOCK_HEIGHT, BLOCK_WIDTH, BLOCK_HEIGHT)

    @property
    def lies(self) -> bool:
        """Whether it is wider than high: there is room beside the title block."""
        return self.width > self.height

    @property
    def body(self) -> QRectF:
        """The frame above the title block."""
        return self.frame.adjusted(0, 0, 0, -BLOCK_HEIGHT)


PAPERS: Final = {"A4": Paper("A4", 210.0, 297.0), "A3": Paper("A3", 420.0, 297.0)}
