"""Gives the chosen action other keys; a key that means something already is named, never taken in silence."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QKeySequenceEdit, QLineEdit, QPushButton, QVBoxLayout, QWidget

from app import user_keys
from app.actions import UserAction
from app.announcing import announce
from app.panels.cross import add_cross
from app.panels.look import label, named
from app.shown_keys import shown
from app.translation import tr
from app.user_keys import Chosen, clash_of, keys_of, with_keys

Change = Callable[[Chosen], object]
"""Lets other keys hold in every window, and remembers them."""


class KeyEditor(QWidget):
    """A field for a key, and buttons to give it, to take all away, and to have it as it was."""

    def __init__(self, change: Change, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._change = change
        self._entry: UserAction | None = None
        self.told = label("", "second")
        self.told.setWordWrap(True)
        self.field = named(QKeySequenceEdit(), tr("New key"))
        self.field.setMaximumSequenceLength(1)
        (typed,) = self.field.findChildren(QLineEdit)
        add_cross(typed, self.field.clear)
        self.give = QPushButton(tr("Give key"))
        self.take = QPushButton(tr("Take keys away"))
        self.reset = QPushButton(tr("As it was"))
        for button in (self.give, self.take, self.reset):
            button.setAutoDefault(False)
        self._lay_out()
        self.field.keySequenceChanged.connect(lambda _key: self._look())
        self.give.clicked.connect(self._give)
        self.take.clicked.connect(lambda: self._set(()))
        self.reset.clicked.connect(self._reset)
        self.show_action(None)

    def show_action(self, entry: UserAction | None) -> None:
        """The action whose keys are changed from now on."""
        self._entry = entry
        self.field.clear()
        self._look()

    @property
    def key(self) -> str:
        """What is in the field."""
        return self.field.keySequence().toString()

    def _look(self) -> None:
        """Say what the key in the field would do, and let the buttons do only what makes sense."""
        entry, key = self._entry, self.key
        clash = None if entry is None or not key else clash_of(entry, key)
        self.field.setEnabled(entry is not None)
        self.give.setEnabled(entry is not None and bool(key) and (clash is None or clash.entry is not None))
        self.give.setText(tr("Give key") if clash is None else tr("Take it over"))
        self.take.setEnabled(entry is not None and bool(keys_of(entry)))
        self.reset.setEnabled(entry is not None and keys_of(entry) != entry.keys)
        self._tell(self._words(entry, key))

    def _words(self, entry: UserAction | None, key: str) -> str:
        if entry is None:
            return tr("Choose an action to give it other keys.")
        name = tr(entry.text).rstrip("…")
        if not key:
            return tr("{action}: go into the field and press the keys that it shall have.", action=name)
        if key in keys_of(entry):
            return tr("{key} means {action} already.", key=shown(key), action=name)
        clash = clash_of(entry, key)
        if clash is None:
            return tr("{key} is free.", key=shown(key))
        if clash.entry is None:
            return tr(
                "{key} cannot be given away: in the drawing it {does}.", key=shown(key), does=tr(clash.words)
            )
        return tr("{key} means {action} already.", key=shown(key), action=tr(clash.words).rstrip("…"))

    def _tell(self, words: str) -> None:
        if words != self.told.text():
            self.told.setText(words)
            announce(self.field, words)

    def _give(self) -> None:
        assert self._entry is not None
        key, clash = self.key, clash_of(self._entry, self.key)
        if clash is not None and clash.entry is not None:
            left = tuple(each for each in keys_of(clash.entry) if each != key)
            user_keys.take(with_keys(clash.entry, left))
        self._set((key,))

    def _reset(self) -> None:
        """Keys that another action has by now stay with it."""
        assert self._entry is not None
        entry = self._entry
        self._set(tuple(key for key in entry.keys if clash_of(entry, key) is None))

    def _set(self, keys: tuple[str, ...]) -> None:
        assert self._entry is not None
        self._change(with_keys(self._entry, keys))
        self.field.clear()
        self._look()

    def _lay_out(self) -> None:
        row = QHBoxLayout()
        row.setSpacing(8)
        row.addWidget(self.field, 1)
        for button in (self.give, self.take, self.reset):
            row.addWidget(button)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self.told, 0, Qt.AlignmentFlag.AlignTop)
        column.addLayout(row)
