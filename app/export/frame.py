"""What every page has: frame, centring marks, title block after ISO 7200 (from memory), a line below."""

from __future__ import annotations

from dataclasses import dataclass

from app.export.papers import Paper
from app.export.pencil import FIELD_NAME, RULER, SECTION, TEXT, TITLE, WIDE, Align, Pencil
from app.translation import QT_TR_NOOP, tr
from model.plan import SheetData

CENTRING_MARK = 5.0
BUILD_SHEET = QT_TR_NOOP("Build sheet")
BLANK = "\u2014"
UPPER, MIDDLE = 12.0, 24.0
"""Heights in the title block at which its rows end."""
OWNER_END, TYPE_END, CREATED_END = 62.0, 122.0, 156.0
REVISION_END, DATE_END = 136.0, 164.0
PADDING = 1.5


@dataclass(frozen=True)
class PageWords:
    """What a page says of itself."""

    title: str
    supplement: str
    """``Level 64 — track and its signals``."""
    footer: str
    """Scale, north, running side."""
    number: int
    pages: int
    kind: str = BUILD_SHEET
    """What the document is."""


def language() -> str:
    """The code, after ISO 639-1, of the language in which the page is."""
    return tr("en", "The ISO 639-1 code of the language into which all this is translated")


def draw_frame(pencil: Pencil, paper: Paper, words: PageWords, data: SheetData) -> None:
    """Everything about the body of the page."""
    frame = paper.frame
    pencil.box(frame, WIDE)
    middle_x, middle_y = paper.width / 2, paper.height / 2
    pencil.line(middle_x, frame.top() - CENTRING_MARK, middle_x, frame.top(), WIDE)
    pencil.line(middle_x, frame.bottom(), middle_x, frame.bottom() + CENTRING_MARK, WIDE)
    pencil.line(frame.left() - CENTRING_MARK, middle_y, frame.left(), middle_y, WIDE)
    pencil.line(frame.right(), middle_y, frame.right() + CENTRING_MARK, middle_y, WIDE)
    below = frame.bottom() + 5.0
    pencil.text(frame.left(), below, language(), RULER)
    pencil.text(frame.right(), below, words.footer, RULER, align=Align.RIGHT, widest=frame.width() / 2 - 8)
    _draw_block(pencil, paper, words, data)


def _draw_block(pencil: Pencil, paper: Paper, words: PageWords, data: SheetData) -> None:
    block = paper.block
    left, top, right, bottom = block.left(), block.top(), block.right(), block.bottom()
    pencil.line(left, top, right, top, WIDE)
    if paper.lies:
        pencil.line(left, top, left, bottom, WIDE)
    pencil.line(left, top + UPPER, right, top + UPPER)
    pencil.line(left + TYPE_END, top + MIDDLE, right, top + MIDDLE)
    for x, start, end in (
        (OWNER_END, 0.0, UPPER),
        (TYPE_END, 0.0, block.height()),
        (CREATED_END, 0.0, UPPER),
        (REVISION_END, MIDDLE, block.height()),
        (DATE_END, MIDDLE, block.height()),
    ):
        pencil.line(left + x, top + start, left + x, top + end)
    _Fields(pencil, left, top).fill(words, data)


class _Fields:
    """The fields of the title block, by their left edge and top in it."""

    def __init__(self, pencil: Pencil, left: float, top: float) -> None:
        self._pencil, self._left, self._top = pencil, left, top

    def fill(self, words: PageWords, data: SheetData) -> None:
        """All fields; what nobody gave is a dash."""
        self._field(0, 0, OWNER_END, tr("Legal owner"), data.owner)
        self._field(OWNER_END, 0, TYPE_END, tr("Document type"), tr(words.kind))
        self._field(TYPE_END, 0, CREATED_END, tr("Created by"), data.created_by)
        self._field(CREATED_END, 0, 180.0, tr("Approved by"), data.approved_by)
        self._field(TYPE_END, UPPER, 180.0, tr("Identification number"), data.number, bold=True)
        self._field(TYPE_END, MIDDLE, REVISION_END, tr("Rev."), data.revision)
        self._field(REVISION_END, MIDDLE, DATE_END, tr("Date of issue"), data.date)
        self._field(DATE_END, MIDDLE, 180.0, tr("Sheet"), f"{words.number} / {words.pages}")
        self._name(0, UPPER, tr("Title, supplementary title"))
        room = TYPE_END - 2 * PADDING
        x, y = self._left + PADDING, self._top + UPPER
        self._pencil.text(x, y + 11.4, words.title or BLANK, TITLE, bold=True, widest=room)
        self._pencil.text(x, y + 19.5, words.supplement, SECTION, widest=room)

    def _name(self, x: float, y: float, name: str) -> None:
        self._pencil.text(self._left + x + PADDING, self._top + y + 3.6, name, FIELD_NAME)

    def _field(self, x: float, y: float, end: float, name: str, value: str, *, bold: bool = False) -> None:
        self._name(x, y, name)
        left, baseline = self._left + x + PADDING, self._top + y + 9.2
        high = 3.0 if bold else TEXT
        self._pencil.text(left, baseline, value or BLANK, high, bold=bold, widest=end - x - 2 * PADDING)
