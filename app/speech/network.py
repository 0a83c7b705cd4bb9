"""What a screen reader hears of the network window."""

from __future__ import annotations

from typing import TYPE_CHECKING

from app.announcing import Speaker
from app.network.actions import NETWORK_ACTIONS, NETWORK_TOOLS
from app.speech.deeds import deed_words
from app.translation import tr
from app.undo import Step

if TYPE_CHECKING:
    from app.network.window import NetworkWindow

TEXTS = {entry.name: entry.text for entry in NETWORK_ACTIONS}


class NetworkSpeech:
    """Turns what changes in the window into sentences; the map's description says what is at the cursor."""

    def __init__(self, window: NetworkWindow) -> None:
        self._window = window
        self.speaker = Speaker(window.view)
        self._counts = ""
        self._connect()

    def _connect(self) -> None:
        window, tell = self._window, self.speaker.tell
        view, document = window.view, window.document
        view.here_changed.connect(lambda _item: self._tell_place())
        view.tool_changed.connect(lambda tool: tell(tr(TEXTS[NETWORK_TOOLS[tool]])))
        view.selection_changed.connect(self._tell_chosen)
        document.stepped.connect(self._tell_step)
        document.plan_updated.connect(self._tell_counts)
        document.reset.connect(lambda: tell(tr("Opened: {name}", name=document.name)))
        window.panels.status.said.connect(tell)

    def _tell_place(self) -> None:
        if self._window.view.cursor_is_by_key:
            self.speaker.tell_place(self._window.view.accessibleDescription())

    def _tell_chosen(self) -> None:
        count = len(self._window.view.selection)
        self.speaker.tell(tr("{count} selected", count=count) if count else tr("nothing selected"))

    def _tell_step(self, step: Step, label: str) -> None:
        self.speaker.tell(deed_words(step, label))

    def _tell_counts(self) -> None:
        """What a check found, where it is not what the check before found."""
        document = self._window.document
        if document.plan_is_old:
            return
        open_ones = [finding for finding in document.findings if not finding.waived]
        counts = self._window.panels.status.counts.words if open_ones else tr("no findings")
        if counts != self._counts:
            self.speaker.tell(tr("Check: {counts}", counts=counts))
        self._counts = counts
