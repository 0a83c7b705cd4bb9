"""What the windows of plans and of networks have in common: one file each, dropped on, folded, ended."""

from __future__ import annotations

from typing import Protocol

from PySide6.QtCore import QTimer
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QResizeEvent
from PySide6.QtWidgets import QDialog, QMainWindow

from app.background import Newest
from app.commands.files import FileCommands
from app.dropping import dropped_file
from app.opened import Opened
from app.recovery import Recovery


class Folding(Protocol):
    """What lays the panels out around the drawing."""

    def fold_for(self, width: int) -> None:
        """Folds what has no room in so many pixels."""


class FileWindow(QMainWindow):
    """A window on one document. Who builds it sets all four."""

    document: Opened
    recovery: Recovery
    files: FileCommands
    frame: Folding

    def end(self) -> None:
        """Lets go of the document and of all that runs for it.

        A step in the background may take seconds to its end; the user need not watch it.
        """
        self.hide()
        for dialog in self.findChildren(QDialog):
            dialog.close()
        self.recovery.close()
        self.files.close()
        self.document.close()
        for worker in self.findChildren(Newest):
            worker.stop()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """A file may be dropped."""
        if dropped_file(event.mimeData()) is not None:
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Opens it."""
        path = dropped_file(event.mimeData())
        if path is not None:
            event.acceptProposedAction()
            # The question whether to save must not keep the program waiting from which the file comes.
            QTimer.singleShot(0, self, lambda: self.files.open_path(path))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Folds what has no room."""
        super().resizeEvent(event)
        self.frame.fold_for(event.size().width())
