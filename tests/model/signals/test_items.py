"""Items in slots, and crafts. Common practice, no source."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.parts import STACK
from model.pieces import Held
from model.signals.crafter import craft, slots_in_use
from model.signals.items import (
    Slots,
    count_of,
    items_in,
    slots_of,
    with_item,
    with_item_spread,
    without_item,
)

slot = st.none() | st.tuples(st.sampled_from(("salt", "peat")), st.integers(1, STACK))
contents = st.lists(slot, min_size=1, max_size=9).map(tuple)


def test_slots_are_filled_one_an_entry() -> None:
    assert slots_of([Held("salt", 3), Held("peat", 1)], 4) == (("salt", 3), ("peat", 1), None, None)


@given(contents, st.sampled_from((with_item, with_item_spread)))
def test_an_item_put_in_is_one_more_in_one_slot_that_had_room(before: Slots, put: object) -> None:
    after = put(before, "salt")  # type: ignore[operator]
    room = any(each is None or (each[0] == "salt" and each[1] < STACK) for each in before)
    assert (after is not None) == room
    if after is not None:
        assert count_of(after, "salt") == count_of(before, "salt") + 1
        assert count_of(after, "peat") == count_of(before, "peat")
        assert sum(one != other for one, other in zip(before, after, strict=True)) == 1
        assert without_item(after, "salt") is not None


def test_first_slot_or_emptiest_slot() -> None:
    before = (("salt", 5), ("peat", 1), ("salt", 2), None, None)
    assert with_item(before, "salt") == (("salt", 6), *before[1:])
    assert with_item_spread(before, "salt") == (*before[:3], ("salt", 1), None)
    full = (("salt", 5), ("salt", 2), ("salt", 2))
    assert with_item_spread(full, "salt") == (("salt", 5), ("salt", 3), ("salt", 2))


def test_an_item_comes_out_of_the_first_slot_that_holds_it() -> None:
    assert without_item((None, ("salt", 1), ("salt", 2)), "salt") == (None, None, ("salt", 2))
    with pytest.raises(ValueError, match="peat"):
        without_item((("salt", 1),), "peat")


def test_an_ingot_makes_nine_nuggets_and_back() -> None:
    empty: Slots = (None,) * 9
    alone = (None, None, ("ingot", 3), *(None,) * 6)
    assert craft(alone) == ("nugget", 9, (None, None, ("ingot", 2), *(None,) * 6))
    full = (("nugget", 2),) + (("nugget", 1),) * 8
    assert craft(full) == ("ingot", 1, (("nugget", 1), *empty[1:]))
    assert craft(empty) is None
    assert craft((("ingot", 1), ("ingot", 1), *(None,) * 7)) is None
    assert craft((("nugget", 1), *(None,) * 8)) is None
    assert craft((("ingot", 1),) * 9) is None
    assert (slots_in_use(alone), slots_in_use(full), items_in(full)) == (1, 9, 10)
