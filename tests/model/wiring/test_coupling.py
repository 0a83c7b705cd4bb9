"""What new pieces join or disturb.

Rules: common practice of the trade, no source. What is expected was worked out by hand from the text of the
rules, as each test says.
"""

from __future__ import annotations

import pytest

from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece, new_piece
from model.wiring.lines.coupling import Coupling, couplings, disturbed_without
from tests.model.dry_run.building import UP, Bench, E, N, S, W, cell

TARGET, SOLID = Part.TARGET_BLOCK, Part.SOLID_BLOCK


def dust(x: int, z: int, y: int = 64) -> list[Piece]:
    """Dust with a block under it."""
    return [Piece(SOLID, Cell(x, y - 1, z)), Piece(Part.DUST, Cell(x, y, z))]


def part(kind: Part, x: int, z: int, facing: Facing | None = None, y: int = 64) -> list[Piece]:
    """A part with a block under it."""
    return [Piece(SOLID, Cell(x, y - 1, z)), new_piece(kind, Cell(x, y, z), facing)]


def pairs(bench: Bench, pieces: list[Piece]) -> set[tuple[Cell, Cell]]:
    return {(found.cell, found.other) for found in couplings(bench.plan(), pieces)}


def only(bench: Bench, pieces: list[Piece]) -> Coupling:
    found = couplings(bench.plan(), pieces)
    assert len(found) == 1, found
    return found[0]


@pytest.fixture
def bench() -> Bench:
    return Bench()


def test_dust_joins_dust_beside_it(bench: Bench) -> None:
    bench.put("dust", 0, 0)
    found = only(bench, dust(1, 0))
    assert found == Coupling(cell(1, 0), cell(0, 0), "The dust at 1 64 0 would join the dust at 0 64 0.")
    assert pairs(bench, dust(1, 1)) == set()


def test_dust_joins_dust_a_step_up_or_down(bench: Bench) -> None:
    bench.put("dust", 0, 0)
    assert pairs(bench, dust(1, 0, 65)) == {(cell(1, 0, 65), cell(0, 0))}
    assert pairs(bench, dust(1, 0, 63)) == {(cell(1, 0, 63), cell(0, 0))}
    assert pairs(bench, dust(1, 0, 66)) == set()


def test_a_solid_block_above_the_lower_dust_cuts_the_step(bench: Bench) -> None:
    bench.put("dust", 0, 0)
    bench.put("solid-block", 0, 0, y=65)
    assert pairs(bench, dust(1, 0, 65)) == set()


def test_a_new_block_cuts_a_step_of_others(bench: Bench) -> None:
    bench.put("dust", 0, 0)
    bench.put("dust", 1, 0, y=65)
    found, of_upper = couplings(bench.plan(), [Piece(SOLID, cell(0, 0, 65))])
    assert (found.cell, found.other) == (cell(0, 0, 65), cell(0, 0))
    assert of_upper.other == cell(1, 0, 65)
    assert found.why == "The solid block at 0 65 0 would cut the dust at 0 64 0 off from the dust at 1 65 0."
    assert pairs(bench, [Piece(Part.GLASS, cell(0, 0, 65))]) == set()


def test_dust_drives_a_repeater_only_at_its_back(bench: Bench) -> None:
    """At its sides dust neither locks a repeater nor bends to it, and it does not see what is in front."""
    bench.put("repeater", 0, 0, E)
    assert only(bench, dust(-1, 0)).why == "The dust at −1 64 0 would drive the repeater at 0 64 0."
    assert only(bench, dust(1, 0)).why == "The repeater at 0 64 0 would feed the dust at 1 64 0."
    assert pairs(bench, dust(0, 1)) == set()


def test_a_repeater_from_the_side_locks(bench: Bench) -> None:
    bench.put("repeater", 0, 0, E)
    assert only(bench, part(Part.REPEATER, 0, 1, N)).why == (
        "The repeater at 0 64 1 would lock the repeater at 0 64 0."
    )
    assert pairs(bench, part(Part.REPEATER, 0, 1, S)) == set()


def test_dust_counts_at_the_sides_of_a_comparator(bench: Bench) -> None:
    bench.put("comparator", 0, 0, E)
    assert (
        only(bench, dust(0, 1)).why == "The dust at 0 64 1 would act at the side of the comparator at 0 64 0."
    )
    assert only(bench, dust(-1, 0)).why == "The dust at −1 64 0 would drive the comparator at 0 64 0."


@pytest.mark.parametrize("source", ["lever", "torch", "button"])
def test_sources_feed_dust_beside_them(bench: Bench, source: str) -> None:
    bench.put(source, 0, 0, UP)
    assert pairs(bench, dust(1, 0)) == {(cell(1, 0), cell(0, 0))}


def test_a_strongly_powered_block_feeds_dust_beside_it(bench: Bench) -> None:
    """A torch under a block powers it strongly, which dust beside it gets; weak power it does not."""
    bench.put("torch", 0, 0, UP)
    bench.put("solid-block", 0, 0, y=65)
    found = couplings(bench.plan(), dust(1, 0, 65))
    assert [(each.cell, each.other, each.through) for each in found] == [
        (cell(1, 0, 65), cell(0, 0), cell(0, 0, 65))
    ]
    weak = Bench()
    weak.put("dust", 0, 0)
    weak.put("solid-block", 1, 0)
    assert pairs(weak, dust(2, 0)) == set()


def test_dust_on_a_block_puts_out_the_torch_that_hangs_on_it(bench: Bench) -> None:
    bench.put("torch", 1, 0, E)
    found = only(bench, [Piece(Part.DUST, cell(0, 0, 65))])
    assert found.through == cell(0, 0)
    assert found.why == (
        "The dust at 0 65 0 would put out the torch at 1 64 0. "
        "It would do so through the solid block at 0 64 0."
    )


def test_dust_bends_to_a_target_block_and_powers_what_touches_it(bench: Bench) -> None:
    """Beside a solid block a straight dust runs past; beside a target block it bends into it."""
    for kind, seen in ((SOLID, set()), (TARGET, {(cell(1, 1), cell(1, 0, 65))})):
        bench = Bench()
        bench.put(kind, 1, 0)
        bench.put("torch", 1, 0, UP, y=65)
        assert pairs(bench, [*dust(0, 1), *dust(1, 1), *dust(2, 1)]) == seen


@pytest.mark.parametrize(
    ("kind", "verb"),
    [("lamp", "light"), ("hopper", "stop"), ("auto-crafter", "set off"), ("booster-rail", "drive")],
)
def test_what_takes_a_signal_beside_a_block_that_dust_lies_on(bench: Bench, kind: str, verb: str) -> None:
    bench.put("solid-block", 0, 0)
    bench.put(kind, 1, 0)
    found = only(bench, [Piece(Part.DUST, cell(0, 0, 65))])
    assert found.other == cell(1, 0)
    assert f"would {verb} the" in found.why


def test_a_straight_rail_heeds_no_signal_and_a_three_way_rail_does(bench: Bench) -> None:
    bench.track(0, 0, 3)
    under = [Piece(Part.DUST, cell(1, 1, 63)), Piece(SOLID, cell(1, 1, 62)), Piece(SOLID, cell(0, 1, 63))]
    assert pairs(bench, under) == set()
    bench.put("rail", 1, -1)
    assert pairs(bench, under) == {(cell(1, 1, 63), cell(1, 0))}


def test_notice_at_a_three_way_rail(bench: Bench) -> None:
    """A torch on a block that touches the rail gives it notice, though no signal with nothing above it."""
    bench.track(0, 0, 3)
    bench.put("rail", 1, -1)
    past = [*dust(0, 2, 63), *dust(1, 2, 63), *dust(2, 2, 63)]
    assert pairs(bench, past) == set()
    torch = [Piece(Part.TORCH, cell(1, 1, 63), S)]
    assert "settle again" in only(bench, torch).why
    assert couplings(bench.plan(), torch, wired={cell(1, 0)}) == ()


def test_new_pieces_among_themselves_are_no_coupling(bench: Bench) -> None:
    bench.put("dust", 9, 9)
    assert pairs(bench, [*dust(0, 0), *dust(1, 0), *part(Part.REPEATER, 2, 0, E)]) == set()


def test_a_new_dust_bends_another_away_from_what_it_drove(bench: Bench) -> None:
    """A lone dust with one link lies straight and points at the lamp; with one across it bends."""
    bench.put("lever", -1, 0, UP)
    bench.put("dust", 0, 0)
    bench.put("lamp", 1, 0)
    found = couplings(bench.plan(), dust(0, 1))
    assert {each.other for each in found} == {cell(0, 0), cell(1, 0)}
    bent = next(each for each in found if each.other == cell(1, 0))
    assert bent.cell == cell(0, 1)
    assert bent.why == (
        "The dust at 0 64 1 would bend the dust at 0 64 0, so that it no longer acts on the lamp at 1 64 0."
    )


def test_a_container_between_is_read_through_a_new_block(bench: Bench) -> None:
    bench.put("barrel", -2, 0)
    bench.put("comparator", 0, 0, E)
    found = only(bench, [Piece(SOLID, cell(-1, 0))])
    assert (found.cell, found.other) == (cell(-1, 0), cell(0, 0))
    assert found.why == "The barrel at −2 64 0 would be read by the comparator at 0 64 0."


def test_a_hopper_gives_to_a_new_container(bench: Bench) -> None:
    bench.put("hopper", 0, 0, E)
    assert only(bench, [Piece(Part.BARREL, cell(1, 0))]).other == cell(0, 0)
    assert pairs(bench, [Piece(Part.BARREL, cell(0, 1))]) == set()


def test_a_piece_in_the_place_of_another(bench: Bench) -> None:
    """The lever goes, so the dust beside it loses its source; glass gives nothing."""
    bench.put("lever", 0, 0, UP)
    bench.put("dust", 1, 0)
    assert pairs(bench, [Piece(Part.GLASS, cell(0, 0))]) == {(cell(0, 0), cell(1, 0))}


def test_power_that_nothing_heeds_does_not_matter(bench: Bench) -> None:
    bench.put("solid-block", 0, 0)
    bench.put("target-block", 3, 0)
    assert pairs(bench, [Piece(Part.DUST, cell(0, 0, 65)), *dust(2, 0)]) == set()


def test_a_block_that_keeps_two_dusts_apart_is_missed(bench: Bench) -> None:
    bench.put("dust", 0, 0)
    bench.put("dust", 1, 0, W, y=65)
    bench.put("solid-block", 0, 0, y=65)
    bench.put("solid-block", 5, 5)
    pieces = bench.plan().pieces
    assert disturbed_without(pieces, {cell(0, 0, 65)}) == {cell(0, 0), cell(1, 0, 65)}
    assert disturbed_without(pieces, {cell(5, 5)}) == frozenset()
