"""The rows of a departure card: where to, what to take along, how long it takes. Lengths in mm."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby
from math import ceil
from typing import Final, NamedTuple

from PySide6.QtCore import QRectF

from app.canvas.symbols import draw_cart, paper
from app.canvas.symbols.lettering import em_for, printable, width
from app.export.flow import Strip
from app.export.pencil import HAIR, LEGEND, NARROW, SECTION, TEXT, WIDE, Align, Pencil, fitted, folded
from app.translation import QT_TR_NOOP, tr
from model.network.cards import Departure, DepartureCard, EmptyRun
from model.network.riding import Stop
from model.network.times import seconds_for

CART, TO, TAKE, TIME_ROOM = 3.0, 9.0, 62.0, 24.0
"""Where the columns begin; the time stands at the right."""
BY_ROOM: Final = 44.0
"""Of the column that says on which track to set out; it is there where a station has several."""
NAME_ROOM: Final = TAKE - TO - 3.0
NAME_FEED, NAME_ABOVE = 4.0, 1.4
"""From line to line of a name that takes several, and the room above it."""
ROW, HEADER = 9.5, 6.5
SYMBOL: Final = 8.5
LABEL, INDENT, GAP, FEED = 6.2, 2.0, 2.0, 7.4
"""A waybill: its height, the room beside its name, from one to the next, from line to line."""
MOST_LINES: Final = 6
"""Of waybills in one piece."""
NOTHING: Final = QT_TR_NOOP("nothing")
NO_WAY: Final = QT_TR_NOOP("no way leads there")


class Label(NamedTuple):
    """A waybill to take along, as it stands in its row."""

    left: float
    line: int
    wide: float
    text: str


def card_header(card: DepartureCard) -> Strip:
    """The names of the columns."""

    def draw(pencil: Pencil, space: QRectF) -> None:
        baseline, right = space.bottom() - 2.0, space.right()
        pencil.text(space.left() + TO, baseline, "to", LEGEND, bold=True)
        pencil.text(space.left() + TAKE, baseline, tr("take along"), LEGEND, bold=True)
        if _tells_by(card):
            pencil.text(right - TIME_ROOM - BY_ROOM, baseline, tr("set out towards"), LEGEND, bold=True)
        pencil.text(right, baseline, "time", LEGEND, bold=True, align=Align.RIGHT)
        pencil.line(space.left(), space.bottom(), right, space.bottom(), WIDE)

    return Strip(HEADER, draw)


def card_rows(card: DepartureCard, wide: float) -> tuple[Strip, ...]:
    """A row a departure, or several where there are very many waybills."""
    by_room = BY_ROOM if _tells_by(card) else 0.0
    room = wide - TAKE - TIME_ROOM - by_room
    return tuple(strip for departure in card.departures for strip in _strips(departure, room))


def _tells_by(card: DepartureCard) -> bool:
    return len(card.empty) > 1


def _strips(departure: Departure, room: float) -> Iterator[Strip]:
    """The row in parts of so many lines, so that none is higher than a card."""
    labels = tuple(labels_of(departure.waybills, room))
    lines = max(labels[-1].line + 1 if labels else 1, _lines_of_names(departure))
    for first in range(0, lines, MOST_LINES):
        here = min(MOST_LINES, lines - first)
        part = [label for label in labels if first <= label.line < first + here]
        yield _strip(departure, part, first, here, room, ends=first + here == lines)


def _strip(
    departure: Departure, labels: Sequence[Label], first: int, lines: int, room: float, *, ends: bool
) -> Strip:
    def draw(pencil: Pencil, space: QRectF) -> None:
        if first:
            name, baseline = tr("{end}, more", end=departure.end), space.top() + ROW / 2 + TEXT / 2
            pencil.text(space.left() + TO, baseline, name, TEXT, widest=TAKE - TO - 3)
        else:
            _draw_words(pencil, departure, space, room)
        for label in labels:
            middle = space.top() + ROW / 2 + (label.line - first) * FEED
            _draw_label(pencil, label, space.left() + TAKE, middle)
        if ends:
            pencil.line(space.left(), space.bottom(), space.right(), space.bottom(), HAIR, pencil.theme.grid4)

    return Strip((lines - 1) * FEED + (ROW if ends else FEED), draw)


def _draw_words(pencil: Pencil, departure: Departure, space: QRectF, room: float) -> None:
    """All of a row but its waybills."""
    left, middle, right = space.left(), space.top() + ROW / 2, space.right()
    baseline = middle + TEXT / 2
    _draw_name(pencil, departure.end, left + TO, space.top())
    if departure.length is None:
        pencil.text(left + TAKE, baseline, tr(NO_WAY), TEXT, widest=room)
        return
    loaded = bool(departure.waybills)
    draw_cart(pencil.painter, left + CART, middle, paper(SYMBOL), 90.0, pencil.theme, loaded=loaded)
    if not loaded:
        pencil.text(left + TAKE, baseline, tr(NOTHING), TEXT, widest=room)
    if departure.by is not None:
        _draw_lines(pencil, by_lines(departure.by), right - TIME_ROOM - BY_ROOM, baseline, bold=False)
    time = time_words(seconds_for(departure.length))
    pencil.text(right, baseline, time, TEXT, align=Align.RIGHT, widest=TIME_ROOM - 3)


def name_lines(name: str) -> list[str]:
    """The station to which one rides: in one line where it fits in large letters, else whole in several."""
    is_short = width(printable(name), em_for(SECTION), True) <= NAME_ROOM
    return [name] if is_short else folded(printable(name), em_for(TEXT), NAME_ROOM, True)


def by_lines(arm: str) -> list[str]:
    """The arm towards which one sets out, whole."""
    return folded(printable(arm), em_for(TEXT), BY_ROOM - 3, False)


def _lines_of_names(departure: Departure) -> int:
    """Of waybills, in whose height the names have room."""
    most = max(len(name_lines(departure.end)), len(by_lines(departure.by or "")))
    return 1 + max(0, ceil((most * NAME_FEED + NAME_ABOVE - ROW) / FEED))


def _draw_name(pencil: Pencil, name: str, left: float, top: float) -> None:
    lines = name_lines(name)
    if len(lines) == 1:
        pencil.text(left, top + (ROW + SECTION) / 2, name, SECTION, bold=True, widest=NAME_ROOM)
    else:
        _draw_lines(pencil, lines, left, top + NAME_ABOVE + TEXT, bold=True)


def _draw_lines(pencil: Pencil, lines: Sequence[str], left: float, first: float, *, bold: bool) -> None:
    for number, line in enumerate(lines):
        pencil.text(left, first + number * NAME_FEED, line, TEXT, bold=bold)


def labels_of(waybills: tuple[str, ...], room: float) -> Iterator[Label]:
    """The waybills one behind another, broken into lines; one name several times running is one label."""
    left, line = 0.0, 0
    for name, same in groupby(waybills):
        count = len(tuple(same))
        text = f"{count} × {name}" if count > 1 else name
        em, shown = fitted(printable(text), em_for(TEXT), True, room - 2 * INDENT)
        wide = width(shown, em, True) + 2 * INDENT
        if left and left + wide > room:
            left, line = 0.0, line + 1
        yield Label(left, line, wide, text)
        left += wide + GAP


def _draw_label(pencil: Pencil, label: Label, left: float, middle: float) -> None:
    x = left + label.left
    pencil.box(QRectF(x, middle - LABEL / 2, label.wide, LABEL), NARROW)
    widest = label.wide - 2 * INDENT + 0.01
    pencil.text(x + INDENT, middle + TEXT / 2, label.text, TEXT, bold=True, widest=widest)


def time_words(seconds: float) -> str:
    """``45 s``, ``2 min 5 s``, ``1 h 4 min``: rounded up, so that nobody comes late."""
    whole = -int(-seconds // 1)
    if whole < 60:
        return f"{whole} s"
    minutes, rest = divmod(whole, 60)
    if minutes < 60:
        return (
            tr("{minutes} min {rest} s", minutes=minutes, rest=rest)
            if rest
            else tr("{minutes} min", minutes=minutes)
        )
    hours, minutes = divmod(-(-whole // 60), 60)
    return tr("{hours:,} h {minutes} min", hours=hours, minutes=minutes) if minutes else f"{hours:,} h"


def empty_words(run: EmptyRun) -> str:
    """Where a cart goes without a waybill, as a sentence."""
    cart = (
        tr("A cart without a waybill")
        if run.by is None
        else tr("Towards {by}, a cart without a waybill", by=run.by)
    )
    match run.ride.why:
        case Stop.STATION:
            return tr("{cart} goes to {end}.", cart=cart, end=run.ride.end)
        case Stop.LOOP:
            return tr("{cart} circles and arrives nowhere.", cart=cart)
        case Stop.NO_WAY:
            return tr("{cart} comes to {end}, and no further.", cart=cart, end=run.ride.end)
