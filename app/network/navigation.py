"""Which part of the map is in sight. The plan's navigator does it; a map has no rulers beside it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QRect, QRectF

from app.canvas.geometry import FULL_SIZE, ZOOM_STEPS, Area, Viewport, fitting_step
from app.canvas.navigation import Navigator

BESIDE: Final = 20
"""px left free beside what is fitted."""
ABOVE: Final = 52
"""px left free above and below, for the chip."""


class MapNavigator(Navigator):
    """Squares of the map in the place of cells."""

    @property
    def room(self) -> QRect:
        """All of the widget."""
        return self._widget.rect()

    def fit_box(self, area: Area, box: Callable[[int], QRectF]) -> None:
        """Shows an area with its names; ``box`` says what room they take at so many px a square."""
        wide, high = self.room.width() - 2 * BESIDE, self.room.height() - 2 * ABOVE
        most = fitting_step(area, wide, high)
        for scale in [step for step in reversed(ZOOM_STEPS) if step <= min(most, FULL_SIZE)]:
            taken = box(scale)
            if (taken.width() <= wide and taken.height() <= high) or scale == ZOOM_STEPS[0]:
                middle = taken.center() / scale
                at = self.room.center()
                self.glide(Viewport(scale).centred(middle.x(), middle.y(), at.x(), at.y()))
                self.keep_fitted(lambda: self.fit_box(area, box))
                return
