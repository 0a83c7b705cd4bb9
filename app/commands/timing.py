"""Probes, and the timing diagram that shows what they read."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Final

from app.translation import QT_TR_NOOP, tr
from model.dry_run.waveform import value_change_dump
from model.grid import Cell
from model.parts import Part
from model.pieces import Piece

if TYPE_CHECKING:
    from app.window import MainWindow

MOST: Final = 200
"""Probes at a time."""
READS_NOTHING: Final = frozenset({Part.GLASS, Part.SLAB})
ADD, TAKE = QT_TR_NOOP("Probe"), QT_TR_NOOP("Take probe away")


class TimingCommands:
    """What the user does with probes, and what leaves the program of what they read."""

    def __init__(self, window: MainWindow) -> None:
        self._window = window
        self._panel = window.panels.timing
        self._runner = window.view.dry_run.runner

    def probe(self) -> None:
        """Watch the chosen cells, or the cell of the cursor; watch them no more where all are watched."""
        cells = self._cells()
        if not cells:
            self._say(tr("Nothing here can be probed: choose rails, blocks, signal parts or hoppers."))
        elif self._all_watched(cells):
            for cell in cells:
                self._runner.remove_probe(cell)
            self._say(tr("{probes} taken away.", probes=tr("%n probe(s)", "", len(cells))))
        elif len({*self._runner.watched, *cells}) > MOST:
            self._say(tr("There is room for {most} probes; choose fewer cells.", most=MOST))
        else:
            for cell in cells:
                self._runner.add_probe(cell)
            self._window.frame.show_timing(True)

    def name_action(self) -> None:
        """The menus say whether the probes would be added or taken away."""
        # What is chosen may be very many cells, of which none is watched where none is at all.
        cells = self._cells() if self._runner.watched else []
        text = tr(TAKE) if cells and self._all_watched(cells) else tr(ADD)
        self._window.bound["probe"].setText(text)

    def show_or_hide(self) -> None:
        """Go to the timing diagram; away from it where the focus is in it already."""
        panel, frame = self._panel, self._window.frame
        if panel.isVisible() and panel.isAncestorOf(self._window.focusWidget()):
            frame.show_timing(False)
            self._window.view.setFocus()
        else:
            frame.show_timing(True)
            panel.take_focus()

    def write_svg(self) -> None:
        """Ask where, and write the ticks that are seen as a drawing."""
        # What draws on paper is loaded when it is first wanted, so that the window comes up sooner.
        from app.export.timing_sheet import TimingSheet, timing_svg

        book, axis = self._panel.book, self._panel.view.axis
        sheet = TimingSheet(book.traces, book.unsure, axis.first, axis.last, book.now, self._title)
        self._write(tr("Timing diagram"), ".svg", lambda: timing_svg(sheet))

    def write_vcd(self) -> None:
        """Ask where, and write the whole run for a waveform viewer."""
        book = self._panel.book
        waves = [trace.wave for trace in book.traces]
        self._write(tr("Waveforms"), ".vcd", lambda: value_change_dump(waves, book.now, self._title))

    def _write(self, title: str, ending: str, made: Callable[[], bytes]) -> None:
        if self._panel.has_readings:
            self._window.exports.ask_and_write(title, ending, made)
        else:
            self._say(tr("There is nothing to write yet: probe a part and start the dry run."))

    @property
    def _title(self) -> str:
        return self._window.document.plan.details.title

    def _cells(self) -> list[Cell]:
        """What can be watched of what is chosen, in the order of placing."""
        view, pieces = self._window.view, self._window.document.plan.pieces
        chosen = view.selection or {view.cursor}
        placed = (pieces.placed(cell) for cell in chosen)
        return [one.piece.at for one in sorted(filter(None, placed)) if can_be_probed(one.piece)]

    def _all_watched(self, cells: list[Cell]) -> bool:
        watched = self._runner.watched
        return all(cell in watched for cell in cells)

    def _say(self, words: str) -> None:
        self._window.panels.status.say(words)


def can_be_probed(piece: Piece) -> bool:
    """Whether signals do anything to a piece, so that there is something to read."""
    return piece.part not in READS_NOTHING
