"""The start screen: new and open, plans left over, recent plans, examples."""

from __future__ import annotations

from datetime import date, datetime
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Final

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPainterPath, QPaintEvent
from PySide6.QtWidgets import (
    QAbstractButton,
    QDialog,
    QHBoxLayout,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from app import theme as themes
from app.canvas.symbols import draw_marker
from app.commands.files import PLANS
from app.network.files import NETWORKS
from app.network.mini_map import map_path, network_words
from app.panels.look import font, hairline, label, named, panel
from app.panels.mini_plan import line_path, paint_line_path
from app.panels.rows import paint_text
from app.panels.words import plain_tip
from app.recovery import LeftOver
from app.settings import Recent
from model.files.errors import PlanFileError
from model.files.plan_file import read_plan
from model.grid import Turn
from model.network.network import Network
from model.plan import Plan
from model.track.layout import Layout

SIZE: Final = QSize(920, 420)
LEFT: Final = 260
RECENT_SHOWN: Final = 3
LEFT_OVER_SHOWN: Final = 1
UNREAD: Final = "cannot be read"


def example_paths() -> list[Path]:
    """The plans of the invented tramway that come with the program."""
    return sorted(Path(str(files("resources").joinpath("examples"))).glob("*.plan.json"))


def network_paths() -> list[Path]:
    """The networks of the invented tramway that come with the program."""
    return sorted(Path(str(files("resources").joinpath("examples"))).glob(f"*{NETWORKS.ending}"))


class StartScreen(QDialog):
    """Each choice closes it and is carried out by the window."""

    new_asked = Signal()
    network_asked = Signal()
    open_asked = Signal()
    recent_chosen = Signal(object)
    example_chosen = Signal(object)
    take_up_asked = Signal(object)

    def __init__(self, parent: QWidget | None, recent: list[Recent], left_over: list[LeftOver]) -> None:
        super().__init__(parent)
        self.setWindowTitle("Platelayer")
        self.setFixedSize(SIZE)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        row.addWidget(self._left(left_over))
        row.addWidget(hairline("upright"))
        row.addWidget(self._right(recent), 1)

    def _left(self, left_over: list[LeftOver]) -> QWidget:
        side = QWidget()
        side.setFixedWidth(LEFT)
        side.setProperty("look", "paper")
        side.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        column = QVBoxLayout(side)
        column.setContentsMargins(28, 28, 28, 20)
        column.setSpacing(8)
        column.addWidget(label("Platelayer", "name"))
        column.addWidget(label("Plan a junction before\nyou place a block.", "second"))
        column.addSpacing(16)
        self.new_button = _wide_button("New plan", "Ctrl+N", "dark")
        self.network_button = _wide_button("New network", "Ctrl+Shift+N", "")
        self.open_button = _wide_button("Open…", "Ctrl+O", "")
        column.addWidget(self.new_button)
        column.addWidget(self.network_button)
        column.addWidget(self.open_button)
        self.new_button.clicked.connect(lambda: self._end(self.new_asked))
        self.network_button.clicked.connect(lambda: self._end(self.network_asked))
        self.open_button.clicked.connect(lambda: self._end(self.open_asked))
        self.take_up_buttons: list[QPushButton] = []
        if left_over:
            column.addSpacing(16)
            column.addWidget(label("Left over from last time", "section"))
            column.addWidget(hairline())
            for entry in left_over[:LEFT_OVER_SHOWN]:
                self._add_left_over(column, entry)
            if len(left_over) > LEFT_OVER_SHOWN:
                column.addWidget(
                    label(f"and {len(left_over) - LEFT_OVER_SHOWN} more after this one", "second")
                )
        column.addStretch(1)
        return side

    def _add_left_over(self, column: QVBoxLayout, entry: LeftOver) -> None:
        saved = entry.original.name if entry.original else "never saved"
        name = label(f"{entry.title or 'Untitled'}, {saved}")
        name.setWordWrap(True)
        column.addWidget(name)
        column.addWidget(label(f"copy of {day_words(entry.seconds)} {_clock(entry.seconds)}", "second"))
        take_up = QPushButton("Take it up")
        keep = QPushButton("Keep for later")
        take_up.clicked.connect(lambda: self._end(self.take_up_asked, entry))
        keep.clicked.connect(self.reject)
        self.take_up_buttons.append(take_up)
        row = QHBoxLayout()
        row.addWidget(take_up)
        row.addWidget(keep)
        row.addStretch(1)
        column.addLayout(row)

    def _right(self, recent: list[Recent]) -> QWidget:
        side = QWidget()
        panel(side)
        column = QVBoxLayout(side)
        column.setContentsMargins(28, 24, 28, 20)
        column.setSpacing(0)
        column.addWidget(label("Recent", "section"))
        column.addSpacing(6)
        column.addWidget(hairline())
        self.recent_rows = [_RecentRow(entry) for entry in recent[:RECENT_SHOWN]]
        for row in self.recent_rows:
            row.clicked.connect(lambda _=False, row=row: self._end(self.recent_chosen, row.entry.path))
            column.addWidget(row)
        if not recent:
            column.addSpacing(10)
            column.addWidget(label("Plans and networks that you open or save are listed here.", "second"))
        column.addStretch(1)
        column.addWidget(label("Examples of the Brinepan Tramway — an invented company", "section"))
        column.addSpacing(6)
        column.addWidget(hairline())
        column.addSpacing(12)
        cards = QHBoxLayout()
        cards.setSpacing(12)
        self.example_cards = [_ExampleCard(path) for path in (*example_paths(), *network_paths())]
        for card in self.example_cards:
            card.clicked.connect(lambda _=False, card=card: self._end(self.example_chosen, card.path))
            cards.addWidget(card)
        column.addLayout(cards)
        return side

    def _end(self, signal: object, *args: object) -> None:
        self.accept()
        signal.emit(*args)  # type: ignore[attr-defined]


class _RecentRow(QAbstractButton):
    """Name, file, day, gravest finding and count."""

    def __init__(self, entry: Recent) -> None:
        super().__init__()
        self.entry = entry
        self.setFixedHeight(50)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._title = entry.title or entry.path.name
        self._findings = f"{entry.count} {entry.gravest}" if entry.count else entry.gravest or ""
        self.setAccessibleName(
            f"{self._title}, {day_words(entry.seconds)}, {self._findings or 'no findings'}"
        )
        self.setToolTip(plain_tip(str(entry.path)))

    def paintEvent(self, event: QPaintEvent) -> None:
        theme = themes.current()
        painter = QPainter(self)
        if self.underMouse() or self.hasFocus():
            painter.fillRect(self.rect(), theme.raised)
        painter.fillRect(0, self.height() - 1, self.width(), 1, theme.ink if self.hasFocus() else theme.edge)
        above = self.rect().adjusted(0, 6, 0, 0)
        above.setHeight(18)
        below = above.translated(0, 20)
        paint_text(painter, above.adjusted(0, 0, -120, 0), self._title, font(13, True), theme.ink)
        paint_text(painter, above, day_words(self.entry.seconds), font(11), theme.ink2, right=True)
        file = f"{self.entry.path.parent.name} / {self.entry.path.name}"
        paint_text(painter, below.adjusted(0, 0, -120, 0), file, font(11), theme.ink2)
        if not self.entry.gravest:
            words = "no findings" if self.entry.gravest == "" else ""
            paint_text(painter, below, words, font(11), theme.ink2, right=True)
            return
        figure = str(self.entry.count)
        width = paint_text(painter, below, figure, font(11), theme.ink, right=True)
        draw_marker(painter, below.right() - width - 20, below.center().y() + 0.5, self.entry.gravest, theme)

    def sizeHint(self) -> QSize:
        return QSize(300, 50)


class _ExampleCard(QAbstractButton):
    """An example as a line picture."""

    def __init__(self, path: Path) -> None:
        super().__init__()
        self.path = path
        self.setFixedHeight(128)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        found = _example(path)
        self._title, self._path, self._kind = (
            _card_of(found) if found else (path.name, QPainterPath(), UNREAD)
        )
        self.setAccessibleName(f"Example: {self._title}, {self._kind}")
        self.setToolTip(f"{self._title} of the invented Brinepan Tramway")

    def paintEvent(self, event: QPaintEvent) -> None:
        theme = themes.current()
        painter = QPainter(self)
        box = self.rect().adjusted(0, 0, -1, -1)
        painter.fillRect(box, theme.raised)
        painter.setPen(theme.ink if self.hasFocus() or self.underMouse() else theme.edge)
        painter.drawRect(box)
        paint_line_path(painter, self._path, Turn(), QRectF(box.adjusted(12, 12, -12, -48)), theme.ink)
        words = self.rect().adjusted(11, 84, -8, 0)
        words.setHeight(18)
        paint_text(painter, words, self._title, font(12, True), theme.ink)
        paint_text(painter, words.translated(0, 18), self._kind, font(11), theme.ink2)

    def sizeHint(self) -> QSize:
        return QSize(150, 128)


@cache
def _example(path: Path) -> Plan | Network | None:
    try:
        return read_plan(path) if PLANS.is_for(path) else NETWORKS.read(path, None)
    except (PlanFileError, OSError):
        return None


def _card_of(found: Plan | Network) -> tuple[str, QPainterPath, str]:
    """Title, lines and words of an example."""
    if isinstance(found, Network):
        return found.title, map_path(found), network_words(found)
    words = f"{len(found.arms)} arms, {len(found.routes)} routes"
    return found.details.title, line_path(Layout(found).shapes), words


def _wide_button(text: str, keys: str, look: str) -> QPushButton:
    button = named(QPushButton(), text)
    # The window's style sheet sets the height of buttons, and only a style sheet can overrule it.
    button.setStyleSheet("min-height: 34px;")
    # The keys of the window do not reach a screen that stands before it.
    button.setShortcut(keys)
    if look:
        button.setProperty("look", look)
    row = QHBoxLayout(button)
    row.setContentsMargins(14, 0, 12, 0)
    for words, kind in ((text, "strong"), (keys.replace("+", " "), "second")):
        told = label(words, f"on{look}" if look else kind)
        told.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        row.addWidget(told)
        if kind == "strong":
            row.addStretch(1)
    return button


def day_words(seconds: float) -> str:
    """``today``, ``yesterday``, ``12 November``."""
    if not seconds:
        return ""
    day = datetime.fromtimestamp(seconds).date()
    ago = (date.today() - day).days
    if ago in (0, 1):
        return ("today", "yesterday")[ago]
    return f"{day.day} {day:%B}" if day.year == date.today().year else f"{day.day} {day:%B %Y}"


def _clock(seconds: float) -> str:
    return f"{datetime.fromtimestamp(seconds):%H:%M}"
