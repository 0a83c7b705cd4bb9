"""The plain dry run against cases worked out by hand from the text of the rules.

Rules: common practice of the trade, no source. The values expected were worked out from the text alone, as
the comments say; none was taken from a run.
"""

from __future__ import annotations

from tests.oracle.carts import ArmSpec
from tests.oracle.dry_run import DryRun
from tests.oracle.dry_run_pieces import Piece
from tests.oracle.shapes import Place

FIRST_FACING = {"torch": "up", "lever": "up", "button": "up", "hopper": "down"}


def piece(text: str, **more) -> Piece:
    """A piece from "part x y z" or "part x y z facing"."""
    part, x, y, z, *facing = text.split()
    at = (int(x), int(y), int(z))
    return Piece(part, at, facing[0] if facing else FIRST_FACING.get(part, "north"), **more)


def on_blocks(*texts: str | Piece) -> list[Piece]:
    """The pieces at level 64 with a solid block under each, unless something is given there."""
    pieces = [text if isinstance(text, Piece) else piece(text) for text in texts]
    filled = {one.at for one in pieces}
    under = {(x, 63, z) for x, y, z in filled if y == 64} - filled
    return [Piece("solid-block", at, "north") for at in sorted(under)] + pieces


def watched(run: DryRun, at: Place, ticks: int, events: dict[int, list[dict]] | None = None) -> list[tuple]:
    """(tick, strength) at tick 0 and at each change."""
    seen: list[tuple[int, int]] = []
    for tick in range(ticks):
        run.step((events or {}).get(tick, []))
        strength = run.probe(at)
        if not seen or seen[-1][1] != strength:
            seen.append((tick, strength))
    return seen


def lever(at: Place, on: bool = True) -> list[dict]:
    return [{"do": "lever", "at": list(at), "on": on}]


def test_dust_loses_one_a_cell() -> None:
    """A lever beside the first dust gives 15; the n-th further has 15 - n; the 16th dust has none."""
    line = [f"dust {x} 64 0" for x in range(1, 18)]
    run = DryRun(on_blocks("lever 0 64 0", *line))
    run.step(lever((0, 64, 0)))
    assert [run.probe((x, 64, 0)) for x in range(1, 18)] == [*range(15, 0, -1), 0, 0]
    assert run.probe((0, 63, 0)) == 15  # the lever's own block
    assert run.probe((3, 63, 0)) == 13  # weak power of the dust that lies on it


def test_weak_power_goes_to_parts_but_not_to_dust() -> None:
    """The line of dust ends in a block (2): a torch on its far side goes out, dust on it stays at 0."""
    pieces = on_blocks(
        "lever 0 64 0", "dust 1 64 0", "solid-block 2 64 0", "torch 3 64 0 east", "dust 2 64 1", "lamp 2 65 0"
    )
    run = DryRun(pieces)
    assert watched(run, (3, 64, 0), 6, {1: lever((0, 64, 0))}) == [(0, 15), (3, 0)]
    assert run.probe((2, 64, 0)) == 15
    assert run.probe((2, 64, 1)) == 0
    assert run.probe((2, 65, 0)) == 15  # a powered block beside a lamp


def test_strong_power_goes_to_dust() -> None:
    """A repeater facing a block powers it strongly: dust beside the block has 15."""
    pieces = on_blocks("lever 0 64 0", "repeater 1 64 0 east", "solid-block 2 64 0", "dust 2 64 1")
    assert watched(DryRun(pieces), (2, 64, 1), 6, {1: lever((0, 64, 0))}) == [(0, 0), (3, 15)]


def test_dust_lying_straight_does_not_point_sideways() -> None:
    """Dust from the lever in the west runs on to the east, not to the lamp in the south."""
    pieces = on_blocks("lever 0 64 0", "dust 1 64 0", "lamp 2 64 0", "lamp 1 64 1")
    run = DryRun(pieces)
    run.step(lever((0, 64, 0)))
    assert run.probe((2, 64, 0)) == 15
    assert run.probe((1, 64, 1)) == 0


def test_lone_dust_points_to_all_sides() -> None:
    """With no link it points to all four sides; the lever that powers it hangs under a block two up."""
    pieces = on_blocks("dust 0 64 0", "lamp 0 64 1", "lamp 1 64 0", "solid-block 0 66 0", "lever 0 65 0 down")
    run = DryRun(pieces)
    run.step(lever((0, 65, 0)))
    assert [run.probe(at) for at in ((0, 64, 0), (0, 64, 1), (1, 64, 0))] == [15, 15, 15]


def test_dust_climbs_a_step_unless_a_block_is_above_it() -> None:
    """Dust 1 sees dust one up at 2; with a block over dust 1 it does not."""
    pieces = on_blocks("lever 0 64 0", "dust 1 64 0", "solid-block 2 64 0", "dust 2 65 0")
    run = DryRun(pieces)
    run.step(lever((0, 64, 0)))
    assert run.probe((2, 65, 0)) == 14
    run = DryRun([*pieces, piece("solid-block 1 65 0")])
    run.step(lever((0, 64, 0)))
    assert run.probe((2, 65, 0)) == 0


def test_dust_on_glass_takes_from_below_and_gives_nothing_down() -> None:
    up = on_blocks("lever 0 64 0", "dust 1 64 0", "glass 2 64 0", "dust 2 65 0")
    run = DryRun(up)
    run.step(lever((0, 64, 0)))
    assert run.probe((2, 65, 0)) == 14
    down = on_blocks("dust 1 64 0", "glass 2 64 0", "dust 2 65 0", "solid-block 3 64 0", "lever 3 65 0")
    run = DryRun(down)
    run.step(lever((3, 65, 0)))
    assert run.probe((2, 65, 0)) == 15
    assert run.probe((1, 64, 0)) == 0


def test_a_lever_shows_in_dust_at_once_and_behind_a_torch_after_two() -> None:
    pieces = on_blocks("lever 0 64 0", "dust 1 64 0", "solid-block 2 64 0", "torch 3 64 0 east")
    run = DryRun(pieces)
    assert watched(run, (1, 64, 0), 8, {3: lever((0, 64, 0))}) == [(0, 0), (3, 15)]
    run = DryRun(pieces)
    assert watched(run, (3, 64, 0), 8, {3: lever((0, 64, 0))}) == [(0, 15), (5, 0)]


def test_a_short_pulse_comes_out_as_long_as_the_delay() -> None:
    """On at 1, off at 2, delay 6: out on at 7, and then off 6 later."""
    pieces = on_blocks("lever 0 64 0", piece("repeater 1 64 0 east", delay=6))
    events = {1: lever((0, 64, 0)), 2: lever((0, 64, 0), False)}
    assert watched(DryRun(pieces), (1, 64, 0), 20, events) == [(0, 0), (7, 15), (13, 0)]


def test_a_short_gap_is_swallowed() -> None:
    """On from 0; off at 20, on at 22: due at 24, when the input of the end of 23 is on."""
    pieces = on_blocks("lever 0 64 0", piece("repeater 1 64 0 east", delay=4))
    events = {0: lever((0, 64, 0)), 20: lever((0, 64, 0), False), 22: lever((0, 64, 0))}
    assert watched(DryRun(pieces), (1, 64, 0), 40, events) == [(0, 0), (4, 15)]


def test_a_locked_repeater_drops_its_change_and_looks_again() -> None:
    """Locked from 3 on (the other repeater comes on); its own change from 2 was due at 8. Freed at 22: on
    at 28.
    """
    pieces = on_blocks(
        "lever 0 64 0",
        piece("repeater 1 64 0 east", delay=6),
        "repeater 1 64 1 north",
        "lever 1 64 2",
    )
    events = {
        1: lever((1, 64, 2)),
        2: lever((0, 64, 0)),
        20: lever((1, 64, 2), False),
    }
    assert watched(DryRun(pieces), (1, 64, 0), 40, events) == [(0, 0), (28, 15)]


def test_a_lock_that_comes_on_in_the_tick_of_the_change_is_unsure() -> None:
    """Both levers at 1, both delays 2: due together at 3. File order decides which is first."""
    lock = ["repeater 1 64 1 north", "lever 1 64 2"]
    held = ["lever 0 64 0", "repeater 1 64 0 east"]
    events = {1: lever((0, 64, 0)) + lever((1, 64, 2))}
    run = DryRun(on_blocks(*held, *lock))
    assert watched(run, (1, 64, 0), 9, events) == [(0, 0), (3, 15)]
    assert run.unsure == [(3, (1, 64, 0), (1, 64, 1))]
    run = DryRun(on_blocks(*lock, *held))
    assert watched(run, (1, 64, 0), 9, events) == [(0, 0)]
    assert run.unsure == [(3, (1, 64, 1), (1, 64, 0))]


def test_comparator_in_both_modes() -> None:
    """Back: dust of strength 14; side: dust of 15. Compare: 0, the side is greater; subtract 14 - 15: 0."""
    for mode, side_on, expected in (
        ("compare", True, 0),
        ("subtract", True, 0),
        ("compare", False, 14),
        ("subtract", False, 14),
    ):
        pieces = on_blocks(
            "lever 0 64 0",
            "dust 1 64 0",
            "dust 2 64 0",
            piece("comparator 3 64 0 east", mode=mode),
            "dust 3 64 1",
            "lever 3 64 2",
        )
        run = DryRun(pieces)
        events = {0: lever((0, 64, 0)) + lever((3, 64, 2), side_on)}
        assert watched(run, (3, 64, 0), 6, events)[-1][1] == expected


def test_comparator_reads_containers() -> None:
    """22 waybills in a hopper read 1, 23 read 2 (floor(1 + 14 n / 320)); empty 0; through a block as well."""
    for count, expected in ((0, 0), (22, 1), (23, 2)):
        holds = (("waybill:Salt", count),) if count else ()
        direct = on_blocks(piece("hopper 0 64 0", holds=holds), "comparator 1 64 0 east")
        assert watched(DryRun(direct), (1, 64, 0), 4)[-1] == (0, expected)
        through = on_blocks(
            piece("hopper 0 64 0", holds=holds), "solid-block 1 64 0", "comparator 2 64 0 east"
        )
        assert watched(DryRun(through), (2, 64, 0), 4)[-1] == (0, expected)


def test_a_reading_takes_the_place_of_power_below_15() -> None:
    """The block between has 14 from dust, then 15: with 14 the empty barrel reads 0, with 15 the power
    counts.
    """
    between = ["solid-block 1 64 0", "comparator 2 64 0 east", "barrel 0 64 0"]
    weaker = on_blocks(*between, "dust 1 64 1", "dust 1 64 2", "lever 1 64 3")
    assert watched(DryRun(weaker), (2, 64, 0), 6, {0: lever((1, 64, 3))}) == [(0, 0)]
    full = on_blocks(*between, "dust 1 64 1", "lever 1 64 2")
    assert watched(DryRun(full), (2, 64, 0), 6, {0: lever((1, 64, 2))}) == [(0, 0), (2, 15)]


def test_a_button_pressed_again_counts_from_then() -> None:
    pieces = on_blocks("button 0 64 0", piece("button 2 64 0", wooden=True))
    press = [{"do": "button", "at": [0, 64, 0]}, {"do": "button", "at": [2, 64, 0]}]
    run = DryRun(pieces)
    assert watched(run, (0, 64, 0), 60, {1: press, 11: press}) == [(0, 0), (1, 15), (31, 0)]
    assert watched(DryRun(pieces), (2, 64, 0), 60, {1: press}) == [(0, 0), (1, 15), (31, 0)]


def test_a_torch_burns_out() -> None:
    """The torch (1,64,0) hangs on the block (0,64,0), on which dust lies; the block (1,65,0) over the torch
    is strongly powered while it is lit, gives 15 to the dust beside it, and that powers the torch's own
    block weakly.

    The torch changes 2, 4, ... 18 ticks after the start; the ninth change (18) is within 60 of the first
    (2): out until 178. Then its block has no power and it lights. Off at 180, and so on; the ninth change
    from 178 on is at 194: out until 354. The start ends after 200 ticks, so tick 0 is 201 ticks after it
    and 354 is tick 153.
    """
    pieces = [
        piece(text)
        for text in ("solid-block 0 64 0", "torch 1 64 0 east", "solid-block 1 65 0", "dust 0 65 0")
    ]
    run = DryRun(pieces)
    assert watched(run, (1, 64, 0), 158) == [(0, 0), (153, 15), (155, 0), (157, 15)]


def test_the_start_settles() -> None:
    """A torch on a powered block is out before tick 0: block powered by a torch below it."""
    run = DryRun([piece(text) for text in ("torch 0 64 0", "solid-block 0 65 0", "torch 0 66 0")])
    assert watched(run, (0, 66, 0), 3) == [(0, 0)]


def straight(part: str = "rail", length: int = 5, **others: str) -> list[Piece]:
    """Rails from (0, 64, 0) to the east, some of another part."""
    rails = [f"{others.get(f'x{x}', part)} {x} 64 0 east" for x in range(length)]
    return on_blocks(*rails)


ENDS_OF_LINE = [
    ArmSpec("Quay", ((0, 64, 0), "east"), ((0, 64, 0), "west")),
    ArmSpec("Mill", ((4, 64, 0), "west"), ((4, 64, 0), "east")),
]


def send(arm: str = "Quay", **more) -> list[dict]:
    return [{"do": "send", "arm": arm, **more}]


def test_a_train_runs_at_its_times() -> None:
    """Cart k comes into its n-th further cell at 10 + ceil(2.5 (n + 2k)) with gap 1; it leaves the fifth
    cell as n = 5.

    k = 0: ceil(12.5) = 13; k = 1: ceil(17.5) = 18; k = 2: ceil(22.5) = 23.
    """
    run = DryRun(straight(), ENDS_OF_LINE)
    watched(run, (0, 64, 0), 40, {10: send(carts=3, waybills={"Salt": 2})})
    assert [found[:3] for found in run.state.arrivals] == [(1, 23, "Mill"), (2, 28, "Mill"), (3, 33, "Mill")]
    assert run.state.arrivals[0][3] == {"Salt": 2}
    assert not run.all_lost()


def test_a_detector_rail_looks_every_20_ticks() -> None:
    """The cart comes into cell 2 at ceil(5) = 5: on at 5, a look at 25 finds none."""
    run = DryRun(straight(x2="detector-rail"), ENDS_OF_LINE)
    assert watched(run, (2, 64, 0), 40, {0: send()}) == [(0, 0), (5, 15), (25, 0)]


def test_a_cart_stops_in_front_of_a_block_and_keeps_the_detector_on() -> None:
    """Cell 4 is a detector before a block at 5: in at 10, would leave at 13: stopped; the looks find it."""
    pieces = [*straight(x4="detector-rail"), piece("solid-block 5 64 0")]
    run = DryRun(pieces, ENDS_OF_LINE)
    assert watched(run, (4, 64, 0), 80, {0: send()}) == [(0, 0), (10, 15)]
    assert run.all_lost() == [(1, (4, 64, 0), "stopped")]


def test_a_stopped_cart_that_is_hit_is_listed_once() -> None:
    """As before; the second cart comes into cell 4 at 25 + 10: both go off, the first without a second entry.

    The rail looks at 30, finds the first cart, and looks again at 50.
    """
    pieces = [*straight(x4="detector-rail"), piece("solid-block 5 64 0")]
    run = DryRun(pieces, ENDS_OF_LINE)
    assert watched(run, (4, 64, 0), 80, {0: send(), 25: send()}) == [(0, 0), (10, 15), (50, 0)]
    assert run.all_lost() == [(1, (4, 64, 0), "stopped"), (2, (4, 64, 0), "collision")]


def test_nine_changes_in_sixty_ticks_burn_a_torch_out() -> None:
    """A lever on the torch's block goes on and off every 7 ticks from 0; the torch changes at 2, 9, ... 58,
    which is the ninth and 56 after the first: out until 218. The block has had no power since 63: it lights
    at 218.

    With a pause of 8 the ninth is at 66, 64 after the first: the torch goes on as before. The tenth, at 74,
    is 64 after the second.
    """
    pieces = [*on_blocks("torch 1 64 0 east", "lever 0 65 0"), piece("solid-block 0 64 0")]
    quick = {7 * n: lever((0, 65, 0), n % 2 == 0) for n in range(10)}
    changes = [(0, 15), *((2 + 7 * n, 15 * (n % 2)) for n in range(9)), (218, 15)]
    assert watched(DryRun(pieces), (1, 64, 0), 240, quick) == changes
    slow = {8 * n: lever((0, 65, 0), n % 2 == 0) for n in range(10)}
    changes = [(0, 15), *((2 + 8 * n, 15 * (n % 2)) for n in range(10))]
    assert watched(DryRun(pieces), (1, 64, 0), 240, slow) == changes


def test_two_carts_in_one_cell_collide() -> None:
    """From both ends at once: at 5 both come into cell 2."""
    run = DryRun(straight(), ENDS_OF_LINE)
    watched(run, (0, 64, 0), 8, {0: send() + send("Mill")})
    assert run.all_lost() == [(1, (2, 64, 0), "collision"), (2, (2, 64, 0), "collision")]
    assert run.state.arrivals == []


def test_a_booster_without_a_signal_holds() -> None:
    """Booster in cell 2: in at 5, due to leave at 8, held; the lever's signal at 20: cells at 23, 25 and
    out at 28.
    """
    pieces = [*straight(x2="booster-rail"), *on_blocks("lever 2 64 1")]
    run = DryRun(pieces, ENDS_OF_LINE)
    watched(run, (2, 64, 0), 40, {0: send(), 20: lever((2, 64, 1))})
    assert [found[:3] for found in run.state.arrivals] == [(1, 28, "Mill")]
    held = DryRun(pieces, ENDS_OF_LINE)
    watched(held, (2, 64, 0), 40, {0: send()})
    assert held.all_lost() == [(1, (2, 64, 0), "running")]


def test_a_booster_passes_its_signal_to_eight_more() -> None:
    rails = [f"booster-rail {x} 64 0 east" for x in range(12)]
    run = DryRun(on_blocks(*rails, "lever 0 64 1"))
    run.step(lever((0, 64, 1)))
    assert [run.probe((x, 64, 0)) for x in range(12)] == [15] * 9 + [0] * 3


def test_a_switch_is_thrown_by_a_lever() -> None:
    """Open to north, south, east: at rest south-east, powered north-east."""
    rails = on_blocks("rail 0 64 -1", "rail 0 64 1", "rail 1 64 0 east", "rail 0 64 0", "lever -1 64 0")
    run = DryRun(rails)
    run.step()
    assert run.state.track.shape[0, 64, 0] == "south-east"
    run.step(lever((-1, 64, 0)))
    assert run.state.track.shape[0, 64, 0] == "north-east"
    run.step(lever((-1, 64, 0), False))
    assert run.state.track.shape[0, 64, 0] == "south-east"


def test_a_detector_arm_throws_the_switch_beside_it() -> None:
    """The east arm is a detector: a cart from it throws the switch (to north-east) before it gets there.

    In at 0 on the detector: on, the switch is powered in the same tick; the cart comes into it at 3 heading
    west, leaves it by north at 5 and arrives in the north at 8. With a plain arm it goes south.
    """
    arms = [
        ArmSpec("East", ((1, 64, 0), "west"), None),
        ArmSpec("North", None, ((0, 64, -1), "north")),
        ArmSpec("South", None, ((0, 64, 1), "south")),
    ]
    for part, arm in (("detector-rail", "North"), ("rail", "South")):
        run = DryRun(on_blocks("rail 0 64 -1", "rail 0 64 1", f"{part} 1 64 0 east", "rail 0 64 0"), arms)
        watched(run, (0, 64, 0), 20, {0: send("East")})
        assert [found[:3] for found in run.state.arrivals] == [(1, 8, arm)]


def test_a_hopper_takes_one_waybill_of_a_passing_cart() -> None:
    """The cart is over the hopper (under cell 2) from 5 to 8: one item, by the hopper's act in tick 6."""
    pieces = [*straight(), piece("hopper 2 63 0")]
    pieces = [one for one in pieces if one != piece("solid-block 2 63 0")]
    run = DryRun(pieces, ENDS_OF_LINE)
    watched(run, (2, 63, 0), 30, {0: send(carts=2, gap=0, waybills={"Salt": 3})})
    # The second comes over it at ceil(7.5) = 8 and leaves at 10; the hopper acts again at 14 at the earliest.
    assert [found[3] for found in run.state.arrivals] == [{"Salt": 2}, {"Salt": 3}]
    assert run.state.slots[2, 63, 0][0] == ("waybill:Salt", 1)


def test_a_chain_of_hoppers() -> None:
    """A over B over a barrel: tick 0: A gives to B, B (later in file order) gives that on, then takes one
    from A.

    So with two items in A: after tick 0 the barrel has one and B one; at 8 B gives its one.
    """
    pieces = [piece("hopper 0 66 0", holds=(("ingot", 2),)), piece("hopper 0 65 0"), piece("barrel 0 64 0")]
    run = DryRun(pieces)
    run.step()
    assert run.state.slots[0, 64, 0][0] == ("ingot", 1)
    assert run.state.slots[0, 65, 0][0] == ("ingot", 1)
    assert run.state.slots[0, 66, 0] == [None] * 5
    # The other way B acts first: it has nothing to give, takes one of A; then A gives it its last: B has two.
    assert run.unsure == [(0, (0, 66, 0), (0, 65, 0))]
    for _ in range(8):
        run.step()
    assert run.state.slots[0, 64, 0][0] == ("ingot", 2)


def test_a_powered_hopper_stops() -> None:
    pieces = [
        piece("hopper 0 65 0", holds=(("ingot", 1),)),
        piece("barrel 0 64 0"),
        piece("solid-block 1 64 0"),
    ]
    run = DryRun([*pieces, piece("lever 1 65 0")])
    run.step(lever((1, 65, 0)))  # the hopper acts before the lever is pulled
    assert run.state.slots[0, 64, 0][0] == ("ingot", 1)
    run = DryRun([*pieces, piece("torch 1 65 0")])
    run.step()
    assert run.state.slots[0, 64, 0][0] is None


def test_two_crafters_keep_one_of_two_states() -> None:
    """An ingot in the left one; a lever at 1 gives nine nuggets to the right at 5, a second rise one ingot
    back.
    """
    pieces = [
        piece("auto-crafter 0 64 0 east", holds=(("ingot", 1),)),
        piece("auto-crafter 1 64 0 west"),
        *on_blocks("lever 0 64 1", "lever 1 64 1"),
        piece("solid-block 2 63 0"),
        piece("comparator 2 64 0 east"),
    ]
    events = {
        1: lever((0, 64, 1)),
        20: lever((1, 64, 1)),
    }
    # The comparator behind the right one reads 9 slots in use from 5 on: out at 7; at 24 none: out at 26.
    assert watched(DryRun(pieces), (2, 64, 0), 40, events) == [(0, 0), (7, 9), (26, 0)]


def test_rails_with_notice_in_one_tick_can_be_unsure() -> None:
    """Two three-way rails a and b beside one lever, both with one arm into the rail c, which has room for
    one.

    a (1,64,2) has south, west, and c in the east; b (2,64,1) has north, east, and c in the south; c
    (2,64,2) has a rail in the south that points to it. At rest both want south-east, powered a wants
    south-west, b north-east. Start: a, first in the file, lies south-east and c joins it (south-west); c is
    full, so b lies north-east. On: a goes to south-west, b stays; c keeps its shape with the live link to
    the south alone. Off: a goes back to south-east and fills c; then b finds no room. The other way round b
    goes to south-east, c joins it (north-south), and a finds no room.
    """
    a, b, c = (1, 64, 2), (2, 64, 1), (2, 64, 2)
    texts = ["rail 1 64 2", "rail 2 64 3", "rail 0 64 2 east", "rail 2 64 2", "rail 1 64 3", "rail 2 64 1"]
    texts += ["rail 3 64 1 east", "rail 2 64 0"]
    run = DryRun(on_blocks(*texts, "lever 1 64 1"))
    shapes = []
    for events in ([], lever((1, 64, 1)), lever((1, 64, 1), False)):
        run.step(events)
        shapes.append([run.state.track.shape[at] for at in (a, b, c)])
    at_rest = ["south-east", "north-east", "south-west"]
    assert shapes == [at_rest, ["south-west", "north-east", "south-west"], at_rest]
    assert run.unsure == [(2, a, b)]
