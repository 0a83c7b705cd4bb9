"""Which plan the open one is compared with, and what the window shows of it."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Final

from PySide6.QtWidgets import QFileDialog

from app.background import CancelledError, at_once
from app.commands.files import PLANS, is_long_file, not_opened, plan_in
from app.comparing.differences import Compared, Differences, compared
from app.comparing.rows import ComparedRow, row_words
from app.document import BESIDE_FROM
from app.translation import tr
from model.files.errors import PlanFileError

if TYPE_CHECKING:
    from app.window import MainWindow

OTHER_KIND: Final = ".network.json"
LONGEST: Final = 40
"""Letters of a file's name; a longer one would not fit into a line of the list."""


class CompareCommands:
    """Begins and ends comparisons. The other file is read and never written."""

    def __init__(self, window: MainWindow) -> None:
        self._window = window
        self._with_own_file = False
        self._was_on = False

    def bind(self) -> None:
        """Let the window follow the comparison, and the comparison the plan's file."""
        window = self._window
        window.view.comparing.changed.connect(self._show)
        window.panels.comparison.row_chosen.connect(self._go_to)
        window.document.dirty_changed.connect(lambda _dirty: self._follow_file())
        self._show()

    def with_file(self) -> None:
        """Ask for a plan and compare with it; compare no longer where a comparison is on."""
        window = self._window
        if window.view.comparing.is_on:
            window.view.comparing.end()
            return
        path = window.document.path
        folder = str(path.parent) if path else window.settings.choice("folder", "")
        name, _ = QFileDialog.getOpenFileName(window, tr("Compare with a plan"), folder, PLANS.filter)
        if name:
            self.with_path(Path(name))

    def with_saved(self) -> None:
        """Compare with the plan's own file as it is on the disk; compare no longer where one is on."""
        window = self._window
        path = window.document.path
        if window.view.comparing.is_on:
            window.view.comparing.end()
        elif path is None:
            window.panels.status.say(tr("This plan has no file yet with which it could be compared."))
        else:
            self.with_path(path)

    def with_path(self, path: Path) -> None:
        """Compare with the plan in a file; say why not where it cannot be read."""
        window = self._window
        if path.name.endswith(OTHER_KIND):
            window.panels.message.say(
                tr("{name} is a network; a plan can only be compared with a plan.", name=path.name)
            )
            return
        found = self._compared(path)
        if found is None:
            return
        own = window.document.path
        self._with_own_file = own is not None and own.absolute() == path.absolute()
        window.view.clear_preview()
        window.view.comparing.start(found, tr("the saved file") if self._with_own_file else _short(path.name))

    def _compared(self, path: Path) -> Compared | None:
        """The plan of now compared with a file; ``None``, and why it is said, where that is not to be."""
        window, document = self._window, self._window.document
        plan, here = document.plan, document.layout.copy()
        is_long = len(plan.pieces) >= BESIDE_FROM or is_long_file(path)
        do = document.beside if is_long else at_once
        try:
            found = do(tr("Comparing…"), lambda: compared(lambda: plan_in(path), here))
        except (PlanFileError, OSError) as error:
            window.panels.message.say(not_opened(path, error))
        except CancelledError:
            window.panels.status.say(tr("Cancelled: nothing is compared."))
        else:
            # An edit that a search made meanwhile is no part of what was compared.
            return found if document.plan is plan else None
        return None

    def step(self, steps: int) -> None:
        """Go to another difference, and tell of it: the list that a screen reader reads has no focus."""
        panel = self._window.panels.comparison
        panel.step(steps)
        if panel.row is not None:
            self._window.speech.speaker.tell(row_words(panel.row))

    def go_to_list(self) -> None:
        """Put the focus into the list of differences."""
        if self._window.view.comparing.is_on:
            self._window.panels.comparison.list.setFocus()

    def _follow_file(self) -> None:
        """What was just saved differs from its file no more."""
        document, comparing = self._window.document, self._window.view.comparing
        if comparing.is_on and self._with_own_file and not document.is_dirty:
            comparing.start(Compared(document.layout.copy(), Differences()), comparing.name)

    def _go_to(self, row: ComparedRow) -> None:
        if row.cell is not None:
            self._window.view.lead_to((row.cell,))

    def _show(self) -> None:
        window, is_on = self._window, self._window.view.comparing.is_on
        if not is_on and window.panels.comparison.isAncestorOf(window.focusWidget()):
            window.view.setFocus()
        window.side.show_extra(is_on)
        if is_on is not self._was_on:
            self._was_on = is_on
            window.speech.speaker.tell(window.view.comparing.title if is_on else tr("No longer compared"))
        for name in ("next_difference", "previous_difference", "swap_comparison", "show_differences"):
            window.bound[name].setEnabled(is_on)


def _short(name: str) -> str:
    return name if len(name) <= LONGEST else name[: LONGEST - 1] + "…"
