"""The chip of the dry run: its time, what moves it, the train that is sent next, and what came of it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QModelIndex, QRectF, QStringListModel, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QShowEvent
from PySide6.QtWidgets import QAbstractItemView, QPushButton, QVBoxLayout, QWidget

from app import theme as themes
from app.actions import action
from app.canvas.chips import BAR, EDGE, draw_panel
from app.canvas.dry_running import DryRunning
from app.canvas.log_line import LogLine
from app.canvas.rulers import LEFT, TOP
from app.canvas.run_log import Entry
from app.canvas.train_row import TrainRow
from app.dry_run import SPEEDS
from app.panels.choice_box import ChoiceBox
from app.panels.choosing_list import ChoosingList
from app.panels.look import keep_width, label, named
from app.panels.rows import FRAME
from app.panels.wrapped_row import WrappedRow
from app.shown_keys import follow_keys, keep_tip, key_of
from app.translation import QT_TR_NOOP, tr

WIDE: Final = 440
"""The least width where there is room, so that nothing in the chip moves as its words change."""
BESIDE: Final = 60
"""px kept free on the right, for the north arrow."""
LINES: Final = 3
"""Lines of the log in sight at once."""
LOW: Final = 420
"""px of height below which the plan view has room for one line of the log only."""
WORDS: Final = {0.25: "×¼", 1.0: "×1", 2.0: "×2", 4.0: "×4", 8.0: "×8"}
CALMED: Final = QT_TR_NOOP("~ too fast to draw")
CALMED_TIP: Final = QT_TR_NOOP(
    "A part marked ~ goes on and off more than three times a second; not each is drawn."
)


class RunBar(QWidget):
    """Stands at the top left of the plan view while a dry run is on."""

    cells_chosen = Signal(object)
    """The cells of a line of the log."""

    def __init__(self, dry_run: DryRunning, parent: QWidget) -> None:
        super().__init__(parent)
        # What is clicked here is not meant for the plan below.
        self.setAttribute(Qt.WidgetAttribute.WA_NoMousePropagation)
        self.setCursor(Qt.CursorShape.ArrowCursor)
        self.setAccessibleName(tr("Dry run"))
        self._over = parent
        self._dry_run = dry_run
        self._follows = True
        """Whether the newest line of the log is kept in sight; not while older ones are read."""
        self.text = label("", "strong")
        self.note = label(tr(CALMED), "second")
        self.note.setToolTip(tr(CALMED_TIP))
        self.go = _button(tr("Pause"), "run_pause", dry_run.run_or_pause)
        self.tick = _button(tr("One tick"), "run_tick", dry_run.runner.step)
        self.speed = named(ChoiceBox(), tr("Speed"))
        follow_keys(self.speed, self._tell_speed)
        self.speed.addItems([WORDS[speed] for speed in SPEEDS])
        self.speed.activated.connect(self._set_speed)
        self.back = _button(tr("To start"), "run_back", dry_run.runner.rewind)
        self.repeat = _button(tr("Repeat"), "run_repeat", dry_run.repeat)
        self.train = TrainRow(dry_run)
        self.model = QStringListModel(self)
        self.log = named(ChoosingList(self), tr("What came of the dry run"))
        self.log.setModel(self.model)
        self.log.setItemDelegate(LogLine(self.log))
        self.log.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.log.setUniformItemSizes(True)
        self.log.clicked.connect(self._choose)
        self.log.activated.connect(self._choose)
        self._lay_out()
        self._connect()
        self.take_over()
        self.hide()

    def _lay_out(self) -> None:
        first, second = WrappedRow(), WrappedRow()
        first.addWidget(self.text)
        first.add_right(self.note)
        first.addWidget(label(tr("Esc ends"), "second"))
        for widget in (self.go, self.tick, self.speed, self.back, self.repeat):
            second.addWidget(widget)
        self._column = column = QVBoxLayout(self)
        column.setContentsMargins(BAR + 12, 6, 12, 6)
        column.setSpacing(4)
        column.addLayout(first)
        column.addLayout(second)
        for part in (self.train, self.log):
            column.addWidget(part)
        self.note.hide()
        self.train.hide()

    def _connect(self) -> None:
        runner = self._dry_run.runner
        self._dry_run.changed.connect(self._show_on)
        self._dry_run.told.connect(self._show_log)
        self._dry_run.calming_changed.connect(self.take_over)
        for signal in (runner.ticked, runner.rewound, runner.state_changed, runner.ended):
            signal.connect(self.take_over)

    def show_train(self, shown: bool) -> None:
        """The row of the train goes with the test cart tool."""
        self.train.setVisible(shown)
        self.place()

    def _tell_speed(self) -> None:
        slower, faster = key_of("run_slower"), key_of("run_faster")
        said = tr("Times real time")
        if slower and faster:
            said = tr(
                "Times real time; {slower} and {faster} go slower and faster", slower=slower, faster=faster
            )
        self.speed.setToolTip(said)

    def take_over(self) -> None:
        """Show how the run stands now."""
        runner = self._dry_run.runner
        self.text.setText(
            tr("Dry run, tick {tick} ({seconds:.2f} s)", tick=runner.tick, seconds=runner.seconds)
        )
        self.go.setText(tr("Pause") if runner.is_running else tr("Run"))
        self.speed.setCurrentIndex(SPEEDS.index(runner.speed))
        self.note.setVisible(self._dry_run.is_calming)

    def place(self) -> None:
        """Stand in the corner, no wider than the plan view."""
        wanted = max(WIDE, self._column.sizeHint().width())
        width = min(wanted, self._over.width() - LEFT - EDGE - BESIDE)
        lines = min(self.model.rowCount(), LINES if self._over.height() >= LOW else 1)
        self.log.setVisible(lines > 0)
        self.log.setFixedHeight(self.log.sizeHintForRow(0) * lines + 2 * FRAME)
        self._column.activate()
        self.setGeometry(LEFT + EDGE, TOP + EDGE, width, self._column.totalHeightForWidth(width))
        if self._follows:
            self.log.scrollToBottom()

    def _show_on(self) -> None:
        if self._dry_run.is_on:
            self.train.take_over()
        self.take_over()
        self.setVisible(self._dry_run.is_on)
        self.place()

    def _set_speed(self, index: int) -> None:
        self._dry_run.runner.speed = SPEEDS[index]

    def _show_log(self, _new: list[Entry]) -> None:
        lines = [entry.line for entry in self._dry_run.log]
        bar = self.log.verticalScrollBar()
        self._follows = bar.value() == bar.maximum()
        self.model.setStringList(lines)
        self.place()

    def _choose(self, index: QModelIndex) -> None:
        self.cells_chosen.emit(self._dry_run.log[index.row()].cells)

    def showEvent(self, event: QShowEvent) -> None:
        """Only now the buttons have the sizes that their look gives them."""
        super().showEvent(event)
        keep_width(self.go, (tr("Pause"), tr("Run")))
        self.place()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """What the parts of the chip leave over is not meant for the plan below, but for Esc.

        Return in a figure or in the log ends there, and the keys are the plan's again.
        """
        if event.key() == Qt.Key.Key_Escape:
            super().keyPressEvent(event)
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._over.setFocus()

    def paintEvent(self, event: QPaintEvent) -> None:
        theme = themes.current()
        painter = QPainter(self)
        draw_panel(painter, QRectF(self.rect()), theme)
        painter.fillRect(QRectF(0, 0, BAR, self.height()), theme.live)


def _button(text: str, does: str, command: Callable[[], object]) -> QPushButton:
    """A button that leaves the keys to the plan when it is clicked, with the words of its action."""
    made = named(QPushButton(text), tr(action(does).text))
    keep_tip(made, tr(action(does).tip), does)
    made.setFocusPolicy(Qt.FocusPolicy.TabFocus)
    made.setAutoDefault(True)
    made.setProperty("look", "quiet")
    made.clicked.connect(lambda _checked=False: command())
    return made
