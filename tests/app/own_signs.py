"""Where a screen shows a sign of the toolkit or the system: there is one set of signs, the program's own."""

from __future__ import annotations

from collections.abc import Iterator

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QDialogButtonBox,
    QKeySequenceEdit,
    QLineEdit,
    QMessageBox,
    QStyle,
    QToolButton,
    QWidget,
)


def foreign_signs(root: QWidget) -> Iterator[str]:
    """Each in a few words."""
    for widget in (root, *root.findChildren(QWidget)):
        if isinstance(widget, QMessageBox) and not widget.iconPixmap().isNull():
            yield f"the system's picture beside {widget.text()!r}"
        elif isinstance(widget, QLineEdit | QKeySequenceEdit) and widget.isClearButtonEnabled():
            yield f"the toolkit's cross in {widget.accessibleName()!r}"
        elif isinstance(widget, QToolButton) and widget.arrowType() is not Qt.ArrowType.NoArrow:
            yield f"the toolkit's arrow on {widget.accessibleName()!r}"
        elif isinstance(widget, QDialogButtonBox) and _has_pictures(widget):
            yield f"the system's pictures on {[button.text() for button in widget.buttons()]}"


def _has_pictures(box: QDialogButtonBox) -> bool:
    hint = QStyle.StyleHint.SH_DialogButtonBox_ButtonsHaveIcons
    return bool(box.style().styleHint(hint, None, box)) and any(
        not button.icon().isNull() for button in box.buttons()
    )
