"""Asks how the build sheet is to be written or printed, and shows its pages."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QHBoxLayout, QVBoxLayout, QWidget

from app.background import Begun
from app.dialogs.buttons import answer_buttons
from app.dialogs.sheet_options import SheetOptions
from app.dialogs.sheet_preview import SheetPreview
from app.panels.look import hairline
from app.sheet_presets import SheetChoice, SheetPresets
from app.slices import Slices
from app.translation import tr

if TYPE_CHECKING:  # what draws on paper is loaded when it is first wanted
    from app.export.devices import DrawPage
    from app.export.sheet import Worked

SIZE: Final = QSize(860, 590)
PRINT: Final = 2
"""What the question ends with where the sheet is to be printed."""


class BuildSheetDialog(QDialog):
    """The choices, and beside them the pages as they will come out."""

    def __init__(self, parent: QWidget | None, choice: SheetChoice, presets: SheetPresets) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Build sheet"))
        self.begun: Begun | None = None
        """What works the sheet out."""
        self._worked: Worked | None = None
        self._slices = Slices(self)
        self._slices.ended.connect(self._show_pages)
        self.options = SheetOptions(choice, presets)
        self.preview = SheetPreview()
        self.options.changed.connect(self._draw)
        self.buttons, _ = answer_buttons(self, tr("Choose a file…"))
        self.print = self.buttons.addButton(tr("Print…"), QDialogButtonBox.ButtonRole.ActionRole)
        self.print.setAutoDefault(False)
        self.print.clicked.connect(lambda: self.done(PRINT))
        both = QHBoxLayout()
        both.setSpacing(16)
        both.addWidget(self.options)
        both.addWidget(hairline("upright"))
        both.addWidget(self.preview, 1)
        column = QVBoxLayout(self)
        column.setSpacing(12)
        column.addLayout(both, 1)
        column.addWidget(self.buttons)
        self.resize(SIZE)

    @property
    def choice(self) -> SheetChoice:
        """What was chosen."""
        return self.options.choice

    def take(self, begun: Begun) -> None:
        """Show the pages as soon as it is worked out what they say."""
        self.begun = begun
        begun.ended.connect(self._show_worked)

    def done(self, result: int) -> None:
        """Whatever closes it: nobody looks at pages any more."""
        self._slices.drop()
        super().done(result)

    def _show_worked(self) -> None:
        assert self.begun is not None
        try:
            self._worked = self.begun.result
        except Exception:  # told again where the sheet is asked for all the same
            self.preview.say(tr("The pages could not be worked out."))
        else:
            self._draw()

    def _draw(self) -> None:
        """Lay the pages out for what is chosen now, while the dialog can be used."""
        if self._worked is None:
            return
        from app.export.sheet import sheet_pages

        worked, choice = self._worked, self.choice
        self._slices.start(lambda: sheet_pages(worked, choice.paper, choice.colour, steps=choice.steps))

    def _show_pages(self, pages: Sequence[DrawPage]) -> None:
        from app.export.papers import PAPERS
        from app.export.washes import sheet_theme

        choice = self.choice
        self.preview.show_pages(pages, PAPERS[choice.paper], sheet_theme(choice.colour).paper)
