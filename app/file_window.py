"""What the windows of plans and of networks have in common: one file each, dropped on, folded, ended."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from PySide6.QtCore import QEvent, QTimer
from PySide6.QtGui import QAction, QDragEnterEvent, QDropEvent, QResizeEvent
from PySide6.QtWidgets import QApplication, QDialog, QMainWindow

from app import motion, shown_keys, user_keys
from app.actions import UserAction
from app.background import Newest, at_once
from app.commands.bound import give_keys
from app.commands.files import FileCommands
from app.dropping import take_file
from app.opened import Opened
from app.recovery import Recovery
from app.settings import Settings
from app.user_keys import Chosen
from app.window_first import window_first


class Folding(Protocol):
    """What lays the panels out around the drawing."""

    def fold_for(self, width: int) -> None:
        """Folds what has no room in so many pixels."""


class FileWindow(QMainWindow):
    """A window on one document. Who builds it sets all of these."""

    document: Opened
    recovery: Recovery
    files: FileCommands
    frame: Folding
    settings: Settings
    bound: dict[str, QAction]
    table: Sequence[UserAction]
    """The actions that are bound."""

    def fit_screen(self) -> None:
        """Takes no more room than the screen has, as far as it can be so small; before it is first shown."""
        self.resize(self.size().boundedTo(self.screen().availableSize()))

    def change_keys(self, chosen: Chosen) -> None:
        """Let actions have other keys, in every window and from now on."""
        self.settings.keys = dict(chosen)
        user_keys.take(chosen)
        for window in QApplication.topLevelWidgets():
            if isinstance(window, FileWindow):
                give_keys(window.bound, window.table)
        shown_keys.tell_changed()

    def toggle_motion(self) -> None:
        """Let less move on the screen, or as much as the system allows; remembered for the next start."""
        self.settings.choose("motion", "as the system" if self.wants_less_motion else "less")
        self.use_motion()

    def use_motion(self) -> None:
        """Let as much move as the settings say, in every window."""
        motion.reduce(self.wants_less_motion)
        for window in QApplication.topLevelWidgets():
            if isinstance(window, FileWindow):
                window.bound["less_motion"].setChecked(self.wants_less_motion)

    @property
    def wants_less_motion(self) -> bool:
        """Whether the user asked for less than the system allows."""
        return self.settings.choice("motion", "as the system") == "less"

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
        self.document.beside = at_once  # each would hold the other for good
        for worker in self.findChildren(Newest):
            worker.stop()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """A file may be dropped."""
        take_file(event)

    def dropEvent(self, event: QDropEvent) -> None:
        """Opens it."""
        path = take_file(event)
        if path is not None:
            # The question whether to save must not keep the program waiting from which the file comes.
            QTimer.singleShot(0, self, lambda: self.files.open_path(path))

    def event(self, event: QEvent) -> bool:
        """A frame of all that stands in the window is painted before work beside it goes on."""
        if event.type() is not QEvent.Type.UpdateRequest:
            return super().event(event)
        with window_first():
            return super().event(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Folds what has no room."""
        super().resizeEvent(event)
        self.frame.fold_for(event.size().width())
