"""What containers hold, in words; plurals as school grammars of English have them."""

from __future__ import annotations

from model.edits.words import held_words
from model.pieces import Held


def test_waybills_are_counted_and_named_and_other_items_are_as_in_the_file() -> None:
    assert held_words(Held("waybill:Salt", 1)) == "1 waybill “Salt”"
    assert held_words(Held("waybill:Tithe Barn", 1_728)) == "1,728 waybills “Tithe Barn”"
    assert held_words(Held("ingot", 3)) == "3 ingot"
