"""The chip of the survey: how many rails differ, what to do about it, and why no order was found."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QShowEvent
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from app import theme as themes
from app.canvas.chips import BAR, EDGE, draw_panel
from app.canvas.rulers import LEFT, TOP
from app.canvas.surveying import Surveying
from app.panels.cut_label import CutLabel
from app.panels.look import keep_width, label, named
from app.panels.words import plain_tip
from app.panels.wrapped_row import WrappedRow
from app.shown_keys import follow_keys, in_brackets
from app.translation import QT_TR_NOOP, tr

WIDE: Final = 488
"""The width where there is room, so that nothing in the chip moves as its words change."""
BESIDE: Final = 60
"""px kept free on the right, for the north arrow."""
FIND: Final = (QT_TR_NOOP("Find order"), QT_TR_NOOP("Find an order of placing that gives the survey"))
STOP: Final = (QT_TR_NOOP("Stop"), QT_TR_NOOP("Stop the search"))


class SurveyBar(QWidget):
    """Stands at the top left of the plan view while a survey is made or searched for."""

    def __init__(self, surveying: Surveying, parent: QWidget) -> None:
        super().__init__(parent)
        # What is clicked here is not meant for the plan below.
        self.setAttribute(Qt.WidgetAttribute.WA_NoMousePropagation)
        self.setCursor(Qt.CursorShape.ArrowCursor)
        self._over = parent
        self._surveying = surveying
        self.text = CutLabel()
        self.verdict = label()
        self.verdict.setWordWrap(True)
        self.act = _button(tr(FIND[0]))
        self.act.clicked.connect(self._act)
        self.clear = named(_button(tr("Clear")), tr("Clear the survey"))
        self.clear.setToolTip(
            tr("Forget the surveyed shapes; Clear survey in the menu Plan brings them back")
        )
        self.clear.clicked.connect(surveying.clear)
        row = WrappedRow()
        row.addWidget(self.text)
        row.add_right(self.act)
        for widget in (self.clear, label(tr("Esc ends"), "second")):
            row.addWidget(widget)
        self._column = column = QVBoxLayout(self)
        column.setContentsMargins(BAR + 12, 4, 12, 4)
        column.setSpacing(4)
        column.addLayout(row)
        column.addWidget(self.verdict)
        surveying.changed.connect(self.take_over)
        follow_keys(self, self.take_over)
        self.hide()

    def take_over(self) -> None:
        """Show how the survey stands now."""
        surveying = self._surveying
        is_running = surveying.search.is_running
        self.text.setText(surveying.words)
        self.text.setToolTip(plain_tip(surveying.words))
        self.verdict.setText(surveying.verdict)
        self.verdict.setVisible(bool(surveying.verdict))
        word, does = map(tr, STOP if is_running else FIND)
        self.act.setText(word)
        self.act.setToolTip(
            tr("{does} (Esc)", does=does) if is_running else f"{does}{in_brackets('order_from_survey')}"
        )
        named(self.act, does)
        self.act.setEnabled(is_running or bool(surveying.differing))
        self.clear.setEnabled(bool(surveying.shapes) and not is_running)
        self.place()

    def place(self) -> None:
        """Stand in the corner, no wider than the plan view."""
        wanted = max(WIDE, self._column.sizeHint().width())
        width = min(wanted, self._over.width() - LEFT - EDGE - BESIDE)
        self._column.activate()
        self.setGeometry(LEFT + EDGE, TOP + EDGE, width, self._column.totalHeightForWidth(width))

    def _act(self) -> None:
        if self._surveying.search.is_running:
            self._surveying.stop()
        else:
            self._surveying.find()

    def showEvent(self, event: QShowEvent) -> None:
        """Only now the buttons have the sizes that their look gives them."""
        super().showEvent(event)
        keep_width(self.act, (tr(FIND[0]), tr(STOP[0])))
        self.place()

    def paintEvent(self, event: QPaintEvent) -> None:
        theme = themes.current()
        painter = QPainter(self)
        draw_panel(painter, QRectF(self.rect()), theme)
        painter.fillRect(QRectF(0, 0, BAR, self.height()), theme.live)


def _button(text: str) -> QPushButton:
    """A button that leaves the keys to the plan when it is clicked."""
    made = QPushButton(text)
    made.setFocusPolicy(Qt.FocusPolicy.TabFocus)
    made.setAutoDefault(True)
    made.setProperty("look", "quiet")
    return made
