"""What the program is for, and what to know before a block is placed."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QHBoxLayout, QVBoxLayout, QWidget

from app.panels.look import label
from app.program_icon import program_icon
from app.translation import QT_TR_NOOP, tr
from model.sheet.cautions import FROM_MEMORY, ONE_ORIENTATION, TEST_FIRST

WIDTH: Final = 420
SIGN: Final = 48
"""Side of the program's icon, in px."""
PURPOSE: Final = QT_TR_NOOP("Plan a rail junction before you place a block.")
INVENTED: Final = QT_TR_NOOP(
    "The Brinepan Tramway of the examples is invented, as are its stations, waybills and traffic."
)
POWER_ONCE: Final = (
    QT_TR_NOOP("Power every switch once."),
    QT_TR_NOOP("Until its first signal a switch can lie otherwise than it rests."),
)
CAUTIONS: Final = (
    (FROM_MEMORY.title, FROM_MEMORY.text),
    (ONE_ORIENTATION.title, ONE_ORIENTATION.text),
    POWER_ONCE,
    (TEST_FIRST.title, TEST_FIRST.text),
)
"""In the words of the build sheet, where it has them."""


def version_words() -> str:
    """``Platelayer 1.2.3``; the name alone where the program runs without being installed."""
    # Looking up the version takes long and is seldom asked for.
    from importlib.metadata import PackageNotFoundError, version

    try:
        return tr("Platelayer {version}", version=version("platelayer"))
    except PackageNotFoundError:
        return "Platelayer"


class CautionsDialog(QDialog):
    """Sentences that hold for every plan."""

    def __init__(self, parent: QWidget | None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Before you build"))
        column = _column(self)
        for title, text in CAUTIONS:
            both = QVBoxLayout()
            both.setSpacing(2)
            _add(both, tr(title), "strong")
            _add(both, tr(text))
            column.addLayout(both)
        _add_close(self, column)


class AboutDialog(QDialog):
    """Name, version, purpose."""

    def __init__(self, parent: QWidget | None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("About Platelayer"))
        column = _column(self)
        head = QHBoxLayout()
        head.setSpacing(12)
        sign = label()
        sign.setPixmap(program_icon().pixmap(QSize(SIGN, SIGN), self.devicePixelRatio()))
        head.addWidget(sign)
        head.addWidget(label(version_words(), "heading"), 1)
        column.addLayout(head)
        _add(column, tr(PURPOSE))
        _add(column, tr(INVENTED), "second")
        _add_close(self, column)


def _column(dialog: QDialog) -> QVBoxLayout:
    dialog.setFixedWidth(WIDTH)
    column = QVBoxLayout(dialog)
    column.setContentsMargins(16, 16, 16, 12)
    column.setSpacing(12)
    return column


def _add(column: QVBoxLayout, text: str, look: str = "") -> None:
    told = label(text, look)
    told.setWordWrap(True)
    column.addWidget(told)


def _add_close(dialog: QDialog, column: QVBoxLayout) -> None:
    buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
    buttons.button(QDialogButtonBox.StandardButton.Close).setProperty("look", "quiet")
    buttons.rejected.connect(dialog.reject)
    column.addWidget(buttons)
    # Left to itself it would be as high as for lines half as wide, and share that out between them.
    dialog.ensurePolished()
    dialog.setFixedHeight(column.totalHeightForWidth(WIDTH))
