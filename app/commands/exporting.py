"""Writing the build sheet and the materials."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Final, cast

from PySide6.QtWidgets import QFileDialog, QWidget

from app.background import Newest
from app.commands.files import file_name
from app.dialogs.build_sheet import FORMATS, PAPERS, BuildSheetDialog, SheetChoice
from app.dialogs.working import CancelledError, WorkingDialog
from app.document import Document
from app.materials_csv import materials_csv
from app.panels.words import counted
from app.settings import Settings
from model.files.writer import WriteError, write_bytes
from model.sheet import materials

if TYPE_CHECKING:  # what draws on paper is loaded when it is first wanted
    from app.export.sheet import Worked

Say = Callable[[str], None]
CSV: Final = ".csv"
WORKING: Final = "Working out the steps and the test runs…"


class ExportCommands:
    """What leaves the program beside the plan itself; choices are remembered."""

    def __init__(self, parent: QWidget, document: Document, settings: Settings, tell: Say, say: Say) -> None:
        self._parent = parent
        self._document = document
        self._settings = settings
        self._tell = tell
        self._say = say
        self._worker = Newest(parent)

    def build_sheet(self) -> None:
        """Ask how and where, and write the build sheet."""
        dialog = BuildSheetDialog(self._parent, self._choice())
        if not dialog.exec():
            return
        choice = dialog.choice
        self._remember(choice)
        path = self._ask_path("Build sheet", "." + choice.format.lower())
        if path is not None:
            self._write_sheet(path, choice)

    def materials_csv(self) -> None:
        """Ask where, and write the materials as a table."""
        self.ask_and_write("Materials", CSV, lambda: materials_csv(materials(self._document.plan)).encode())

    def ask_and_write(self, title: str, ending: str, made: Callable[[], bytes]) -> None:
        """Ask where, and write the bytes that are made then; tell where they could not be written."""
        path = self._ask_path(title, ending)
        if path is None:
            return
        try:
            write_bytes(path, made())
        except WriteError as error:
            self._tell(f"{title} not written: {error}. The plan is unchanged.")
        else:
            self._say(f"Wrote {path}")

    def _write_sheet(self, path: Path, choice: SheetChoice) -> None:
        # What draws on paper is loaded when it is first wanted, so that the window comes up sooner.
        from app.export import working_out, write_sheet

        plan = self._document.plan
        dialog = WorkingDialog(self._parent, "Build sheet", self._worker)
        dialog.show()
        try:
            worked = cast("Worked", dialog.result_of(lambda: working_out(plan), WORKING))
            files = write_sheet(
                worked,
                path,
                choice.paper,
                choice.colour,
                steps=choice.steps,
                on_page=lambda page, pages: dialog.say(f"Drawing page {page:,} of {pages:,}"),
            )
        except CancelledError:
            self._say("Cancelled: no build sheet was written.")
        except WriteError as error:
            self._tell(f"The build sheet was not written: {error}. The plan is unchanged.")
        else:
            count = f" and {counted(len(files) - 1, 'more file')}" if len(files) > 1 else ""
            self._say(f"Wrote {files[0]}{count}")
        finally:
            dialog.close()
            dialog.deleteLater()

    def _ask_path(self, title: str, ending: str) -> Path | None:
        document = self._document
        folder = document.path.parent if document.path else Path(self._settings.choice("export-folder", ""))
        stem = document.path.name if document.path else file_name(document.name)
        offered = folder / (stem.removesuffix(".json").removesuffix(".plan") + ending)
        kind = ending[1:].upper()
        name, _ = QFileDialog.getSaveFileName(self._parent, title, str(offered), f"{kind} (*{ending})")
        if not name:
            return None
        path = Path(name) if name.lower().endswith(ending) else Path(name + ending)
        self._settings.choose("export-folder", str(path.absolute().parent))
        return path

    def _choice(self) -> SheetChoice:
        """What was chosen last time, where it is still on offer."""
        paper = self._settings.choice("sheet-paper", PAPERS[0])
        format_ = self._settings.choice("sheet-format", FORMATS[0])
        return SheetChoice(
            paper if paper in PAPERS else PAPERS[0],
            format_ if format_ in FORMATS else FORMATS[0],
            self._settings.choice("sheet-colour", "no") == "yes",
            self._settings.choice("sheet-steps", "yes") == "yes",
        )

    def _remember(self, choice: SheetChoice) -> None:
        self._settings.choose("sheet-paper", choice.paper)
        self._settings.choose("sheet-format", choice.format)
        self._settings.choose("sheet-colour", "yes" if choice.colour else "no")
        self._settings.choose("sheet-steps", "yes" if choice.steps else "no")
