"""What was read at one probe tick by tick, and how to say it. No Qt here."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator
from typing import Final, NamedTuple

from app.names import part_name
from app.translation import QT_TR_NOOP, tr
from model.dry_run.waveform import STRENGTHS, Wave
from model.grid import Cell
from model.parts import Part
from model.pieces import Piece

FULL: Final = 15
"""The highest strength."""
TICKS_A_SECOND: Final = 20
_WORDS: Final[dict[Part, tuple[str, str]]] = {
    Part.RAIL: (QT_TR_NOOP("at rest"), QT_TR_NOOP("powered")),
    Part.BOOSTER_RAIL: (QT_TR_NOOP("brakes"), QT_TR_NOOP("drives")),
    Part.TORCH: (QT_TR_NOOP("out"), QT_TR_NOOP("lit")),
    Part.LAMP: (QT_TR_NOOP("out"), QT_TR_NOOP("lit")),
    Part.BUTTON: (QT_TR_NOOP("not pressed"), QT_TR_NOOP("pressed")),
    Part.HOPPER: (QT_TR_NOOP("works"), QT_TR_NOOP("stopped by a signal")),
    Part.AUTO_CRAFTER: (QT_TR_NOOP("no signal"), QT_TR_NOOP("has a signal")),
}
_OFF_ON: Final = (QT_TR_NOOP("off"), QT_TR_NOOP("on"))
_POWER: Final = QT_TR_NOOP("power")
_STRENGTH_WORDS: Final = {Part.DUST: QT_TR_NOOP("strength"), Part.COMPARATOR: QT_TR_NOOP("output")}


_SHORT: Final = {
    Part.DUST: QT_TR_NOOP("Dust"),
    Part.TORCH: QT_TR_NOOP("Torch"),
    Part.BOOSTER_RAIL: QT_TR_NOOP("Booster"),
    Part.DETECTOR_RAIL: QT_TR_NOOP("Detector"),
}


class Span(NamedTuple):
    """A stretch of time, in ticks; ``low`` and ``high`` differ where changes are too close to tell apart."""

    start: float
    end: float
    low: int
    high: int


class Trace:
    """The readings of a probe: each change with its tick, in order."""

    def __init__(self, cell: Cell, piece: Piece | None = None, switch: str = "") -> None:
        self.cell = cell
        self.piece = piece
        self.switch = switch
        """The name of the switch in the cell, where there is one."""
        self.ticks: list[int] = []
        self.values: list[int] = []

    @property
    def part(self) -> Part | None:
        """What stands in the cell; ``None`` where nothing does any more."""
        return None if self.piece is None else self.piece.part

    @property
    def has_strengths(self) -> bool:
        """Whether it is drawn in steps, not on two levels."""
        return self.part in STRENGTHS

    @property
    def name(self) -> str:
        """The switch or the part in the cell, as short as a builder says it."""
        if self.switch or self.part is None:
            return self.switch or tr("Nothing")
        return _SHORT.get(self.part) or part_name(self.part)

    def extend(self, changes: Iterable[tuple[int, int]]) -> None:
        """Take over further changes, (tick, value) each, later than those that are there."""
        for tick, value in changes:
            self.ticks.append(tick)
            self.values.append(value)

    def forget(self) -> None:
        """Nothing has been read."""
        self.ticks.clear()
        self.values.clear()

    @property
    def wave(self) -> Wave:
        """The readings as they are exported."""
        return Wave(self.cell, self.part, tuple(zip(self.ticks, self.values, strict=True)))

    def value_at(self, tick: int) -> int | None:
        """What was read in a tick; ``None`` before the first reading."""
        index = bisect_right(self.ticks, tick) - 1
        return None if index < 0 else self.values[index]

    def change_before(self, tick: int) -> int | None:
        """The tick of the last change before a tick."""
        index = bisect_left(self.ticks, tick) - 1
        return None if index < 0 else self.ticks[index]

    def change_after(self, tick: int) -> int | None:
        """The tick of the first change after a tick."""
        index = bisect_right(self.ticks, tick)
        return self.ticks[index] if index < len(self.ticks) else None

    def spans(self, start: float, end: float, least: float = 0.0) -> Iterator[Span]:
        """What to draw of the time from ``start`` to ``end``, its cost being that of what is seen.

        Where there are several changes within ``least`` ticks they fall together, so that there are at most
        two spans for each ``least`` of time, however many changes there are.
        """
        dense: Span | None = None
        for span in self._each_span(start, end, least):
            if dense is not None:
                if span[2:] == dense[2:]:
                    dense = Span(dense.start, span.end, span.low, span.high)
                    continue
                yield dense
                dense = None
            if span.low == span.high:
                yield span
            else:
                dense = span
        if dense is not None:
            yield dense

    def _each_span(self, start: float, end: float, least: float) -> Iterator[Span]:
        ticks, values = self.ticks, self.values
        index, since = bisect_right(ticks, start), start
        if index == 0:
            if not ticks or ticks[0] >= end:
                return
            since, index = float(ticks[0]), 1
        while since < end:
            after = bisect_left(ticks, since + least, index)
            if after - index > 1:
                among, until = values[index - 1 : after], min(since + least, end)
                yield Span(since, until, min(among), max(among))
                index = after
            else:
                value = values[index - 1]
                until = min(ticks[index], end) if index < len(ticks) else end
                yield Span(since, until, value, value)
                index += 1
            since = until

    def words(self, value: int | None) -> str:
        """A reading as a builder says it."""
        if value is None:
            return tr("not read yet")
        if self.has_strengths:
            return f"{tr(_STRENGTH_WORDS.get(self.part, _POWER))} {value}" if self.part else str(value)
        return tr((_WORDS.get(self.part, _OFF_ON) if self.part else _OFF_ON)[value > 0])

    def sentence(self, tick: int) -> str:
        """What is read in a tick, since when, and what comes next."""
        value = self.value_at(tick)
        said = f"{self.name} {self.cell}: {self.words(value)}"
        since = self.change_before(tick + 1)
        if since is not None:
            said = tr("{said} since tick {since}", said=said, since=since)
        after = self.change_after(tick)
        if after is None:
            return said
        words = self.words(self.value_at(after))
        return tr("{said}, {words} from tick {after}", said=said, words=words, after=after)


def seconds(tick: int) -> str:
    """A tick in seconds: ``2.1 s``."""
    return f"{tick / TICKS_A_SECOND:.2f}".rstrip("0").rstrip(".") + " s"
