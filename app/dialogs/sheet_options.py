"""The choices for a build sheet: a preset, or paper, format, pages, colour and folder one by one."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QCheckBox,
    QComboBox,
    QFileDialog,
    QFormLayout,
    QHBoxLayout,
    QInputDialog,
    QLayout,
    QPushButton,
    QRadioButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from app.panels.choice_box import ChoiceBox
from app.panels.look import label, named
from app.panels.words import plain_tip
from app.sheet_presets import FORMATS, LAST, PAPERS, Preset, SheetChoice, SheetPresets
from app.translation import tr

WIDTH: Final = 320
AROUND_FOLDER: Final = 120
"""Px beside the name of a folder: what stands before it, and the sign that it can be changed."""
BESIDE, ANOTHER = "", "\n"
"""What two entries of the list of folders stand for; neither is the name of a folder."""


class SheetOptions(QWidget):
    """A preset fills the fields; who changes a field leaves the preset."""

    changed = Signal()
    """What the pages look like is chosen otherwise."""

    def __init__(self, choice: SheetChoice, presets: SheetPresets) -> None:
        super().__init__()
        self._presets = presets
        self._papers = _one_of(self, PAPERS)
        self._formats = _one_of(self, FORMATS)
        self.colour = named(QCheckBox(tr("Lay colour over the drawing")), tr("Lay colour over the drawing"))
        self.steps = named(QCheckBox(tr("Steps, with pictures")), tr("Steps, with pictures"))
        self.presets = named(_list(), tr("Preset"))
        self.folders = named(_list(), tr("Folder"))
        self.keep = QPushButton(tr("Keep…"))
        self.forget = QPushButton(tr("Forget"))
        self._lay_out()
        # The lists take what room there is; only longer words may make the whole wider.
        self.setFixedWidth(max(WIDTH, self.sizeHint().width()))
        self._show(Preset(LAST, choice, presets.last.folder))
        self._fill_presets(LAST)
        self._connect()

    @property
    def choice(self) -> SheetChoice:
        """What was chosen."""
        return SheetChoice(
            PAPERS[self._papers.checkedId()],
            FORMATS[self._formats.checkedId()],
            self.colour.isChecked(),
            self.steps.isChecked(),
        )

    @property
    def folder(self) -> str:
        """Where the sheet goes; empty: beside its plan."""
        return str(self.folders.currentData())

    def keep_as(self, name: str) -> None:
        """Keep what is chosen under a name, in place of what was kept under it."""
        self._presets.keep(Preset(name, self.choice, self.folder))
        self._fill_presets(name)

    def _lay_out(self) -> None:
        form = QFormLayout()
        form.setVerticalSpacing(12)
        form.addRow(label(tr("Preset"), "field"), self.presets)
        form.addRow("", _row([self.keep, self.forget]))
        form.addRow(label(tr("Paper"), "field"), _row(self._papers.buttons()))
        form.addRow(label(tr("Format"), "field"), _row(self._formats.buttons()))
        form.addRow(label(tr("Pages"), "field"), self.steps)
        form.addRow(label(tr("Colour"), "field"), self.colour)
        form.addRow(label(tr("Folder"), "field"), self.folders)
        told = label(tr("PDF is one file; SVG and PNG are one a page. All can be read in black and white."))
        told.setWordWrap(True)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(16)
        column.addLayout(form)
        column.addWidget(told)
        column.addStretch(1)

    def _connect(self) -> None:
        for button in (self.keep, self.forget):
            button.setAutoDefault(False)
        for group in (self._papers, self._formats):
            group.idClicked.connect(lambda _id: self._leave_preset())
        for box in (self.colour, self.steps):
            box.clicked.connect(lambda _checked: self._leave_preset())
        self.presets.activated.connect(lambda _index: self._use_preset())
        self.folders.activated.connect(lambda _index: self._use_folder())
        self.keep.clicked.connect(self._ask_name)
        self.forget.clicked.connect(self._forget_preset)

    def _show(self, preset: Preset) -> None:
        """Put the choices of a preset into the fields."""
        choice = preset.choice
        self._papers.button(PAPERS.index(choice.paper)).setChecked(True)
        self._formats.button(FORMATS.index(choice.format)).setChecked(True)
        self.colour.setChecked(choice.colour)
        self.steps.setChecked(choice.steps)
        self._fill_folders(preset.folder)

    def _fill_presets(self, chosen: str) -> None:
        self.presets.clear()
        self.presets.addItem(tr("None"), LAST)
        for name in self._presets.kept:
            self.presets.addItem(name, name)
        self.presets.setCurrentIndex(max(0, self.presets.findData(chosen)))
        self.forget.setEnabled(self.presets.currentIndex() > 0)

    def _fill_folders(self, chosen: str) -> None:
        self._folder_before = chosen
        self.folders.clear()
        self.folders.addItem(tr("Beside the plan"), BESIDE)
        if chosen != BESIDE:
            room = self.width() - AROUND_FOLDER
            shown = self.fontMetrics().elidedText(chosen, Qt.TextElideMode.ElideMiddle, room)
            self.folders.addItem(shown, chosen)
        self.folders.addItem(tr("Another folder…"), ANOTHER)
        self.folders.setCurrentIndex(self.folders.findData(chosen))
        self.folders.setToolTip(plain_tip(chosen) if chosen else "")

    def _leave_preset(self) -> None:
        self.presets.setCurrentIndex(0)
        self.forget.setEnabled(False)
        self.changed.emit()

    def _use_preset(self) -> None:
        preset = self._presets.kept.get(self.presets.currentData())
        self.forget.setEnabled(preset is not None)
        if preset is not None:
            self._show(preset)
            self.changed.emit()

    def _use_folder(self) -> None:
        folder = self.folder
        if folder == ANOTHER:
            before = self._folder_before
            folder = QFileDialog.getExistingDirectory(self, tr("Folder for sheets"), before) or before
        self._fill_folders(folder)
        self._leave_preset()

    def _ask_name(self) -> None:
        name, is_given = QInputDialog.getText(
            self,
            tr("Keep choices"),
            tr("The name under which these choices are kept:"),
            text=self.presets.currentData(),
        )
        if is_given and name.strip():
            self.keep_as(name.strip())

    def _forget_preset(self) -> None:
        self._presets.forget(self.presets.currentData())
        self._fill_presets(LAST)


def _list() -> ChoiceBox:
    """A list of names, which must not make the whole wider."""
    box = ChoiceBox()
    box.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
    box.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
    return box


def _one_of(parent: QWidget, words: tuple[str, ...]) -> QButtonGroup:
    group = QButtonGroup(parent)
    for number, word in enumerate(words):
        group.addButton(named(QRadioButton(word), word), number)
    return group


def _row(widgets: Sequence[QWidget]) -> QLayout:
    row = QHBoxLayout()
    row.setSpacing(8)
    for widget in widgets:
        row.addWidget(widget)
    row.addStretch(1)
    return row
