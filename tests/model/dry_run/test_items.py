"""Hoppers, crafters, readers while a plan runs. Common practice, no source, unless a test names one."""

from __future__ import annotations

import pytest

from model.dry_run import DryRun, Event, Fill, Lever, Send, Unsure
from model.grid import Cell, Heading
from model.parts import Mode, Part
from model.pieces import Held
from model.signals.items import count_of, items_in
from tests.model.dry_run.building import DOWN, Bench, E, N, S, W, cell, changes, holding, off, on

SALT = "waybill:Salt"


def counts(dry_run: DryRun, *cells: Cell) -> list[int]:
    """How many items each holds."""
    return [items_in(dry_run.contents(at)) for at in cells]


def by_tick(dry_run: DryRun, at: Cell, ticks: int) -> list[int]:
    """How many items a container holds after each tick."""
    seen = []
    for _ in range(ticks):
        dry_run.step()
        seen.append(items_in(dry_run.contents(at)))
    return seen


def test_a_hopper_moves_one_item_in_8_ticks() -> None:
    bench = Bench()
    bench.put("barrel", 0, 0, y=65, **holding(("salt", 10)))
    hopper = bench.put("hopper", 0, 0, E)
    target = bench.put("barrel", 1, 0)
    dry_run = bench.dry_run()
    # Tick 0: takes one. Tick 8: gives that and takes another, and so on.
    assert by_tick(dry_run, target, 26) == [0] * 8 + [1] * 8 + [2] * 8 + [3] * 2
    assert counts(dry_run, hopper) == [1]


def test_what_a_hopper_receives_does_not_make_it_rest() -> None:
    """The second hopper has done nothing yet, so it passes on at once what it gets in its turn."""
    bench = Bench()
    first = bench.put("hopper", 0, 0, E, **holding(("salt", 1)))
    second = bench.put("hopper", 1, 0, E)
    target = bench.put("barrel", 2, 0)
    dry_run = bench.dry_run()
    dry_run.step()
    assert counts(dry_run, first, second, target) == [0, 0, 1]
    # In the other order it would have been empty in its turn.
    assert dry_run.unsure == [Unsure(0, (first, second))]


def test_a_hopper_under_one_that_faces_it_drains_it_twice() -> None:
    bench = Bench()
    upper = bench.put("hopper", 0, 0, DOWN, y=65, **holding(("salt", 20)))
    lower = bench.put("hopper", 0, 0, E)
    dry_run = bench.dry_run()
    dry_run.step()
    assert counts(dry_run, upper, lower) == [18, 2]


def test_a_hopper_gives_only_its_very_first_item() -> None:
    """The barrel has room for salt alone; the first item is peat, so nothing moves."""
    bench = Bench()
    bench.put("hopper", 0, 0, E, **holding(("peat", 1), ("salt", 1)))
    barrel = bench.put("barrel", 1, 0, **holding(*[("salt", 63)] * 27))
    dry_run = bench.dry_run()
    assert by_tick(dry_run, barrel, 20) == [27 * 63] * 20


def test_a_hopper_takes_the_first_item_that_fits() -> None:
    bench = Bench()
    above = bench.put("barrel", 0, 0, y=65, **holding(("peat", 2), ("salt", 2)))
    reader = bench.put("hopper", 0, 0, **holding(("salt", 22)))
    dry_run = bench.dry_run()
    for _ in range(20):
        dry_run.step()
    assert (count_of(dry_run.contents(above), "peat"), count_of(dry_run.contents(above), "salt")) == (2, 0)
    assert [slot[1] for slot in dry_run.contents(reader) if slot] == [20, 1, 1, 1, 1]


def test_a_signal_stops_a_hopper_and_it_goes_on_when_that_is_gone() -> None:
    bench = Bench()
    bench.put("barrel", 0, 0, y=65, **holding(("salt", 10)))
    hopper = bench.put("hopper", 0, 0)
    lever = bench.put("lever", 1, 0)
    dry_run = bench.dry_run()
    dry_run.step([Lever(lever, True)])
    assert by_tick(dry_run, hopper, 30) == [1] * 30
    assert dry_run.output(hopper) == 15
    dry_run.step([Lever(lever, False)])
    assert by_tick(dry_run, hopper, 10) == [2] * 8 + [3] * 2


def test_a_block_powered_either_way_beside_a_hopper_stops_it() -> None:
    bench = Bench()
    bench.put("barrel", 0, 0, y=65, **holding(("salt", 10)))
    hopper = bench.put("hopper", 0, 0)
    bench.put("solid-block", 1, 0)
    lever = bench.put("lever", 3, 0)
    bench.put("dust", 2, 0)
    dry_run = bench.dry_run()
    dry_run.step([Lever(lever, True)])
    assert by_tick(dry_run, hopper, 20) == [1] * 20


def reading_track(**more: object) -> tuple[Bench, Cell, Cell]:
    """A track over a reader hopper, which a comparator reads."""
    bench = Bench()
    reader = bench.put("hopper", 4, 0, DOWN, y=63, **more)
    bench.track(0, 0, 10)
    comparator = bench.put("comparator", 4, 1, S, y=63)
    bench.arm("Quay", into=(cell(0, 0), Heading.EAST))
    bench.arm("Mill", out=(cell(9, 0), Heading.EAST))
    return bench, reader, comparator


@pytest.mark.parametrize(("count", "reads"), [(22, 2), (21, 1)])
def test_a_reader_of_22_reads_2_with_the_waybill_of_a_passing_cart(count: int, reads: int) -> None:
    """22 → 1, 23 → 2: common practice, no source. The cart is over the reader in ticks 10 to 12."""
    bench, reader, comparator = reading_track(**holding((SALT, count)))
    done = bench.watch([comparator], [(0, Send("Quay", ((("Salt", 1), ("Peat", 2)),)))])
    assert done.probes[comparator] == ((0, 1), *(((13, 2),) if reads == 2 else ()))
    assert [each.carries for each in done.arrivals] == [(("Salt", 0), ("Peat", 2))]
    assert reader.y == 63


def test_only_every_so_many_carts_of_a_close_train_lose_a_waybill() -> None:
    """One item in 8 ticks: the carts come over the reader 5 ticks apart."""
    bench, _, _ = reading_track()
    done = bench.watch([], [(0, Send("Quay", ((("Salt", 1),),) * 4, 1))])
    # They come over it in ticks 10, 15, 20 and 25. It acts in ticks 11 and 21, and rests between.
    left = [each.carries[0][1] for each in done.arrivals]
    assert left == [0, 1, 0, 1]


def test_a_cart_held_over_a_hopper_loses_more_than_one_item() -> None:
    bench = Bench()
    hopper = bench.put("hopper", 4, 0, DOWN, y=63)
    bench.track(0, 0, 4)
    bench.put("booster-rail", 4, 0, E)
    bench.arm("Quay", into=(cell(0, 0), Heading.EAST))
    dry_run = bench.dry_run()
    dry_run.step([Send("Quay", ((("Salt", 5),),))])
    assert by_tick(dry_run, hopper, 30) == [0] * 10 + [1] * 8 + [2] * 8 + [3] * 4


def test_a_comparator_reads_a_container_behind_it_alone() -> None:
    """A full barrel reads 15 whatever powers it, an empty one 0 although it is powered."""
    bench = Bench()
    barrel = bench.put("barrel", 0, 0)
    comparator = bench.put("comparator", 1, 0, E)
    lever = bench.put("lever", 0, 0, y=65)
    full = Fill(barrel, tuple([Held("salt", 64)] * 27))
    assert changes(bench, comparator, [on(lever, 0), (20, full)]) == [(0, 0), (22, 15)]


def test_a_comparator_reads_through_one_solid_block_unless_that_has_full_power() -> None:
    bench = Bench()
    bench.put("barrel", 0, 0, **holding(("salt", 64)))
    bench.put("solid-block", 1, 0)
    comparator = bench.put("comparator", 2, 0, E)
    lever = bench.put("lever", 1, 0, y=65)
    assert changes(bench, comparator, [on(lever, 5), off(lever, 30)]) == [(0, 1), (7, 15), (32, 1)]
    weaker = Bench()
    weaker.put("barrel", 0, 0, **holding(("salt", 64)))
    weaker.put("solid-block", 1, 0)
    comparator = weaker.put("comparator", 2, 0, E)
    weaker.line(1, 1, 3, S)
    lever = weaker.put("lever", 1, 4)
    done = weaker.watch([comparator, cell(1, 0)], [on(lever, 5)])
    assert done.probes[comparator] == ((0, 1),)
    assert done.probes[cell(1, 0)] == ((0, 0), (5, 13))


def test_not_through_glass_and_not_through_two_blocks() -> None:
    for parts in (["glass"], ["solid-block", "solid-block"]):
        bench = Bench()
        bench.put("barrel", 0, 0, **holding(("salt", 64)))
        for x, part in enumerate(parts, start=1):
            bench.put(part, x, 0)
        comparator = bench.put("comparator", len(parts) + 1, 0, E)
        assert changes(bench, comparator, []) == [(0, 0)]


def crafters() -> tuple[Bench, Cell, Cell, Cell]:
    """Two crafters that face each other, and a lever at the first."""
    bench = Bench()
    one = bench.put("auto-crafter", 0, 0, E, **holding(("ingot", 1)))
    other = bench.put("auto-crafter", 1, 0, W)
    return bench, one, other, bench.put("lever", 0, -1)


def test_an_ingot_alone_gives_nine_nuggets_four_ticks_after_the_signal_rises() -> None:
    bench, one, other, lever = crafters()
    comparator = bench.put("comparator", 1, 1, S)
    assert changes(bench, comparator, [on(lever, 3)]) == [(0, 0), (9, 9)]
    dry_run = bench.dry_run()
    dry_run.step([Lever(lever, True)])
    assert by_tick(dry_run, other, 4) == [0, 0, 0, 9]
    assert dry_run.contents(other) == (("nugget", 1),) * 9
    assert counts(dry_run, one) == [0]


def test_nine_nuggets_give_the_ingot_back() -> None:
    bench = Bench()
    one = bench.put("auto-crafter", 0, 0, E)
    other = bench.put("auto-crafter", 1, 0, W, **holding(*[("nugget", 1)] * 9))
    lever = bench.put("lever", 1, -1)
    dry_run = bench.dry_run()
    dry_run.step([Lever(lever, True)])
    for _ in range(4):
        dry_run.step()
    assert [slot for slot in dry_run.contents(one) if slot] == [("ingot", 1)]
    assert counts(dry_run, other) == [0]


@pytest.mark.parametrize(
    "holds", [[("ingot", 1), ("ingot", 1)], [("nugget", 1)] * 8, [("ingot", 1), ("salt", 1)]]
)
def test_nothing_else_is_crafted(holds: list[tuple[str, int]]) -> None:
    bench = Bench()
    crafter = bench.put("auto-crafter", 0, 0, E, **holding(*holds))
    bench.put("barrel", 1, 0)
    lever = bench.put("lever", 0, -1)
    dry_run = bench.dry_run()
    dry_run.step([Lever(lever, True)])
    assert by_tick(dry_run, crafter, 10) == [len(holds)] * 10


def test_what_finds_no_room_is_lost() -> None:
    bench = Bench()
    one = bench.put("auto-crafter", 0, 0, E, **holding(("ingot", 2)))
    other = bench.put("hopper", 1, 0, DOWN, **holding(("nugget", 60), *[("nugget", 64)] * 4))
    lever = bench.put("lever", 0, -1)
    dry_run = bench.dry_run()
    dry_run.step([Lever(lever, True)])
    for _ in range(4):
        dry_run.step()
    assert counts(dry_run, one, other) == [1, 320]


def test_only_a_rise_crafts_and_one_at_a_time() -> None:
    bench = Bench()
    crafter = bench.put("auto-crafter", 0, 0, E, **holding(("ingot", 9)))
    lever = bench.put("lever", 0, -1)
    dry_run = bench.dry_run()
    seen = []
    for tick in range(30):
        # On at 0, 2 (while the first craft is pending), 10; held on from there.
        event: list[Event] = [Lever(lever, tick in (0, 2, 3) or tick >= 10)]
        dry_run.step(event)
        seen.append(items_in(dry_run.contents(crafter)))
    assert seen == [9] * 4 + [8] * 10 + [7] * 16


def test_an_item_goes_to_the_emptiest_slot_of_a_crafter() -> None:
    bench = Bench()
    bench.put("hopper", 0, 0, E, **holding(("salt", 4)))
    crafter = bench.put("auto-crafter", 1, 0, E, **holding(*[("salt", 3)] * 8, ("salt", 1)))
    dry_run = bench.dry_run()
    for _ in range(17):
        dry_run.step()
    assert [slot[1] for slot in dry_run.contents(crafter) if slot] == [4, *[3] * 8]


def test_two_hoppers_at_a_container_with_one_item_are_unsure() -> None:
    """The first in the file gets it; in the other order the other would."""
    bench = Bench()
    barrel = bench.put("barrel", 0, 0, y=65, **holding(("salt", 1)))
    one = bench.put("hopper", 0, 0, DOWN)
    giver = bench.put("hopper", 1, 0, W, y=65, **holding(("peat", 1)))
    dry_run = bench.dry_run()
    dry_run.step()
    assert [slot[0] for slot in dry_run.contents(one) if slot] == ["salt"]
    assert [slot[0] for slot in dry_run.contents(barrel) if slot] == ["peat"]
    # The salt leaves the first slot before the peat comes; else the peat goes to the second.
    assert dry_run.unsure == [Unsure(0, (one, giver))]


def test_what_is_filled_anew_in_the_same_tick_leaves_no_doubt() -> None:
    """The end of the tick counts. Else the order of the two would decide which slot the peat lies in."""
    bench = Bench()
    barrel = bench.put("barrel", 0, 0, y=65, **holding(("salt", 1)))
    bench.put("hopper", 0, 0, DOWN)
    bench.put("hopper", 1, 0, W, y=65, **holding(("peat", 1)))
    dry_run = bench.dry_run()
    dry_run.step([Fill(barrel, ())])
    assert not dry_run.unsure


def test_hoppers_at_containers_of_their_own_are_not_unsure() -> None:
    bench = Bench()
    for x in (0, 5):
        bench.put("barrel", x, 0, y=65, **holding(("salt", 9)))
        bench.put("hopper", x, 0, E)
        bench.put("barrel", x + 1, 0)
    dry_run = bench.dry_run()
    for _ in range(60):
        dry_run.step()
    assert not dry_run.unsure


def test_a_storage_cart_has_27_slots() -> None:
    bench, _, _ = reading_track()
    dry_run = bench.dry_run()
    dry_run.step([Send("Quay", ((("Salt", 27 * 64),),))])
    assert dry_run.carts[0].carries == (("Salt", 27 * 64),)


def test_a_comparator_subtracts_from_a_reading() -> None:
    """A reader of 22 reads 1; less a signal of 1 at the side that is 0, and with one more waybill 1."""
    bench = Bench()
    reader = bench.put("hopper", 0, 0, **holding((SALT, 22)))
    comparator = bench.put("comparator", 1, 0, E, mode=Mode.SUBTRACT)
    bench.line(1, 1, 15, S)
    lever = bench.put("lever", 1, 16)
    more = Fill(reader, (Held(SALT, 23),))
    assert changes(bench, comparator, [on(lever, 4), (20, more)]) == [(0, 1), (6, 0), (22, 1)]
    assert bench.pieces[reader].part is Part.HOPPER


def test_crafts_that_are_due_at_once_all_take_before_any_gives() -> None:
    """Two crafters face each other, an ingot in each: one after the other, the second would find nuggets."""
    bench = Bench()
    one = bench.put("auto-crafter", 0, 0, E, **holding(("ingot", 1)))
    other = bench.put("auto-crafter", 1, 0, W, **holding(("ingot", 1)))
    levers = [bench.put("lever", 0, -1), bench.put("lever", 1, -1)]
    dry_run = bench.dry_run()
    dry_run.step([Lever(lever, True) for lever in levers])
    for _ in range(4):
        dry_run.step()
    assert dry_run.contents(one) == dry_run.contents(other) == (("nugget", 1),) * 9


def test_two_crafters_that_give_into_one_container_are_unsure() -> None:
    """Nuggets and an ingot: which come first decides the slots."""
    bench = Bench()
    one = bench.put("auto-crafter", 0, 0, E, **holding(("ingot", 1)))
    barrel = bench.put("barrel", 1, 0)
    other = bench.put("auto-crafter", 2, 0, W, **holding(*[("nugget", 1)] * 9))
    levers = [bench.put("lever", 0, -1), bench.put("lever", 2, -1)]
    dry_run = bench.dry_run()
    dry_run.step([Lever(lever, True) for lever in levers])
    for _ in range(4):
        dry_run.step()
    assert dry_run.contents(barrel)[:3] == (("nugget", 9), ("ingot", 1), None)
    assert dry_run.unsure == [Unsure(4, (one, other))]


def test_a_hopper_acts_before_a_craft_and_takes_from_a_crafter_too() -> None:
    """It takes an ingot in tick 0, rests, and takes the next in tick 8, in which the craft is due."""
    bench = Bench()
    crafter = bench.put("auto-crafter", 0, 0, E, y=65, **holding(("ingot", 1)))
    hopper = bench.put("hopper", 0, 0, DOWN)
    target = bench.put("barrel", 1, 0, y=65)
    # On a block of its own: one on the crafter would power that, and so stop the hopper.
    lever = bench.put("lever", 0, -1, W, y=65)
    dry_run = bench.dry_run()
    for tick in range(9):
        dry_run.step([Fill(crafter, (Held("ingot", 1),)), Lever(lever, True)] if tick == 4 else [])
    assert counts(dry_run, crafter, hopper, target) == [0, 2, 0]
    assert dry_run.unsure == [Unsure(8, (crafter, hopper))]


def test_a_hopper_that_would_find_something_after_a_craft_is_unsure() -> None:
    """It has its turn before the craft gives, finds the barrel empty, and takes a nugget a tick later."""
    bench = Bench()
    crafter = bench.put("auto-crafter", 0, 0, E, y=65, **holding(("ingot", 1)))
    barrel = bench.put("barrel", 1, 0, y=65)
    hopper = bench.put("hopper", 1, 0, DOWN)
    lever = bench.put("lever", 0, -1, W, y=65)
    dry_run = bench.dry_run()
    for _ in range(10):
        dry_run.step()
    dry_run.step([Lever(lever, True)])
    assert by_tick(dry_run, barrel, 5) == [0, 0, 0, 9, 8]
    assert dry_run.unsure == [Unsure(14, (crafter, hopper))]


def test_a_hopper_gives_to_no_cart() -> None:
    bench = Bench()
    hopper = bench.put("hopper", 0, 1, N, **holding(("salt", 3)))
    bench.put("booster-rail", 0, 0, E)
    bench.arm("Quay", into=(cell(0, 0), Heading.EAST))
    dry_run = bench.dry_run()
    dry_run.step([Send("Quay")])
    assert by_tick(dry_run, hopper, 20) == [3] * 20
    assert dry_run.carts[0].held
