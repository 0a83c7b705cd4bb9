"""The list of readers on paper: what to write on the sign of each. Lengths in mm."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial
from itertools import groupby
from typing import Final

from PySide6.QtCore import QRectF

from app.export.flow import Placed, Strip, Table, draw_strips, paginate
from app.export.frame import PageWords, draw_frame
from app.export.papers import PAPERS
from app.export.pencil import HAIR, LEGEND, NARROW, WIDE, Pencil
from app.export.strips import HEADER, heading, sentence
from app.translation import QT_TR_NOOP, tr
from model.network.cards import ReaderSign
from model.plan import SheetData

PAPER: Final = PAPERS["A4"]
PADDING: Final = 3.0
JUNCTION, ARM, DEFAULT, WAYBILL, CALLED = 0.0, 42.0, 78.0, 112.0, 146.0
"""Where the columns begin."""
ENDS: Final = {JUNCTION: ARM, ARM: DEFAULT, DEFAULT: WAYBILL, WAYBILL: CALLED}
ROW: Final = 7.5
READERS: Final = QT_TR_NOOP("Readers")
KIND: Final = QT_TR_NOOP("List of readers")
HOW_TO: Final = QT_TR_NOOP(
    "What to write on the sign of each reader: by which arm carts leave without the waybill, and with it."
)
NO_READERS: Final = QT_TR_NOOP("The network has no readers.")
TAKES_NOTHING: Final = QT_TR_NOOP("takes nothing")
DASH: Final = "—"


def reader_pages(signs: Sequence[ReaderSign], title: str, before: int) -> list[partial[None]]:
    """What draws each page; so many pages of cards come ``before``."""
    area = PAPER.body.adjusted(PADDING, PADDING, -PADDING, -PADDING)
    head = heading(tr(READERS), tr(HOW_TO))
    rows = tuple(_rows(signs))
    table = Table(
        (head, Strip(HEADER, _draw_header)) if rows else (head,), rows or (sentence(tr(NO_READERS)),)
    )
    parts = paginate([table], area.height())
    pages = []
    for number, part in enumerate(parts, 1):
        supplement = (
            tr(KIND)
            if len(parts) == 1
            else tr("{kind} · part {number} of {count}", kind=tr(KIND), number=number, count=len(parts))
        )
        words = PageWords(title, supplement, "", before + number, before + len(parts), tr(KIND))
        pages.append(partial(_draw_page, part, area, words))
    return pages


def _draw_page(part: list[Placed], area: QRectF, words: PageWords, pencil: Pencil) -> None:
    draw_strips(pencil, part, area)
    draw_frame(pencil, PAPER, words, SheetData())


def _draw_header(pencil: Pencil, space: QRectF) -> None:
    baseline = space.bottom() - 2.5
    columns = (
        (JUNCTION, "junction"),
        (ARM, tr("carts from")),
        (DEFAULT, tr("leave by")),
        (WAYBILL, tr("with waybill")),
    )
    for x, word in (*columns, (CALLED, tr("leave by"))):
        pencil.text(space.left() + x, baseline, word, LEGEND, bold=True)
    pencil.line(space.left(), space.bottom(), space.right(), space.bottom(), WIDE)


def _rows(signs: Sequence[ReaderSign]) -> Iterator[Strip]:
    for _, group in groupby(signs, key=lambda sign: sign.junction):
        here = list(group)
        for sign in here:
            yield _row(sign, ends=sign is here[-1])


def _row(sign: ReaderSign, *, ends: bool) -> Strip:
    """``ends``: whether it is the last of its junction."""
    taken = (tr(TAKES_NOTHING), DASH) if sign.name is None else (sign.name, sign.other)
    words = (sign.junction, sign.arm, sign.default, *taken)

    def draw(pencil: Pencil, space: QRectF) -> None:
        left, baseline = space.left(), space.center().y() + LEGEND / 2
        for x, word in zip((JUNCTION, ARM, DEFAULT, WAYBILL, CALLED), words, strict=True):
            bold = x in (DEFAULT, CALLED) or (x == WAYBILL and sign.name is not None)
            widest = ENDS.get(x, space.width()) - x - 2
            pencil.text(left + x, baseline, word, LEGEND, bold=bold, widest=widest)
        wide, colour = (NARROW, None) if ends else (HAIR, pencil.theme.grid4)
        pencil.line(left, space.bottom(), space.right(), space.bottom(), wide, colour)

    return Strip(ROW, draw)
