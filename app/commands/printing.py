"""Asks on which printer; paper is asked for in the size of the sheet."""

from __future__ import annotations

from PySide6.QtPrintSupport import QPrintDialog, QPrinter, QPrinterInfo
from PySide6.QtWidgets import QMessageBox, QWidget

from app.dialogs.asking import asking
from app.export.papers import Paper
from app.export.printing import set_up
from app.translation import tr


def ask_printer(parent: QWidget, paper: Paper, title: str) -> QPrinter | None:
    """The printer that the user chose; ``None`` where there is none or the user thought better of it.

    Printing into a file is not offered: the program writes PDF itself, and notices a full disk.
    """
    if not QPrinterInfo.availablePrinterNames():
        _tell_of_none(parent)
        return None
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    set_up(printer, paper, title)
    with asking(QPrintDialog(printer, parent)) as dialog:
        dialog.setOption(QPrintDialog.PrintDialogOption.PrintToFile, False)
        return printer if dialog.exec() else None


def _tell_of_none(parent: QWidget) -> None:
    with asking(QMessageBox(parent)) as box:
        box.setWindowTitle(tr("Print"))
        box.setText(tr("The system knows no printer."))
        box.setInformativeText(tr("Write the sheet as PDF, and print that where there is one."))
        box.exec()
