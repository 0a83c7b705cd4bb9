"""The course of the first sketch: which hint holds, what was done, and when the next one comes."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QObject, Signal

from app.canvas.view import PlanView
from app.first_sketch.hints import HINTS, Deed, Hint, Progress, Seen
from app.first_sketch.outlines import outline
from app.settings import Settings
from app.translation import tr
from model.grid import Cell

ENDED: Final = ("first_sketch", "ended")
"""How the settings remember that the user needs it no more."""


class FirstSketch(QObject):
    """Follows the document and the previews while it is on; it never changes the plan."""

    changed = Signal()
    """Another hint, or more of its thing done."""
    status = Signal(str)

    def __init__(self, view: PlanView, settings: Settings) -> None:
        super().__init__(view)
        self._view = view
        self._settings = settings
        self._deeds: frozenset[Deed] = frozenset()
        self.middle = view.cursor
        """The cell about which the first track is to lie."""
        self.is_on = False
        self.number = 0
        """Of the hint, from 0; that of none where all is done."""
        self._skipped: set[int] = set()
        self._may_go_on = False
        document = view.document
        document.changed.connect(self._look)
        document.details_changed.connect(self._look)
        document.junction_updated.connect(self._look)
        document.reset.connect(self._forget)
        view.previews.changed.connect(self._note_preview)
        view.unwound.connect(self.put_away)

    @property
    def hint(self) -> Hint | None:
        """The hint that holds; ``None`` where all is done."""
        return HINTS[self.number] if self.number < len(HINTS) else None

    @property
    def progress(self) -> Progress:
        """How much of the hint's thing is done."""
        return Progress(0, 0) if self.hint is None else self.hint.progress(self._seen())

    @property
    def may_go_on(self) -> bool:
        """Whether it was put away in the plan that is open, and can be taken up where it was."""
        return self._may_go_on

    def begin(self) -> None:
        """The first hint whose thing is not done in this plan; where it was put away, the one of then."""
        if not self._may_go_on:
            self.number = 0
            self._deeds = frozenset()
            self._skipped.clear()
            self.middle = self._middle_of_view()
        self.is_on = self._may_go_on = True
        self._pass_over_done()
        self._show()

    def note(self, deed: Deed) -> None:
        """Something was done that leaves no trace in the plan."""
        if self.is_on and deed not in self._deeds:
            self._deeds |= {deed}
            self._look()

    def skip(self) -> None:
        """The next hint, with this one's thing left undone."""
        if self.hint is not None:
            self._skipped.add(self.number)
            self.number += 1
            self._pass_over_done()
            self._show()

    def put_away(self) -> None:
        """Shows no hint until it is asked for again."""
        if self.is_on:
            self.is_on = False
            self._show()
            if self.hint is not None:
                self.status.emit(tr("The first sketch is put away; First sketch in the menu Help goes on."))

    def end(self) -> None:
        """The user has seen enough: it is offered less from now on, and begins anew when asked for."""
        self._settings.choose(*ENDED)
        self.is_on = self._may_go_on = False
        self._show()

    def _look(self, *_: object) -> None:
        if self.is_on:
            self._go_back_to_undone()
            self._pass_over_done()
            self._show()

    def _go_back_to_undone(self) -> None:
        """What was undone or erased is asked for again: the next hint stands on it."""
        while self.hint is not None and self.number and not self._is_behind(self.number - 1):
            self.number -= 1

    def _is_behind(self, number: int) -> bool:
        return number in self._skipped or HINTS[number].progress(self._seen()).is_complete

    def _pass_over_done(self) -> None:
        while self.hint is not None and self.progress.is_complete:
            self.number += 1
        if self.hint is None:
            self._settings.choose(*ENDED)
            self._may_go_on = False

    def _note_preview(self) -> None:
        shown = self._view.previews.shown
        if shown.thrown_by_hand:
            self.note(Deed.SWITCH_THROWN)
        if any(run.driven for run in shown.runs):
            self.note(Deed.CART_SENT)

    def _forget(self) -> None:
        """Another plan was opened: the hints would speak of what is not there."""
        self._may_go_on = False
        if self.is_on:
            self.is_on = False
            self._show()

    def _show(self) -> None:
        ghost = outline(self.number, self._seen(), self.middle) if self.is_on and self.hint else None
        self._view.show_outline(ghost)
        self.changed.emit()

    def _seen(self) -> Seen:
        document = self._view.document
        is_clear = not document.junction_is_old and not document.found.open.total()
        return Seen(document.layout, self._deeds, is_clear)

    def _middle_of_view(self) -> Cell:
        """A little above the middle, so that the branch has room below."""
        seen = self._view.navigator.seen
        z = (2 * seen.north + seen.south) // 3
        return Cell((seen.west + seen.east) // 2, self._view.level, z)


def has_ended(settings: Settings) -> bool:
    """Whether the user has been through the first sketch, or has seen enough of it."""
    key, word = ENDED
    return settings.choice(key, "") == word
