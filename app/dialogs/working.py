"""Says how far a long piece of work is, and lets the user cancel it."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QEventLoop, Qt
from PySide6.QtWidgets import QApplication, QDialog, QDialogButtonBox, QVBoxLayout, QWidget

from app.background import Job, Newest
from app.panels.look import label

WIDTH: Final = 380


class CancelledError(Exception):
    """The user thought better of it."""


class WorkingDialog(QDialog):
    """Stands over its window while the work is done, so that nothing else is begun there."""

    def __init__(self, parent: QWidget, title: str, worker: Newest) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self.setWindowModality(Qt.WindowModality.WindowModal)
        self.setMinimumWidth(WIDTH)
        self._worker = worker
        self._loop = QEventLoop(self)
        self._is_cancelled = False
        self._found: object = None
        self._error: object = None
        worker.yielded.connect(self._take)
        worker.failed.connect(self._fail)
        self.state = label()
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.setSpacing(12)
        column.addWidget(self.state)
        column.addWidget(buttons)

    def result_of(self, job: Job, words: str) -> object:
        """What a job gives that is done beside the window. Raises CancelledError, and what the job raises."""
        self.say(words)
        self._worker.ask(job)
        self._loop.exec()
        if isinstance(self._error, Exception):
            raise self._error
        # Where the program is ended meanwhile, the loop ends without a result.
        if self._found is None:
            raise CancelledError
        return self._found

    def say(self, words: str) -> None:
        """Tell how far it is, in the middle of work that is done here. Raises CancelledError."""
        self.state.setText(words)
        QApplication.processEvents()
        if self._is_cancelled:
            raise CancelledError

    def done(self, result: int) -> None:
        """Whatever closes it ends the work at its next step."""
        self._is_cancelled = True
        self._worker.drop()
        self._loop.quit()
        super().done(result)

    def _take(self, result: object) -> None:
        self._found = result
        self._loop.quit()

    def _fail(self, error: object) -> None:
        self._error = error
        self._loop.quit()
