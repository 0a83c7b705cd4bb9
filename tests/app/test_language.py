"""The catalogue for translators, and what a translation may do to a text."""

from __future__ import annotations

import runpy
from pathlib import Path
from string import Formatter
from xml.etree import ElementTree

import pytest
from PySide6.QtCore import QLocale
from PySide6.QtWidgets import QApplication, QDoubleSpinBox, QSpinBox

from app.language import folder, use_language
from app.translation import tr
from model.edits.pieces import place
from model.grid import Cell
from model.parts import Part
from model.pieces import new_piece
from model.plan import EMPTY_PLAN
from tests.app.pseudo import outside, spoken_everywhere

SCRIPT = Path(__file__).parents[2] / ".run" / "translations.py"


def messages(file: Path) -> dict[str, bool]:
    """Each text, and whether it is one of a count."""
    found = ElementTree.parse(file).getroot().iter("message")
    return {each.findtext("source", ""): each.get("numerus") == "yes" for each in found}


def test_the_catalogue_has_every_text_and_no_other(tmp_path: Path) -> None:
    """Where this fails a text was added or changed: ``bash .run/translations`` gathers it."""
    file = tmp_path / "platelayer.ts"
    runpy.run_path(str(SCRIPT))["gather"](file)
    assert messages(file) == messages(folder() / "platelayer.ts")


def test_texts_have_a_count_exactly_where_they_show_one() -> None:
    """Qt replaces %n and chooses the plural in texts of a count only (Qt's manual, "Handle Plural Forms")."""
    wrong = [
        text
        for text, is_counted in messages(folder() / "platelayer.ts").items()
        if is_counted != ("%n" in text)
    ]
    assert wrong == []


def test_values_have_names_and_no_figures() -> None:
    """A translator may put values in another order, and reads what they are."""
    for text in messages(folder() / "platelayer.ts"):
        assert all(name is None or name.isidentifier() for _, name, _, _ in Formatter().parse(text)), text


def test_no_text_is_half_a_sentence() -> None:
    """A clause that is hung on to another one does not stand there in every language."""
    halves = [
        text
        for text in messages(folder() / "platelayer.ts")
        if text != text.strip() or text[0] in ",;:" or text[-1] in ",;"
    ]
    assert halves == []


def test_messages_of_the_model_are_in_the_language_of_the_editor(qapp: QApplication, tmp_path: Path) -> None:
    def label() -> str:
        return place(EMPTY_PLAN, new_piece(Part.BOOSTER_RAIL, Cell(0, 64, 0))).label

    english = label()
    assert english == "Place booster rail"
    with spoken_everywhere(qapp, tmp_path):
        assert label().startswith("⟦Place ⟦booster rail")
        assert outside(tr("%n piece(s)", "", 3)) == ""
        assert tr("No such text {count}", count=3) == "No such text 3"
    assert label() == english


@pytest.mark.parametrize("name", ["de", "C"])
def test_without_a_translation_all_is_english(qapp: QApplication, tmp_path: Path, name: str) -> None:
    assert not use_language(qapp, QLocale(name), tmp_path)
    assert tr("%n piece(s)", "", 1) == "1 piece"
    assert tr("%n piece(s)", "", 1234) == "1,234 pieces"


@pytest.mark.parametrize("name", ["en", "de", "ar"])
def test_numbers_are_written_in_one_way_whatever_the_system(
    qapp: QApplication, tmp_path: Path, name: str
) -> None:
    """Tables and files have a full stop; a German or Arab field of Qt alone had ``3,50`` or ``٣٫٥٠``."""
    before = QLocale()
    QLocale.setDefault(QLocale(name))
    try:
        use_language(qapp, QLocale(), tmp_path)
        assert QDoubleSpinBox(value=3.5).text() == "3.50"
        assert QSpinBox(maximum=10_000, value=1_234).text() == "1234"
    finally:
        QLocale.setDefault(before)
