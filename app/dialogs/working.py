"""Says how far a long piece of work is, and lets the user cancel it."""

from __future__ import annotations

from typing import Any, Final

from PySide6.QtCore import QEventLoop, Qt, QTimer
from PySide6.QtGui import QCloseEvent
from PySide6.QtWidgets import (
    QApplication,
    QDialog,
    QDialogButtonBox,
    QProgressBar,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)
from shiboken6 import isValid

from app.background import Awaited, Begun, Beside, CancelledError, Work
from app.panels.look import label, named
from app.translation import tr
from model.progress import Progress

WIDTH: Final = 380
PATIENCE_MS: Final = 200
"""What is done by then was never seen to be worked on."""


class WorkingDialog(QDialog):
    """Stands over its window while the work is done, so that nothing else is begun there."""

    def __init__(self, parent: QWidget, title: str) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self.setWindowModality(Qt.WindowModality.WindowModal)
        self.setMinimumWidth(WIDTH)
        self._begun: Awaited | None = None
        self._loop = QEventLoop(self)
        self._patience = QTimer(self, singleShot=True, interval=PATIENCE_MS)
        self._patience.timeout.connect(self._loop.quit)
        self._is_cancelled = False
        self.state = label()
        self.bar = _bar()
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel)
        # No answer to anything: it keeps its letters, though it has the focus.
        buttons.button(QDialogButtonBox.StandardButton.Cancel).setProperty("look", "quiet")
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.setSpacing(12)
        column.addWidget(self.state)
        column.addWidget(self.bar)
        column.addWidget(buttons)

    def result_of(self, words: str, begun: Awaited) -> Any:
        """What comes of a work that was begun. Raises CancelledError, and what the work raises.

        Where it does not take long, the dialog does not come into sight; nobody can do anything meanwhile.
        """
        self.state.setText(words)
        self._begun = begun
        begun.told.connect(self._tell)
        begun.ended.connect(self._loop.quit)
        if not self.isVisible() and self._waits_for(begun):
            self._patience.start()
            self._loop.exec(QEventLoop.ProcessEventsFlag.ExcludeUserInputEvents)
            self._patience.stop()
        if self._waits_for(begun):
            self.show()
        # It may be over while it comes into sight; a loop that begins after that would never end.
        if self._waits_for(begun):
            self._loop.exec()
        if self._is_cancelled:
            raise CancelledError
        # Where the program is ended meanwhile, the loop ends without a result.
        return begun.result

    def say(self, words: str) -> None:
        """Tell how far it is, in the middle of work that is done here. Raises CancelledError."""
        self.state.setText(words)
        self.bar.reset()
        self._let_user_act()

    def tell(self, progress: Progress) -> None:
        """As ``say``, of work that knows how far it is."""
        self._tell(progress)
        self._let_user_act()

    def done(self, result: int) -> None:
        """Whatever closes it ends the work at its next step."""
        self._is_cancelled = True
        if self._begun is not None:
            self._begun.drop()
        self._loop.quit()
        super().done(result)

    def _waits_for(self, begun: Awaited) -> bool:
        return not self._is_cancelled and not begun.is_over

    def _tell(self, progress: Progress) -> None:
        self.state.setText(_words(progress))
        self.bar.setRange(0, max(progress.of, 1))
        self.bar.setValue(progress.done)

    def _let_user_act(self) -> None:
        QApplication.processEvents()
        if self._is_cancelled:
            raise CancelledError

    def closeEvent(self, event: QCloseEvent) -> None:
        """A dialog that is not in sight yet is closed with its window, too."""
        self.done(QDialog.DialogCode.Rejected)
        event.accept()


def beside(window: QWidget) -> Beside:
    """How a window has long work done: beside it, and under a dialog where that takes a while."""

    def result_of(words: str, work: Work[Any]) -> Any:
        dialog = WorkingDialog(window, tr("Working"))
        try:
            return dialog.result_of(words, Begun(dialog, work))
        finally:
            if isValid(dialog):  # the window may have been closed meanwhile
                dialog.done(QDialog.DialogCode.Accepted)
                dialog.deleteLater()

    return result_of


def _words(progress: Progress) -> str:
    return tr("{stage}: {done:,} of {of:,}", stage=progress.stage, done=progress.done, of=progress.of)


def _bar() -> QProgressBar:
    """A thin line, empty as long as it is not known how far the work is."""
    bar = named(QProgressBar(), tr("How far it is"))
    bar.setTextVisible(False)
    bar.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
    return bar
