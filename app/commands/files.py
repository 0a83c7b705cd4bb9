"""Opening and saving plans and networks, and the question whether changes are to be kept."""

from __future__ import annotations

import os
from collections.abc import Callable, Generator
from pathlib import Path
from typing import Any, Final, NamedTuple

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog, QMessageBox, QWidget

from app.background import CancelledError, at_once
from app.claim import Claim
from app.commands.file_words import PLAN_WORDS, FileWords
from app.commands.letters import lettered
from app.dialogs.asking import asking
from app.opened import Opened, Stamp, stamp_of
from app.recovery import LeftOver, Recovery
from app.settings import Settings
from app.translation import tr
from app.watching import Watch
from model.files.errors import PlanFileError
from model.files.opening import check_ordinary
from model.files.plan_file import read_plan
from model.files.writer import WriteError
from model.plan import Plan
from model.progress import Progress

ENDINGS: Final = (".plan.json", ".network.json")
Button = QMessageBox.StandardButton
PORTS: Final = {f"{port}{number}" for port in ("com", "lpt") for number in "0123456789¹²³"}
RESERVED: Final = {"con", "prn", "aux", "nul"} | PORTS
"""Of these names Windows makes devices, whatever ending follows (Microsoft, "Naming Files", from memory)."""
MANY_BYTES: Final = 200_000
"""A file that long may not be opened within 100 ms, so that is done beside the window."""
LONGEST: Final = 60
"""Letters of a title in a question; longer ones would not fit on the screen."""


def is_long_file(path: Path) -> bool:
    """Whether reading a file, and what follows, may take so long that the window must not wait for it."""
    stamp = stamp_of(path)
    return stamp is not None and stamp[1] >= MANY_BYTES


def plan_in(path: Path) -> Plan:
    """The plan in a file that the user chose. Raises PlanFileError."""
    check_ordinary(path)
    return read_plan(path)


class FileKind(NamedTuple):
    """What is opened in a kind of window."""

    word: str
    """``plan``: what a file is called where its title says nothing."""
    ending: str
    words: FileWords
    read: Callable[[Path, Path | None], Any]
    """Of the file, and of the one whose copy it is. Raises PlanFileError or OSError."""

    def is_for(self, path: Path) -> bool:
        """Whether a file belongs into this kind of window; a name that tells nothing does."""
        return path.name.endswith(self.ending) or not path.name.endswith(ENDINGS)

    @property
    def filter(self) -> str:
        """For the question under which name to save."""
        return tr(self.words.files, ending=self.ending)


PLANS: Final = FileKind("plan", ".plan.json", PLAN_WORDS, lambda path, _beside: plan_in(path))


class FileCommands:
    """Every way in which a document comes into its window or leaves it."""

    def __init__(
        self,
        parent: QWidget,
        document: Opened,
        recovery: Recovery,
        settings: Settings,
        tell: Callable[[str], None],
        finish_edit: Callable[[], None],
        elsewhere: Callable[[Path], object],
        offer: Callable[[str, str, Callable[[], object]], None],
        withdraw: Callable[[str], None],
        kind: FileKind = PLANS,
    ) -> None:
        self._parent = parent
        self._document = document
        self._recovery = recovery
        self._settings = settings
        self._tell = tell
        self._finish_edit = finish_edit
        self._elsewhere = elsewhere
        self._kind = kind
        self._offer = offer
        self._withdraw = withdraw
        self._claim = Claim(recovery.folder)
        self._watch = Watch(document)
        self._watch.stirred.connect(self.look_outside)
        self._told: Stamp | None = None
        """The state of the file on the disk that the user knows of."""
        self._news = ""
        """What was said of that state last."""

    def new(self) -> None:
        """An empty document, when the present one may go."""
        if self.may_leave():
            self._document.new()
            self._belong_to(None)

    def is_for(self, path: Path) -> bool:
        """Whether a file belongs into this kind of window."""
        return self._kind.is_for(path)

    def open(self) -> None:
        """Ask for a file and open it."""
        folder = (
            str(self._document.path.parent) if self._document.path else self._settings.choice("folder", "")
        )
        name, _ = QFileDialog.getOpenFileName(self._parent, tr(self._kind.words.open), folder, openable())
        if name:
            self.open_path(Path(name))

    def open_path(self, path: Path) -> bool:
        """Open a file, when what is open may go, or in a window of its kind. Whether it is open here now."""
        if not self._kind.is_for(path):
            self._elsewhere(path)
            return False
        try:
            ready = self._read(path)
        except (PlanFileError, OSError) as error:
            self._settings.forget_recent(path)
            self._tell(not_opened(path, error, self._kind))
            return False
        if ready is None or not self.may_leave():
            return False
        self._document.load_ready(ready, path)
        self._belong_to(path)
        self._settings.add_recent(path)
        self._settings.choose("folder", str(path.absolute().parent))
        return True

    def read_again(self) -> None:
        """Take over the document's own file as it is now, as one step that can be undone."""
        self._finish_edit()
        path = self._document.path
        if path is None:
            self._tell(tr(self._kind.words.no_file))
            return
        try:
            ready = self._read(path)
        except (PlanFileError, OSError) as error:
            self._tell(not_opened(path, error, self._kind))
            return
        if ready is not None and self._document.read_again(ready):
            self._belong_to(path)

    def look_outside(self) -> None:
        """Tell once what another program did to the document's own file."""
        path = self._document.path
        if path is None:
            return
        stamp = stamp_of(path)
        if stamp in (self._document.stamp, self._told):
            return
        self._told = stamp
        if stamp is None:
            self._document.undo_stack.resetClean()
            self._news = tr(
                "{path} is gone: it was deleted or renamed. What is open here is all there is of it; "
                "save it to keep it.",
                path=path.name,
            )
            self._tell(self._news)
            return
        self._news = tr("{path} was changed by something else. Here it is as it was before.", path=path.name)
        self._offer(self._news, tr("Read it again"), self.read_again)

    def _read(self, path: Path, original: Path | None = None) -> Any:
        """What is in a file, ready to be loaded; ``None`` where the user thought better of it.

        Raises PlanFileError or OSError.
        """

        def work() -> Generator[Progress | None, None, Any]:
            yield None
            return (yield from self._document.made_ready(self._kind.read(path, original)))

        do = self._document.beside if is_long_file(path) else at_once
        try:
            return do(tr("Opening {name}…", name=path.name), work)
        except CancelledError:
            self._document.refused.emit(tr("Cancelled: {name} was not opened.", name=path.name))
            return None

    def open_example(self, path: Path) -> bool:
        """Open an example as a document of its own, so that saving never writes over the example."""
        try:
            ready = self._read(path)
        except (PlanFileError, OSError) as error:
            self._tell(not_opened(path, error, self._kind))
            return False
        if ready is None or not self.may_leave():
            return False
        self._document.load_ready(ready, None)
        self._belong_to(None)
        return True

    def take_up(self, entry: LeftOver) -> bool:
        """Open what was left over from last time; its copy goes once a new copy of it is written."""
        try:
            ready = self._read(entry.copy, entry.original)
        except (PlanFileError, OSError) as error:
            self._tell(not_opened(entry.copy, error, self._kind))
            return False
        if ready is None or not self.may_leave():
            return False
        self._document.take_up(ready, entry.original)
        if entry.stamp is not None:
            # What was written to the file after the copy was begun is not lost unasked.
            self._document.stamp = entry.stamp
        self._belong_to(entry.original)
        self.look_outside()
        self._recovery.written.connect(
            lambda _seconds: self._recovery.discard(entry), Qt.ConnectionType.SingleShotConnection
        )
        return True

    def save(self) -> bool:
        """Write to the document's own file; ask for one where it has none. Whether it is written."""
        self._finish_edit()
        return self.save_as() if self._document.path is None else self._write(self._document.path)

    def save_as(self) -> bool:
        """Ask for a file and write to it. Whether it is written."""
        self._finish_edit()
        folder = (
            self._document.path.parent if self._document.path else Path(self._settings.choice("folder", ""))
        )
        offered = (
            self._document.path.name if self._document.path else file_name(self._document.name, self._kind)
        )
        title = tr(self._kind.words.save)
        name, _ = QFileDialog.getSaveFileName(self._parent, title, str(folder / offered), self._kind.filter)
        if not name:
            return False
        path = Path(name)
        if not self._kind.is_for(path):
            self._tell(tr(self._kind.words.other_ending, path=path.name, ending=self._kind.ending))
            return False
        # A dot may belong to the name, as in "Quay 2.0": open dialogs would not list what has no ending.
        if path.suffix.lower() == ".json" or path == self._document.path:
            return self._write(path)
        whole = path.with_name(path.name + self._kind.ending)
        # The dialog asked about the name as it was typed, not about this one.
        if os.path.exists(whole) and whole != self._document.path and not may_write_over(self._parent, whole):
            return False
        return self._write(whole)

    def may_leave(self) -> bool:
        """Whether what is open may go: it is saved, or its changes are given up."""
        self._finish_edit()
        if not self._document.is_dirty:
            return True
        answer = ask_to_save(self._parent, self._document.name)
        if answer == QMessageBox.StandardButton.Save:
            return self.save()
        return answer == QMessageBox.StandardButton.Discard

    def _write(self, path: Path) -> bool:
        if self._document.is_changed_outside(path):
            answer = ask_to_overwrite(self._parent, path)
            if answer != QMessageBox.StandardButton.Yes:
                return answer == QMessageBox.StandardButton.Save and self.save_as()
        try:
            self._document.save(path)
        except WriteError as error:
            self._tell(tr(self._kind.words.not_written, file=error.file, reason=error.reason))
            return False
        self._belong_to(path)
        self._settings.add_recent(path)
        self._settings.choose("folder", str(path.absolute().parent))
        return True

    def close(self) -> None:
        """The window goes away."""
        self._claim.release()
        self._watch.follow(None)

    def _belong_to(self, path: Path | None) -> None:
        """Claim the file that the document has now, and watch it; what was said of it is true no more."""
        self._withdraw(self._news)
        self._told = self._document.stamp
        self._watch.follow(path)
        if not self._claim.take(path) and path is not None:
            self._tell(
                tr(
                    "{path} is open in another window, too. Each asks before it writes over the other.",
                    path=path.name,
                )
            )


def ask_to_overwrite(parent: QWidget, path: Path) -> int:
    """Yes: write over it; Save: to another file; Cancel."""
    words = {Button.Save: tr("Save as…"), Button.Yes: tr("Write over it"), Button.Cancel: tr("Cancel")}
    told = tr("{path} was changed by something else since it was opened.", path=path.name)
    return _ask(parent, tr("Changed outside"), told, tr("Writing over it loses that change."), words)


def may_write_over(parent: QWidget, path: Path) -> bool:
    """Whether a file that is there already may be written over."""
    words = {Button.Yes: tr("Write over it"), Button.Cancel: tr("Cancel")}
    told = tr("{path} is there already.", path=path.name)
    return _ask(parent, tr("Save"), told, tr("Writing over it loses what is in it."), words) == Button.Yes


def ask_to_save(parent: QWidget, name: str) -> int:
    """Save, Don't save or Cancel."""
    words = {Button.Save: tr("Save"), Button.Discard: tr("Don't save"), Button.Cancel: tr("Cancel")}
    short = name if len(name) <= LONGEST else name[: LONGEST - 1] + "…"
    return _ask(
        parent,
        tr("Changes"),
        tr("Save the changes to {short}?", short=short),
        tr("Without saving they are lost."),
        words,
    )


def _ask(parent: QWidget, title: str, told: str, more: str, words: dict[Button, str]) -> int:
    """A question with these buttons; Return means Save, where it is offered, and Esc means Cancel.

    Alt and a letter of its own press each.
    """
    box = QMessageBox(parent)
    box.setWindowTitle(title)
    box.setTextFormat(Qt.TextFormat.PlainText)
    box.setText(told)
    box.setInformativeText(more)
    default = Button.Save if Button.Save in words else Button.Cancel
    for button, word in zip(words, lettered([*words.values()]), strict=True):
        made = box.addButton(button)
        # The look makes letters bold, and the button is measured by them.
        made.setProperty("look", "main" if button is default else "")
        made.style().polish(made)
        made.setText(word)
    box.setDefaultButton(default)
    box.setEscapeButton(Button.Cancel)
    with asking(box):
        return box.exec()


def openable() -> str:
    """For the question which file to open: plans and networks are opened from either window."""
    return tr(
        "Plans and networks ({endings});;All files (*)", endings=" ".join(f"*{each}" for each in ENDINGS)
    )


def not_opened(path: Path, error: PlanFileError | OSError, kind: FileKind = PLANS) -> str:
    """What is said of a file that cannot be read: which, where in it, what was expected."""
    if isinstance(error, OSError):
        return tr(kind.words.not_found, path=path, reason=error.strerror or error)
    return tr(kind.words.not_read, file=error.file, expected=error.expected, place=error.place)


def file_name(title: str, kind: FileKind = PLANS) -> str:
    """A file name from a title, legal on every system."""
    kept = "".join(letter if letter.isalnum() or letter in " -_" else " " for letter in title)
    stem = "-".join(kept.lower().split())[:60]
    if not stem or stem in RESERVED:
        stem = f"{kind.word}-{stem}".rstrip("-")
    return stem + kind.ending
