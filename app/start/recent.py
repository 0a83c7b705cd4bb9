"""A recent plan or network, and how its day is said."""

from __future__ import annotations

from datetime import date, datetime
from typing import Final

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton

from app import theme as themes
from app.canvas.symbols import draw_marker
from app.panels.look import font
from app.panels.rows import paint_text
from app.panels.words import plain_tip
from app.settings import Recent
from app.translation import QT_TR_NOOP, tr

MONTHS: Final = (
    QT_TR_NOOP("January"),
    QT_TR_NOOP("February"),
    QT_TR_NOOP("March"),
    QT_TR_NOOP("April"),
    QT_TR_NOOP("May"),
    QT_TR_NOOP("June"),
    QT_TR_NOOP("July"),
    QT_TR_NOOP("August"),
    QT_TR_NOOP("September"),
    QT_TR_NOOP("October"),
    QT_TR_NOOP("November"),
    QT_TR_NOOP("December"),
)


class RecentRow(QAbstractButton):
    """Name, file, day, gravest finding and count."""

    def __init__(self, entry: Recent) -> None:
        super().__init__()
        self.entry = entry
        self.setFixedHeight(50)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._title = entry.title or entry.path.name
        self.setAccessibleName(", ".join([self._title, day_words(entry.seconds), *_findings(entry)]))
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
            words = tr("no findings") if self.entry.gravest == "" else ""
            paint_text(painter, below, words, font(11), theme.ink2, right=True)
            return
        figure = str(self.entry.count)
        width = paint_text(painter, below, figure, font(11), theme.ink, right=True)
        draw_marker(painter, below.right() - width - 20, below.center().y() + 0.5, self.entry.gravest, theme)

    def sizeHint(self) -> QSize:
        return QSize(300, 50)


def _findings(entry: Recent) -> list[str]:
    """What is known of them."""
    if entry.gravest is None:
        return []
    return [f"{entry.count} {tr(entry.gravest)}" if entry.gravest else tr("no findings")]


def moment_of(seconds: float) -> datetime | None:
    """In the time of the place; ``None`` for what was written by no clock."""
    try:
        return datetime.fromtimestamp(seconds)
    except (ValueError, OverflowError, OSError):
        return None


def day_words(seconds: float) -> str:
    """``today``, ``yesterday``, ``12 November``; nothing where that is not known."""
    moment = moment_of(seconds) if seconds else None
    if moment is None:
        return ""
    day = moment.date()
    ago = (date.today() - day).days
    if ago in (0, 1):
        return tr("yesterday") if ago else tr("today")
    month = tr(MONTHS[day.month - 1])
    if day.year == date.today().year:
        return tr("{day} {month}", day=day.day, month=month)
    return tr("{day} {month} {year}", day=day.day, month=month, year=day.year)
