"""Materials and the counts of the sheet equal a count over the plan."""

from __future__ import annotations

from collections import Counter
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from model.parts import STACK, Part
from model.plan import Plan, plan_of
from model.routing.junction import Junction
from model.sheet import build_sheet, materials
from model.sheet.levels import Sign
from model.sheet.materials import stacks
from tests.harness.plans import random_plan
from tests.strategies import plans


def counts_agree(plan: Plan) -> None:
    parts = Counter(piece.part for piece in plan.pieces)
    places = Counter((piece.part, piece.at.y) for piece in plan.pieces)
    listed = materials(plan)
    assert {material.part: material.pieces for material in listed.parts} == parts
    assert {(m.part, level): count for m in listed.parts for level, count in m.levels.items()} == places
    assert listed.pieces == len(plan.pieces)
    assert all(listed.of(part) == parts[part] for part in Part)

    sheet = build_sheet(Junction(plan), ())
    assert sheet.materials == listed
    on_pages: Counter[tuple[Part, int]] = Counter()
    for page in sheet.levels:
        for row in page.key:
            if row.sign is Sign.PIECE:
                assert row.sample is not None
                on_pages[row.sample.part, page.level] += row.pieces
    assert on_pages == places


def test_materials_equal_the_count_over_the_plan_and_over_the_pages() -> None:
    for seed in range(50):
        counts_agree(random_plan(Random(seed)))


def test_materials_that_miss_a_piece_are_seen(monkeypatch: pytest.MonkeyPatch) -> None:
    """The control that must fail."""
    plan, all_of = random_plan(Random(1)), materials
    monkeypatch.setattr(
        "tests.model.sheet.test_materials.materials",
        lambda plan: all_of(plan_of([*plan.pieces][1:])),
    )
    with pytest.raises(AssertionError):
        counts_agree(plan)


@pytest.mark.slow
@pytest.mark.timeout(0)
@settings(max_examples=2_000, deadline=None)
@given(plans())
def test_materials_equal_the_counts_at_length(plan: Plan) -> None:
    counts_agree(plan)


@given(plans())
def test_parts_come_in_the_order_of_the_catalogue_and_levels_from_below(plan: Plan) -> None:
    listed = materials(plan).parts
    assert [material.part for material in listed] == [
        part for part in Part if any(material.part is part for material in listed)
    ]
    assert all(list(material.levels) == sorted(material.levels) for material in listed)


@pytest.mark.parametrize(("pieces", "text"), [(36, "0 + 36"), (88, "1 + 24"), (64, "1 + 0"), (0, "0 + 0")])
def test_stacks_of_64(pieces: int, text: str) -> None:
    assert str(stacks(pieces)) == text


@given(st.integers(0, 2_000_000))
def test_stacks_add_up(pieces: int) -> None:
    full, over = stacks(pieces)
    assert full * STACK + over == pieces
    assert 0 <= over < STACK
