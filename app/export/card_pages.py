"""Departure cards on paper: two of A5, lying, on a sheet of A4, to be cut apart. Lengths in mm."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Final

from PySide6.QtCore import QRectF

from app.export.card_rows import card_header, card_rows, empty_words
from app.export.flow import Placed, Strip, Table, draw_strips, paginate
from app.export.papers import MARGIN, PAPERS
from app.export.pencil import COVER, HAIR, LEGEND, NARROW, RULER, TEXT, WIDE, Align, Pencil, headline
from app.export.strips import paragraph, sentence
from app.translation import QT_TR_NOOP, tr
from model.network.cards import DepartureCard

PAPER: Final = PAPERS["A4"]
CARD_HEIGHT: Final = PAPER.height / 2
"""A5 lying: ISO 216."""
CARDS_A_PAGE: Final = 2
PADDING, HEAD = 4.0, 22.0
CUT_MARK: Final = 8.0
MOST_EMPTY: Final = 3
"""Sentences on empty carts at the foot of a card."""
HOW_TO: Final = QT_TR_NOOP("Departures. Put the waybills named into your cart before you set out.")
NOBODY: Final = QT_TR_NOOP("No trip from here is planned.")
NO_LINK: Final = QT_TR_NOOP("No track leads away from here.")


@dataclass(frozen=True)
class PaperCard:
    """As much of a departure card as one card of paper holds."""

    card: DepartureCard
    rows: tuple[Placed, ...]
    foot: tuple[Strip, ...]
    number: int
    of: int
    title: str

    def draw(self, pencil: Pencil, top: float) -> None:
        """On a sheet, with the edge of the card at ``top``."""
        frame = _frame(top)
        pencil.box(frame, WIDE)
        inner = frame.adjusted(PADDING, PADDING, -PADDING, -PADDING)
        self._draw_head(pencil, inner)
        draw_strips(pencil, self.rows, inner.adjusted(0, HEAD, 0, 0))
        y = inner.bottom() - sum(strip.height for strip in self.foot)
        pencil.line(inner.left(), y - 1.5, inner.right(), y - 1.5, NARROW)
        for strip in self.foot:
            strip.draw(pencil, QRectF(inner.left(), y, inner.width(), strip.height))
            y += strip.height

    def _draw_head(self, pencil: Pencil, inner: QRectF) -> None:
        right, third = inner.right(), inner.width() / 3
        name, wide = self.card.station, 2 * third - 4
        headline(pencil, inner.left(), inner.top() + COVER + 1, name, wide)
        pencil.text(right, inner.top() + LEGEND + 1, self.title, LEGEND, align=Align.RIGHT, widest=third)
        said = [tr("times at 8 cells a second")]
        if self.of > 1:
            said.append(tr("card {number} of {of}", number=self.number, of=self.of))
        pencil.text(right, inner.top() + 15.5, " · ".join(said), RULER, align=Align.RIGHT, widest=third)
        pencil.text(inner.left(), inner.top() + 15.5, tr(HOW_TO), LEGEND, widest=wide)


def card_pages(cards: Sequence[DepartureCard], title: str) -> Iterator[partial[None]]:
    """What draws each page: two cards, the last page may have one."""
    papers = [paper for card in cards for paper in paper_cards(card, title)]
    for first in range(0, len(papers), CARDS_A_PAGE):
        yield partial(_draw_page, papers[first : first + CARDS_A_PAGE])


def _draw_page(cards: Sequence[PaperCard], pencil: Pencil) -> None:
    for number, card in enumerate(cards):
        card.draw(pencil, number * CARD_HEIGHT)
    for left, right in ((0.0, CUT_MARK), (PAPER.width - CUT_MARK, PAPER.width)):
        pencil.line(left, CARD_HEIGHT, right, CARD_HEIGHT, HAIR)


def paper_cards(card: DepartureCard, title: str) -> list[PaperCard]:
    """The card, or several where it has more rows than one holds."""
    inner = _frame(0).adjusted(PADDING, PADDING, -PADDING, -PADDING)
    foot = tuple(_foot(card, inner.width()))
    room = inner.height() - HEAD - sum(strip.height for strip in foot) - 2.5
    rows = card_rows(card, inner.width()) or (sentence(tr(NOBODY)),)
    parts = paginate([Table((card_header(card),), rows)], room)
    return [
        PaperCard(card, tuple(part), foot, number, len(parts), title) for number, part in enumerate(parts, 1)
    ]


def _foot(card: DepartureCard, wide: float) -> Iterator[Strip]:
    """Where empty carts go; the same on all cards of a station."""
    said = [empty_words(run) for run in card.empty] or [tr(NO_LINK)]
    if len(said) > MOST_EMPTY:
        said[MOST_EMPTY - 1 :] = [
            tr("And {count:,} more tracks lead away from here.", count=len(said) - MOST_EMPTY + 1)
        ]
    for text in said:
        yield paragraph(text, wide, TEXT)


def _frame(top: float) -> QRectF:
    return QRectF(MARGIN, top + MARGIN, PAPER.width - 2 * MARGIN, CARD_HEIGHT - 2 * MARGIN)
