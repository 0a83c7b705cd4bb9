"""How the user has set the panels: how large each is, and which are hidden; kept for the next start."""

from __future__ import annotations

from typing import Annotated, Final, NamedTuple

import msgspec

from app.panels.side_panel import SHARES, WIDTH
from app.settings import Settings

Pixels = Annotated[int, msgspec.Meta(ge=0, le=100_000)]
"""Larger than any screen is nothing that the user has set, and Qt counts no further than 32 bits."""


class Arrangement(msgspec.Struct, frozen=True):
    """Sizes in px; what the user never set is as it comes."""

    side: Pixels = WIDTH
    """Width of the side panel; 0 where it was never set, and follows from that of the window."""
    shares: tuple[Pixels, Pixels] = SHARES
    """Heights of the upper and the lower half of the side panel."""
    diagram: Pixels = 0
    """Height of the timing diagram; 0 where it was never set, and takes a share of the window."""
    hidden: frozenset[str] = frozenset()

    def toggled(self, panel: str) -> Arrangement:
        """With that panel hidden, or shown again."""
        return msgspec.structs.replace(self, hidden=self.hidden ^ {panel})


class PanelSet(NamedTuple):
    """What the windows of one kind have around their drawing."""

    key: str
    """The name in the settings."""
    hideable: tuple[str, ...]
    """Panels that can be hidden, as they are called in the actions."""
    first: Arrangement
    """As the panels come."""


PLAN_PANELS: Final = PanelSet("panels", ("tray", "levels", "orientations", "side"), Arrangement())


def read_arrangement(settings: Settings, panels: PanelSet = PLAN_PANELS) -> Arrangement:
    """As the panels were when the program was used last."""
    try:
        kept = settings.choice(panels.key, _encoded(panels.first))
        found = msgspec.json.decode(kept, type=Arrangement)
    except msgspec.DecodeError:
        # Settings of another version: panels as they come are better than no window.
        return panels.first
    return msgspec.structs.replace(found, hidden=found.hidden & {*panels.hideable})


def keep_arrangement(settings: Settings, arrangement: Arrangement, panels: PanelSet = PLAN_PANELS) -> None:
    """Remember it for the next start."""
    settings.choose(panels.key, _encoded(arrangement))


def _encoded(arrangement: Arrangement) -> str:
    return msgspec.json.encode(arrangement, order="deterministic").decode()
