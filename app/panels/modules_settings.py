"""The parameters of a module, a row each: a box with the choices, or a field for the waybill."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QLineEdit, QWidget

from app.panels.choice_box import ChoiceBox
from app.panels.look import label, named
from app.panels.modules_words import PARAMETER_TIPS, parameter_word
from app.translation import tr
from model.edits.names import name_problem
from model.plan import NAME_LIMIT
from model.wiring.modules.modules import Parameter


class ModuleSettings(QWidget):
    """Shows how the module in hand is set; what the builder sets is told."""

    value_set = Signal(str, str)
    """A parameter and its value."""
    refused = Signal(str)
    """Why what was typed cannot be a waybill; empty as soon as it can be one."""
    finished = Signal()
    """Enter was pressed in a field."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 4, 0, 4)
        self._grid.setHorizontalSpacing(8)
        self._grid.setVerticalSpacing(4)
        self._grid.setColumnStretch(1, 1)
        self._widgets: list[QWidget] = []
        self._shown: tuple[Parameter, ...] = ()
        self._values: Mapping[str, str] = {}
        self.fields: dict[str, QLineEdit | ChoiceBox] = {}

    def show_parameters(self, parameters: tuple[Parameter, ...], values: Mapping[str, str]) -> None:
        """Show these parameters with their values; a parameter without one has its first."""
        if parameters != self._shown:
            self._rebuild(parameters)
        self._values = {each.name: values.get(each.name, each.first) for each in parameters}
        for name in self._values:
            self._show(name)

    def _show(self, name: str) -> None:
        """Show the value that a parameter has."""
        field, value = self.fields[name], self._values[name]
        blocked = field.blockSignals(True)
        if isinstance(field, ChoiceBox):
            field.setCurrentIndex(field.findData(value))
        elif field.text() != value:
            field.setText(value)
        field.blockSignals(blocked)

    def _rebuild(self, parameters: tuple[Parameter, ...]) -> None:
        for old in self._widgets:
            self._grid.removeWidget(old)
            old.hide()
            old.deleteLater()
        self._widgets = []
        self._shown = parameters
        self.fields = {parameter.name: self._field(parameter) for parameter in parameters}
        for row, (name, field) in enumerate(self.fields.items()):
            word = label(parameter_word(name), "second")
            word.setBuddy(field)
            self._grid.addWidget(word, row, 0)
            self._grid.addWidget(field, row, 1)
            self._widgets += [word, field]
        self.setVisible(bool(parameters))

    def _field(self, parameter: Parameter) -> QLineEdit | ChoiceBox:
        name = parameter.name
        if parameter.choices:
            box = named(ChoiceBox(self), tr("Module: {name}", name=name))
            box.setToolTip(tr(PARAMETER_TIPS[name]))
            for choice in parameter.choices:
                box.addItem(tr(choice), choice)
            box.currentIndexChanged.connect(lambda index: self.value_set.emit(name, box.itemData(index)))
            return box
        field = named(QLineEdit(self), tr("Module: {name}", name=name))
        field.setToolTip(tr(PARAMETER_TIPS[name]))
        field.setMaxLength(NAME_LIMIT)
        field.textEdited.connect(lambda value: self._take(name, value))
        # What is no name must not stand there while another is in hand.
        field.editingFinished.connect(lambda: self._show(name))
        field.returnPressed.connect(self.finished)
        return field

    def _take(self, name: str, value: str) -> None:
        """What is being typed counts as soon as it can be a name."""
        problem = name_problem(value)
        if problem is None:
            self.value_set.emit(name, value)
        self.refused.emit(problem or "")
