"""Writing the build sheet and the materials."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Final

from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from app.background import Begun, CancelledError
from app.commands.asking_file import ask_file, may_write_pages
from app.commands.files import file_name
from app.dialogs.build_sheet import PRINT, BuildSheetDialog
from app.dialogs.working import WorkingDialog
from app.document import Document
from app.materials_csv import materials_csv
from app.numbered_pages import older_pages
from app.settings import Settings
from app.sheet_presets import SheetChoice, SheetPresets
from app.translation import QT_TR_NOOP, tr
from model.files.writer import WriteError, write_bytes
from model.sheet import materials

if TYPE_CHECKING:  # what draws on paper is loaded when it is first wanted
    from app.export.sheet import OnLaying, OnPage, Worked

Say = Callable[[str], None]
CSV: Final = ".csv"
WORKING: Final = QT_TR_NOOP("Working out the steps and the test runs…")


class ExportCommands:
    """What leaves the program beside the plan itself; choices are remembered."""

    def __init__(self, parent: QWidget, document: Document, settings: Settings, tell: Say, say: Say) -> None:
        self._parent = parent
        self._document = document
        self._settings = settings
        self._tell = tell
        self._say = say
        self._presets = SheetPresets(settings)

    def build_sheet(self) -> None:
        """Show the build sheet, ask how and where, and write or print it."""
        dialog = BuildSheetDialog(self._parent, self._presets.last.choice, self._presets)
        # It is worked out once, while it is asked how, and while it is asked where.
        begun = self._begin_working_out()
        dialog.take(begun)
        try:
            self._act_on(dialog, dialog.exec(), begun)
        finally:
            if isValid(dialog):  # the window may have been closed meanwhile
                begun.drop()
                begun.deleteLater()
                dialog.deleteLater()

    def _act_on(self, dialog: BuildSheetDialog, answer: int, begun: Begun) -> None:
        choice, folder = dialog.choice, dialog.options.folder
        if not answer:
            return
        self._presets.remember(choice, folder)
        if answer == PRINT:
            self._print_sheet(choice, begun)
            return
        path = self._ask_path(tr("Build sheet"), "." + choice.format.lower(), folder)
        if path is not None and (choice.format == "PDF" or may_write_pages(self._parent, path)):
            self._write_sheet(path, choice, begun)

    def materials_csv(self) -> None:
        """Ask where, and write the materials as a table."""
        self.ask_and_write(
            tr("Materials"), CSV, lambda: materials_csv(materials(self._document.plan)).encode()
        )

    def ask_and_write(self, title: str, ending: str, made: Callable[[], bytes]) -> None:
        """Ask where, and write the bytes that are made then; tell where they could not be written."""
        path = self._ask_path(title, ending)
        if path is None:
            return
        try:
            write_bytes(path, made())
        except WriteError as error:
            self._tell(tr("{title} not written: {error}. The plan is unchanged.", title=title, error=error))
        else:
            self._say(tr("Wrote {path}", path=path))

    def _begin_working_out(self) -> Begun:
        # What draws on paper is loaded when it is first wanted, so that the window comes up sooner.
        from app.export import working_out

        plan = self._document.plan
        return Begun(self._parent, lambda: working_out(plan))

    def _write_sheet(self, path: Path, choice: SheetChoice, begun: Begun) -> None:
        from app.export import write_sheet

        def write(worked: Worked, on_page: OnPage, on_laying: OnLaying) -> None:
            files = write_sheet(
                worked,
                path,
                choice.paper,
                choice.colour,
                steps=choice.steps,
                on_page=on_page,
                on_laying=on_laying,
            )
            more, older = len(files) - 1, older_pages(path, files)
            said = tr("Wrote {path}", path=files[0])
            if more:
                said = tr("Wrote {file} and %n more file(s)", "", more, file=files[0])
            if older:
                left = tr("Pages of an older sheet are still there: {names}.", names=", ".join(older))
                said = f"{said}. {left}"
            self._say(said)

        try:
            self._with_pages(begun, write)
        except CancelledError:
            self._say(tr("Cancelled: no build sheet was written."))
        except WriteError as error:
            self._tell(tr("The build sheet was not written: {error}. The plan is unchanged.", error=error))

    def _print_sheet(self, choice: SheetChoice, begun: Begun) -> None:
        from app.commands.printing import ask_printer
        from app.export.papers import PAPERS
        from app.export.printing import print_pages
        from app.export.sheet import laid_out, telling

        paper = PAPERS[choice.paper]
        printer = ask_printer(self._parent, paper, self._document.name)
        if printer is None:
            return

        def draw(worked: Worked, on_page: OnPage, on_laying: OnLaying) -> None:
            pages = laid_out(worked, choice.paper, choice.colour, steps=choice.steps, on_laying=on_laying)
            print_pages(printer, telling(pages, on_page), paper)
            self._say(tr("Sent to {printer}", printer=printer.printerName()))

        try:
            self._with_pages(begun, draw)
        except CancelledError:
            self._say(tr("Cancelled: no build sheet was printed."))

    def _with_pages(self, begun: Begun, draw: Callable[[Worked, OnPage, OnLaying], None]) -> None:
        """Lay out and draw pages with their number in sight, as soon as they are worked out."""
        dialog = WorkingDialog(self._parent, tr("Build sheet"))
        dialog.show()
        try:
            draw(
                dialog.result_of(tr(WORKING), begun),
                lambda page, pages: dialog.say(
                    tr("Drawing page {page:,} of {pages:,}", page=page, pages=pages)
                ),
                dialog.tell,
            )
        finally:
            dialog.close()
            dialog.deleteLater()

    def _ask_path(self, title: str, ending: str, chosen: str = "") -> Path | None:
        """Offers the folder that was chosen, else that of the plan, else the one of last time."""
        document = self._document
        beside = str(document.path.parent) if document.path else self._settings.choice("export-folder", "")
        folder = Path(chosen or beside)
        stem = document.path.name if document.path else file_name(document.name)
        offered = folder / (stem.removesuffix(".json").removesuffix(".plan") + ending)
        path = ask_file(self._parent, title, offered, ending)
        if path is not None:
            self._settings.choose("export-folder", str(path.absolute().parent))
        return path
