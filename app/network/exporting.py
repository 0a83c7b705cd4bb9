"""What leaves the network window beside the network itself: cards, and GraphML for other programs."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Final

from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from app.background import CancelledError
from app.commands.asking_file import ask_file
from app.commands.files import file_name
from app.dialogs.working import WorkingDialog
from app.network.awaited import AwaitedPlan
from app.network.document import NetworkDocument
from app.network.files import NETWORKS
from app.settings import Settings
from app.translation import QT_TR_NOOP, tr
from model.files.writer import WriteError, write_bytes

Say = Callable[[str], None]
CARDS: Final = QT_TR_NOOP("The cards could not be written to {file}: {reason}. The network is unchanged.")
GRAPH: Final = QT_TR_NOOP("The graph could not be written to {file}: {reason}. The network is unchanged.")


class NetworkExports:
    """Asks where, and writes; tells where it could not."""

    def __init__(
        self, parent: QWidget, document: NetworkDocument, settings: Settings, tell: Say, say: Say
    ) -> None:
        self._parent = parent
        self._document = document
        self._settings = settings
        self._tell = tell
        self._say = say

    def cards(self) -> None:
        """A departure card for every station, and the list of readers, as PDF."""
        path = self._ask_path(tr("Departure cards"), "-cards", ".pdf")
        if not path:
            return
        dialog = WorkingDialog(self._parent, tr("Departure cards"))
        try:
            self._draw_cards(path, dialog)
        except CancelledError:
            self._say(tr("Cancelled: no cards were written."))
        finally:
            if isValid(dialog):  # the window may have been closed meanwhile
                dialog.close()
                dialog.deleteLater()

    def _draw_cards(self, path: Path, dialog: WorkingDialog) -> None:
        # What draws on paper is loaded when it is first wanted, so that the window comes up sooner.
        from app.export.cards import export_cards

        plan = dialog.result_of(tr("Planning the network…"), AwaitedPlan(self._document, dialog))
        network = self._document.planned
        dialog.show()

        def say(page: int, pages: int) -> None:
            dialog.say(tr("Drawing page {page:,} of {pages:,}", page=page, pages=pages))

        self._write(CARDS, path, lambda: export_cards(network, plan, path, say))

    def graphml(self) -> None:
        """The network as a graph, in the form that networkx and others read."""
        from model.files.network_graphml import graphml_bytes

        path = self._ask_path(tr("Network as GraphML"), "", ".graphml")
        if path:
            network = self._document.network
            self._write(GRAPH, path, lambda: write_bytes(path, graphml_bytes(network)))

    def _write(self, unwritten: str, path: Path, write: Callable[[], object]) -> None:
        """``unwritten`` is what is said where the file cannot be written."""
        try:
            write()
        except WriteError as error:
            self._tell(tr(unwritten, file=error.file, reason=error.reason))
        else:
            self._say(tr("Wrote {path}", path=path))

    def _ask_path(self, title: str, tail: str, ending: str) -> Path | None:
        document = self._document
        folder = document.path.parent if document.path else Path(self._settings.choice("export-folder", ""))
        stem = document.path.name if document.path else file_name(document.name, NETWORKS)
        offered = folder / (stem.removesuffix(".json").removesuffix(".network") + tail + ending)
        path = ask_file(self._parent, title, offered, ending)
        if path is not None:
            self._settings.choose("export-folder", str(path.absolute().parent))
        return path
