"""How the user has set the panels: how large each is, and which are hidden; kept for the next start."""

from __future__ import annotations

from typing import Final

import msgspec

from app.panels.side_panel import SHARES, WIDTH
from app.settings import Settings

HIDEABLE: Final = ("tray", "levels", "orientations", "side")
"""Panels that can be hidden, as they are called in the window's panels."""


class Arrangement(msgspec.Struct, frozen=True):
    """Sizes in px; what the user never set is as it comes."""

    side: int = WIDTH
    """Width of the side panel."""
    shares: tuple[int, int] = SHARES
    """Heights of the upper and the lower half of the side panel."""
    diagram: int = 0
    """Height of the timing diagram; 0 where it was never set, and takes a share of the window."""
    hidden: frozenset[str] = frozenset()

    def toggled(self, panel: str) -> Arrangement:
        """With that panel hidden, or shown again."""
        return msgspec.structs.replace(self, hidden=self.hidden ^ {panel})


def read_arrangement(settings: Settings) -> Arrangement:
    """As the panels were when the program was used last."""
    try:
        found = msgspec.json.decode(settings.choice("panels", "{}"), type=Arrangement)
    except msgspec.DecodeError:
        # Settings of another version: panels as they come are better than no window.
        return Arrangement()
    return msgspec.structs.replace(found, hidden=found.hidden & {*HIDEABLE})


def keep_arrangement(settings: Settings, arrangement: Arrangement) -> None:
    """Remember it for the next start."""
    settings.choose("panels", msgspec.json.encode(arrangement, order="deterministic").decode())
