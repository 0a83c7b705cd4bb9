"""The rows of a departure card: where to, what to take along, how long it takes. Lengths in mm."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby
from typing import Final, NamedTuple

from PySide6.QtCore import QRectF

from app.canvas.symbols import draw_cart, paper
from app.canvas.symbols.lettering import em_for, printable, width
from app.export.flow import Strip
from app.export.pencil import HAIR, LEGEND, NARROW, SECTION, TEXT, WIDE, Align, Pencil, fitted
from model.network.cards import Departure, DepartureCard, EmptyRun
from model.network.riding import Stop
from model.network.times import seconds_for

CART, TO, TAKE, TIME_ROOM = 3.0, 9.0, 62.0, 24.0
"""Where the columns begin; the time stands at the right."""
BY_ROOM: Final = 44.0
"""Of the column that says on which track to set out; it is there where a station has several."""
ROW, HEADER = 9.5, 6.5
SYMBOL: Final = 8.5
LABEL, INDENT, GAP, FEED = 6.2, 2.0, 2.0, 7.4
"""A waybill: its height, the room beside its name, from one to the next, from line to line."""
NOTHING: Final = "nothing"
NO_WAY: Final = "no way leads there"


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
        pencil.text(space.left() + TAKE, baseline, "take along", LEGEND, bold=True)
        if _tells_by(card):
            pencil.text(right - TIME_ROOM - BY_ROOM, baseline, "set out towards", LEGEND, bold=True)
        pencil.text(right, baseline, "time", LEGEND, bold=True, align=Align.RIGHT)
        pencil.line(space.left(), space.bottom(), right, space.bottom(), WIDE)

    return Strip(HEADER, draw)


def card_rows(card: DepartureCard, wide: float) -> tuple[Strip, ...]:
    """A row a departure."""
    by_room = BY_ROOM if _tells_by(card) else 0.0
    return tuple(_row(departure, wide - TAKE - TIME_ROOM - by_room) for departure in card.departures)


def _tells_by(card: DepartureCard) -> bool:
    return len(card.empty) > 1


def _row(departure: Departure, room: float) -> Strip:
    labels = tuple(labels_of(departure.waybills, room))
    lines = labels[-1].line + 1 if labels else 1

    def draw(pencil: Pencil, space: QRectF) -> None:
        left, middle = space.left(), space.top() + ROW / 2
        baseline = middle + TEXT / 2
        if departure.length is not None:
            loaded = bool(departure.waybills)
            draw_cart(pencil.painter, left + CART, middle, paper(SYMBOL), 90.0, pencil.theme, loaded=loaded)
        name, widest = departure.end, TAKE - TO - 3
        pencil.text(left + TO, middle + SECTION / 2, name, SECTION, bold=True, widest=widest)
        if not labels:
            said = NO_WAY if departure.length is None else NOTHING
            pencil.text(left + TAKE, baseline, said, TEXT, widest=room)
        for label in labels:
            _draw_label(pencil, label, left + TAKE, middle)
        if departure.by is not None:
            at, widest = space.right() - TIME_ROOM - BY_ROOM, BY_ROOM - 3
            pencil.text(at, baseline, departure.by, TEXT, widest=widest)
        if departure.length is not None:
            said = time_words(seconds_for(departure.length))
            pencil.text(space.right(), baseline, said, TEXT, align=Align.RIGHT, widest=TIME_ROOM - 3)
        pencil.line(left, space.bottom(), space.right(), space.bottom(), HAIR, pencil.theme.grid4)

    return Strip(ROW + (lines - 1) * FEED, draw)


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
    y = middle + label.line * FEED
    pencil.box(QRectF(left + label.left, y - LABEL / 2, label.wide, LABEL), NARROW)
    x, widest = left + label.left + INDENT, label.wide - 2 * INDENT + 0.01
    pencil.text(x, y + TEXT / 2, label.text, TEXT, bold=True, widest=widest)


def time_words(seconds: float) -> str:
    """``45 s``, ``2 min 5 s``, ``1 h 4 min``: rounded up, so that nobody comes late."""
    whole = -int(-seconds // 1)
    if whole < 60:
        return f"{whole} s"
    minutes, rest = divmod(whole, 60)
    if minutes < 60:
        return f"{minutes} min {rest} s" if rest else f"{minutes} min"
    hours, minutes = divmod(-(-whole // 60), 60)
    return f"{hours:,} h {minutes} min" if minutes else f"{hours:,} h"


def empty_words(run: EmptyRun) -> str:
    """Where a cart goes without a waybill, as a sentence."""
    cart = "A cart without a waybill" if run.by is None else f"Towards {run.by}, a cart without a waybill"
    match run.ride.why:
        case Stop.STATION:
            return f"{cart} goes to {run.ride.end}."
        case Stop.LOOP:
            return f"{cart} circles and arrives nowhere."
        case Stop.NO_WAY:
            return f"{cart} comes to {run.ride.end}, and no further."
