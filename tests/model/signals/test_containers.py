"""What containers read as. Common practice of the trade, no source, unless a test names one."""

from __future__ import annotations

from fractions import Fraction
from math import floor

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.grid import Cell
from model.parts import Part
from model.pieces import Held, Piece
from model.signals.containers import reading, slots

SALT = "waybill:Salt"
SLOTS = {Part.HOPPER: 5, Part.BARREL: 27}


def filled(part: Part, *counts: int) -> Piece:
    """A container with entries of so many items each."""
    return Piece(part, Cell(0, 0, 0), holds=tuple(Held(SALT, count) for count in counts))


def test_a_reader_holds_22_waybills_before_it_reads_2() -> None:
    # 22 of its waybill, 18 in one slot and 1 in each other: common practice, no source.
    assert [held.count for held in slots(filled(Part.HOPPER, 22))] == [18, 1, 1, 1, 1]
    assert reading(filled(Part.HOPPER, 22)) == 1
    assert reading(filled(Part.HOPPER, 23)) == 2


@pytest.mark.parametrize("part", SLOTS)
def test_empty_reads_0_one_item_1_and_full_15(part: Part) -> None:
    assert reading(filled(part)) == 0
    assert reading(filled(part, 1)) == 1
    assert reading(filled(part, 64 * SLOTS[part])) == 15
    assert reading(filled(part, 64 * SLOTS[part] - 1)) == 14


def test_a_single_entry_of_5_to_68_fills_every_slot_of_a_hopper() -> None:
    assert [held.count for held in slots(filled(Part.HOPPER, 4))] == [4]
    assert [held.count for held in slots(filled(Part.HOPPER, 5))] == [1, 1, 1, 1, 1]
    assert [held.count for held in slots(filled(Part.HOPPER, 68))] == [64, 1, 1, 1, 1]
    assert [held.count for held in slots(filled(Part.HOPPER, 69))] == [64, 5]
    assert [held.count for held in slots(filled(Part.HOPPER, 11, 11))] == [11, 11]
    assert [held.count for held in slots(filled(Part.BARREL, 22))] == [22]


@given(st.sampled_from(sorted(SLOTS)), st.data())
def test_the_reading_is_the_formula_in_exact_fractions(part: Part, data: st.DataObject) -> None:
    counts = data.draw(st.lists(st.integers(1, 64), max_size=SLOTS[part]))
    mean = Fraction(sum(counts), 64 * SLOTS[part])
    assert reading(filled(part, *counts)) == (floor(1 + 14 * mean) if counts else 0)
