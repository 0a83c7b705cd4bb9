"""The name of an arm, typed in place, with its ends chosen in words."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QButtonGroup,
    QFrame,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from app.arm_ends import ENDS_WORDS
from app.tools.host import ArmQuestion, Ends
from app.translation import tr
from model.plan import NAME_LIMIT

PAGES: Final = (Qt.Key.Key_PageUp, Qt.Key.Key_PageDown)


class NameEntry(QFrame):
    """Asks one question at a time; Enter answers it, Esc drops it."""

    dropped = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._over = parent
        self.setObjectName("nameEntry")
        self.setAutoFillBackground(True)
        self.setFrameShape(QFrame.Shape.Box)
        self._question: ArmQuestion | None = None
        self.line = QLineEdit(self)
        self.line.setMaxLength(NAME_LIMIT)
        self.line.setPlaceholderText(tr("Name of the arm"))
        self.line.setAccessibleName(tr("Name of the arm"))
        self.line.setMinimumWidth(150)
        self.problem = QLabel(self)
        self.problem.setTextFormat(Qt.TextFormat.PlainText)
        self.problem.hide()
        self._ends = QButtonGroup(self)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 8, 8, 8)
        column.setSpacing(4)
        column.addWidget(self.line)
        column.addLayout(self._choices())
        column.addWidget(self.problem)
        self.line.returnPressed.connect(self._answer)
        self._ends.idToggled.connect(self._show_ends)
        self.hide()

    @property
    def question(self) -> ArmQuestion | None:
        """What is being asked."""
        return self._question

    @property
    def ends(self) -> Ends:
        """The ends chosen."""
        return Ends(self._ends.checkedId())

    def ask(self, question: ArmQuestion, x: int, y: int) -> None:
        """Shows the question with its upper left corner at (x, y), kept inside the parent."""
        self._question = question
        self.line.setText(question.name)
        self.line.selectAll()
        self.problem.hide()
        self._ends.button(question.ends.value).setChecked(True)
        self.adjustSize()
        self._move_inside(x, y)
        self.show()
        self.raise_()
        self.line.setFocus(Qt.FocusReason.OtherFocusReason)

    def finish(self) -> None:
        """Takes over a name that was typed; one that an arm cannot have stays, with what is wrong."""
        if self.line.isModified():
            self._answer()

    def drop(self) -> None:
        """Takes the question away."""
        self._question = None
        if self.isVisible():
            self._over.setFocus(Qt.FocusReason.OtherFocusReason)
        self.hide()

    def choose(self, ends: Ends) -> None:
        """Chooses the ends."""
        self._ends.button(ends.value).setChecked(True)

    def _choices(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(4)
        for ends, words in ENDS_WORDS.items():
            button = QToolButton(self)
            button.setText(tr(words.word))
            button.setToolTip(tr(words.about))
            button.setAccessibleName(tr(words.about))
            button.setCheckable(True)
            self._ends.addButton(button, ends.value)
            row.addWidget(button, 1)
        return row

    def _show_ends(self, _number: int, is_chosen: bool) -> None:
        if is_chosen and self._question is not None:
            self._question.show(self.ends)

    def _answer(self) -> None:
        if self._question is None:
            return
        problem = self._question.answer(self.line.text(), self.ends)
        if problem is None:
            self.drop()
            return
        self.problem.setText(problem)
        self.problem.show()
        self.adjustSize()
        self._move_inside(self.x(), self.y())

    def _move_inside(self, x: int, y: int) -> None:
        room = self._over.rect()
        self.move(max(0, min(x, room.width() - self.width())), max(0, min(y, room.height() - self.height())))

    def event(self, event: QEvent) -> bool:
        """Another level would cut the gesture short, and what was typed would be lost."""
        if (
            isinstance(event, QKeyEvent)
            and event.type() == QEvent.Type.ShortcutOverride
            and event.key() in PAGES
        ):
            event.accept()
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc drops the question; no other key, such as Enter or an arrow, must act on the plan behind."""
        if event.key() == Qt.Key.Key_Escape:
            self.dropped.emit()
