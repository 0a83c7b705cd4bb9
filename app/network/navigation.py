"""Which part of the map is in sight. The plan's navigator does it; a map has no rulers beside it."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QRect

from app.canvas.geometry import Area, Viewport, fitting_step
from app.canvas.navigation import Navigator

BESIDE: Final = 110
"""px left free beside what is fitted, for names."""
ABOVE: Final = 72
"""px left free above and below: the chip, the key, names."""


class MapNavigator(Navigator):
    """Squares of the map in the place of cells."""

    @property
    def room(self) -> QRect:
        """All of the widget."""
        return self._widget.rect()

    def fit(self, area: Area) -> None:
        """Shows an area whole and in the middle, no larger than 100 %."""
        scale = fitting_step(area, self.room.width() - 2 * BESIDE, self.room.height() - 2 * ABOVE)
        self._centre(Viewport(scale), area)
