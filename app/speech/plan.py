"""What a screen reader hears of the plan window."""

from __future__ import annotations

from typing import TYPE_CHECKING

from app.actions import TOOLS, action
from app.announcing import Speaker
from app.speech.deeds import deed_words
from app.speech.gestures import gesture_words
from app.tools.host import Ghost
from app.translation import tr
from app.undo import Step

if TYPE_CHECKING:
    from app.window import MainWindow


class PlanSpeech:
    """Turns what changes in the window into sentences.

    The description of the plan view says at any time what is at the cursor; that is told where the cursor
    moves by key, not with every step of a mouse.
    """

    def __init__(self, window: MainWindow) -> None:
        self._window = window
        self.speaker = Speaker(window.view)
        self._counts = window.panels.status.counts.words
        self._previewed = ""
        self._running = ""
        self._is_making = False
        self._connect()

    def _connect(self) -> None:
        window, tell = self._window, self.speaker.tell
        view, document = window.view, window.document
        view.cursor_moved.connect(lambda _cell: self._tell_place())
        view.level_changed.connect(lambda _level: tell(window.panels.levels.accessibleName()))
        view.tool_changed.connect(lambda tool: tell(action(TOOLS[tool]).text))
        view.hand_changed.connect(lambda: tell(window.panels.in_hand.accessibleName()))
        view.selection_changed.connect(self._tell_chosen)
        view.ghost_changed.connect(self._tell_gesture)
        view.preview_text_changed.connect(self._tell_preview)
        view.dry_run.changed.connect(self._tell_run)
        view.dry_run.runner.state_changed.connect(self._tell_run)
        document.stepped.connect(self._tell_step)
        document.junction_updated.connect(self._tell_counts)
        document.reset.connect(self._begin_anew)
        window.panels.status.said.connect(tell)

    def _begin_anew(self) -> None:
        self._counts = ""
        self.speaker.tell(tr("Opened: {name}", name=self._window.document.name))

    def _tell_place(self) -> None:
        view = self._window.view
        if view.cursor_is_by_key:
            self.speaker.tell_place(view.accessibleDescription())

    def _tell_chosen(self) -> None:
        count = len(self._window.view.selection)
        self.speaker.tell(tr("{count} selected", count=count) if count else tr("nothing selected"))

    def _tell_step(self, step: Step, label: str) -> None:
        self._is_making = False
        self.speaker.tell_gesture("")
        self.speaker.tell(deed_words(step, label))

    def _tell_gesture(self, ghost: Ghost | None) -> None:
        if not self._window.view.hands.tool.is_busy:
            ghost = None
        words = "" if ghost is None else gesture_words(ghost)
        if words:
            self.speaker.tell_gesture(words)
        elif self._is_making:
            # Where something comes of it after all, that is told instead.
            self.speaker.tell_gesture(tr("nothing made"))
        self._is_making = bool(words)

    def _tell_preview(self, title: str) -> None:
        runs = self._window.view.previews.shown.runs
        said = ". ".join(part for part in (title, *(run.words for run in runs[-1:])) if part)
        if said and said != self._previewed:
            self.speaker.tell(said)
        elif self._previewed and not said:
            self.speaker.tell(tr("The preview has ended"))
        self._previewed = said

    def _tell_run(self) -> None:
        """Whether the time of a dry run goes on; at which tick it stands still."""
        runner = self._window.view.dry_run.runner
        state = "" if not runner.is_on else "runs" if runner.is_running else "pauses"
        if state == self._running:
            return
        self._running = state
        if state == "pauses":
            self.speaker.tell(tr("The dry run stands still at tick {tick}", tick=runner.tick))
        else:
            self.speaker.tell(tr("The dry run goes on") if state else tr("The dry run has ended"))

    def _tell_counts(self) -> None:
        """What a check found, where it is not what the check before found."""
        document = self._window.document
        if document.junction_is_old:
            return
        has_open = document.found.open.total() > 0
        counts = self._window.panels.status.counts.words if has_open else tr("no findings")
        if counts != self._counts:
            self.speaker.tell(tr("Check: {counts}", counts=counts))
        self._counts = counts
