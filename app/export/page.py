"""What a page is before it is drawn, and what all pages of a sheet share."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from app.export.papers import Paper
from app.export.pencil import Pencil
from app.export.washes import Washes
from app.theme import Theme
from app.translation import tr
from model.pieces import Pieces
from model.plan import Arm
from model.sheet.sheet import Sheet


@dataclass(frozen=True)
class Job:
    """All that a page may draw from."""

    sheet: Sheet
    pieces: Pieces
    """Of the plan: signal dust looks at its neighbours."""
    paper: Paper
    theme: Theme
    washes: Washes
    """The ways of carts to be laid under the track; none on black and white paper."""

    @property
    def arms(self) -> tuple[Arm, ...]:
        """The plan's arms in file order."""
        return self.sheet.arms

    def footer(self, first: str) -> str:
        """What stands below the frame, after what the page itself says."""
        side = self.sheet.running_side
        running = [] if side is None else [tr("running side {side}", side=tr(side))]
        return " \u00b7 ".join([*([first] if first else []), *running])


@dataclass(frozen=True)
class Page:
    """A page with its words for the title block; ``draw`` draws the body within the frame."""

    supplement: str
    footer: str
    draw: Callable[[Pencil], None]
