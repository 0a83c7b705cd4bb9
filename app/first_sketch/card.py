"""The card of the first sketch: the hint that holds, how far it is done, and how to be rid of it."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QEvent, QObject, QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QShowEvent
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from app import theme as themes
from app.announcing import announce
from app.canvas.chips import EDGE, draw_panel
from app.canvas.rulers import LEFT
from app.canvas.view import PlanView
from app.first_sketch.hints import HINTS, Hint
from app.first_sketch.sketch import FirstSketch
from app.panels.look import label, named
from app.panels.wrapped_row import WrappedRow
from app.shown_keys import follow_keys, in_brackets
from app.translation import QT_TR_NOOP, tr

WIDE: Final = 520
"""The width where there is room, so that nothing in the card moves as its words change."""
SIDES: Final = 12
END: Final = QT_TR_NOOP(
    "The menu Help tells of every part, finding, tool and key, and begins this sketch again."
)


class SketchCard(QWidget):
    """Stands at the bottom left of the plan view; the view fits plans above it."""

    def __init__(self, sketch: FirstSketch, view: PlanView) -> None:
        super().__init__(view)
        # What is clicked here is not meant for the plan below.
        self.setAttribute(Qt.WidgetAttribute.WA_NoMousePropagation)
        self.setCursor(Qt.CursorShape.ArrowCursor)
        self._sketch = sketch
        self._view = view
        self._told = -1
        self.count = label("", "second")
        self.title = label("", "strong")
        self.progress = label("", "second")
        self.text = label()
        self.text.setWordWrap(True)
        self.skip = _button(tr("Skip this"), tr("Go on to the next hint"))
        self.enough = _button(tr("Enough"), tr("Show no more hints; the menu Help has them"))
        self._lay_out()
        self.skip.clicked.connect(sketch.skip)
        self.enough.clicked.connect(sketch.end)
        sketch.changed.connect(self.take_over)
        view.installEventFilter(self)
        self.hide()
        follow_keys(self, self.take_over)

    @property
    def words(self) -> str:
        """All that the card says, in one."""
        parts = (self.count.text(), self.title.text(), self.text.text())
        return ". ".join(part.rstrip(".") for part in parts if part) + "."

    def take_over(self) -> None:
        """Show the hint that holds, and tell of a new one."""
        sketch = self._sketch
        if not sketch.is_on:
            self._put_away()
            return
        self._show_end() if sketch.hint is None else self._show_hint(sketch.hint)
        self.show()
        self.place()
        if sketch.number != self._told:
            self._told = sketch.number
            self.setAccessibleName(self.words)
            announce(self._view, self.words)

    def place(self) -> None:
        """Stand in the corner, no wider than the plan view, which keeps the room above it."""
        width = min(WIDE, self._view.width() - LEFT - 2 * EDGE)
        height = self._column.totalHeightForWidth(width)
        self.setGeometry(LEFT + EDGE, self._view.height() - EDGE - height, width, height)
        self._view.keep_foot(height + EDGE)

    def _show_hint(self, hint: Hint) -> None:
        done, wanted = self._sketch.progress
        number = self._sketch.number + 1
        self.count.setText(tr("First sketch, {number} of {all}", number=number, all=len(HINTS)))
        self.title.setText(tr(hint.title))
        self.text.setText(tr(hint.text, **_keys_in(hint.text)))
        self.progress.setText(tr("{done} of {wanted} done", done=done, wanted=wanted) if wanted > 1 else "")
        self.skip.show()
        self.enough.setText(tr("Enough"))

    def _show_end(self) -> None:
        self.count.clear()
        self.title.setText(tr("That was the first sketch"))
        self.progress.clear()
        self.text.setText(tr(END))
        self.skip.hide()
        self.enough.setText(tr("Close"))

    def _put_away(self) -> None:
        self._told = -1
        self._view.keep_foot(0)
        if self.isAncestorOf(self.window().focusWidget() or self._view):
            self._view.setFocus(Qt.FocusReason.OtherFocusReason)
        self.hide()

    def _lay_out(self) -> None:
        head, row = WrappedRow(), WrappedRow()
        for widget in (self.title, self.count):
            head.addWidget(widget)
        head.add_right(self.progress)
        row.addWidget(self.skip)
        row.addWidget(self.enough)
        row.add_right(label(tr("Esc puts this away"), "second"))
        self._column = column = QVBoxLayout(self)
        column.setContentsMargins(SIDES, 8, SIDES, 8)
        column.setSpacing(8)
        column.addLayout(head)
        column.addWidget(self.text)
        column.addLayout(row)

    # Qt

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Keeps in its corner as the plan view changes its size."""
        if event.type() is QEvent.Type.Resize and self.isVisible():
            self.place()
        return super().eventFilter(watched, event)

    def showEvent(self, event: QShowEvent) -> None:
        """Only now the words have the sizes that their look gives them."""
        super().showEvent(event)
        self.place()

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        draw_panel(painter, QRectF(self.rect()), themes.current())


def _keys_in(text: str) -> dict[str, str]:
    """What stands for the names of actions in a text: `` (L)``, and nothing where one has no keys."""
    names = [part.partition("}")[0] for part in text.split("{")[1:]]
    return {name: in_brackets(name) for name in names}


def _button(text: str, tip: str) -> QPushButton:
    """A button that leaves the keys to the plan when it is clicked."""
    made = named(QPushButton(text), text)
    made.setToolTip(tip)
    made.setFocusPolicy(Qt.FocusPolicy.TabFocus)
    made.setAutoDefault(True)
    made.setProperty("look", "quiet")
    return made
