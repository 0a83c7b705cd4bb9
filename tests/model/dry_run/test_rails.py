"""Rails and boosters while a plan runs. Common practice, no source."""

from __future__ import annotations

from model.dry_run import Lever, Send, Unsure
from model.grid import Heading
from model.track.layout import Layout
from model.track.rails import pack
from model.track.settling import notice
from model.track.shapes import Shape
from tests.model.dry_run.building import Bench, E, N, S, W, cell

HERE = cell(0, 0)


def junction(bench: Bench) -> None:
    """A rail at HERE with rails to the north, the south and the east, placed last."""
    bench.track(0, -1, 3, N)
    bench.track(0, 1, 3, S)
    bench.track(1, 0, 3, E)
    bench.put("rail", 0, 0, N)


def test_a_lever_turns_a_three_way_rail_by_the_bias_rule() -> None:
    """North, south and east open: south-east at rest, north-east powered."""
    bench = Bench()
    junction(bench)
    lever = bench.put("lever", -1, 0)
    dry_run = bench.dry_run()
    assert dry_run.shape(HERE) is Shape.SOUTH_EAST
    dry_run.step([Lever(lever, True)])
    assert dry_run.shape(HERE) is Shape.NORTH_EAST
    assert dry_run.output(HERE) == 15
    assert HERE in dry_run.changed
    dry_run.step([Lever(lever, False)])
    assert (dry_run.shape(HERE), dry_run.output(HERE)) == (Shape.SOUTH_EAST, 0)


def as_built_otherwise() -> Bench:
    """The rail at HERE is placed first; the last neighbour that comes finds it full, so it lies straight."""
    bench = Bench()
    bench.put("rail", 0, 0, N)
    bench.track(0, -1, 3, N)
    bench.track(0, 1, 3, S)
    bench.track(1, 0, 3, E)
    return bench


def test_at_the_start_a_three_way_rail_beside_wiring_goes_to_its_present_signal() -> None:
    bare = as_built_otherwise().dry_run()
    assert bare.shape(HERE) is Shape.NORTH_SOUTH
    beside, under = as_built_otherwise(), as_built_otherwise()
    beside.put("lever", -1, 0)
    under.put("torch", 0, 0, y=62)
    assert beside.dry_run().shape(HERE) is Shape.SOUTH_EAST
    assert under.dry_run().shape(HERE) is Shape.NORTH_EAST, "the torch powers the block under the rail"


def test_notice_comes_from_what_hangs_on_a_block_that_the_rail_touches() -> None:
    """A torch hangs on the block under the rail: it gives notice, but no signal."""
    bench = as_built_otherwise()
    bench.put("torch", -1, 0, W, y=63)
    dry_run = bench.dry_run()
    assert (dry_run.shape(HERE), dry_run.output(HERE)) == (Shape.SOUTH_EAST, 0)


def test_a_signal_from_afar_gives_notice_too() -> None:
    """No signal part stands beside the rail or on a block that it touches; a repeater powers that block."""
    bench = as_built_otherwise()
    bench.put("repeater", -1, 0, E, y=63)
    lever = bench.put("lever", -2, 0, y=63)
    dry_run = bench.dry_run()
    assert dry_run.shape(HERE) is Shape.NORTH_SOUTH
    dry_run.step([Lever(lever, True)])
    dry_run.step()
    dry_run.step()
    assert (dry_run.shape(HERE), dry_run.output(HERE)) == (Shape.NORTH_EAST, 15)


def test_a_detector_rail_as_an_arm_throws_a_three_way_rail() -> None:
    """It is placed beside it, so the rail settles at the start; a cart on it powers the rail for 20 ticks."""
    bench = Bench()
    bench.put("rail", 0, 0, N)
    bench.track(0, -1, 3, N)
    bench.track(0, 1, 3, S)
    bench.put("detector-rail", 1, 0, E)
    bench.track(2, 0, 8, E)
    bench.arm("Quay", into=(cell(9, 0), Heading.WEST))
    bench.arm("Mill", out=(cell(0, -3), Heading.NORTH))
    dry_run = bench.dry_run()
    assert dry_run.shape(HERE) is Shape.SOUTH_EAST
    # The detector rail is the eighth further cell: the cart comes in after 20 ticks.
    done = bench.watch([HERE, cell(1, 0)], [(0, Send("Quay"))])
    assert done.probes[HERE] == done.probes[cell(1, 0)] == ((0, 0), (20, 15), (40, 0))
    assert [each.arm for each in done.arrivals] == ["Mill"]


def test_a_booster_passes_its_signal_to_8_more_both_ways() -> None:
    bench = Bench()
    track = bench.track(-12, 0, 25, E, "booster-rail")
    lever = bench.put("lever", 0, 1)
    dry_run = bench.dry_run()
    dry_run.step([Lever(lever, True)])
    assert [at.x for at in track if dry_run.output(at)] == list(range(-8, 9))
    dry_run.step([Lever(lever, False)])
    assert not any(dry_run.output(at) for at in track)


def test_the_run_of_a_booster_ends_at_another_rail() -> None:
    bench = Bench()
    bench.track(0, 0, 3, E, "booster-rail")
    bench.put("rail", 3, 0, E)
    beyond = bench.put("booster-rail", 4, 0, E)
    lever = bench.put("lever", 0, 1)
    dry_run = bench.dry_run()
    dry_run.step([Lever(lever, True)])
    assert (dry_run.output(cell(2, 0)), dry_run.output(beyond)) == (15, 0)


def test_two_levers_each_drive_their_own_part_of_a_run() -> None:
    bench = Bench()
    track = bench.track(0, 0, 30, E, "booster-rail")
    one, other = bench.put("lever", 0, 1), bench.put("lever", 12, 1)
    dry_run = bench.dry_run()
    dry_run.step([Lever(one, True), Lever(other, True)])
    assert [at.x for at in track if dry_run.output(at)] == list(range(21))
    dry_run.step([Lever(one, False)])
    assert [at.x for at in track if dry_run.output(at)] == list(range(4, 21))


def test_a_rail_gets_a_signal_from_a_block_that_it_touches_however_powered() -> None:
    """A dust on a block powers it weakly; the booster on the block beside it does not touch that block."""
    bench = Bench()
    on_weak = bench.put("booster-rail", 2, 0, N)
    lever = bench.put("lever", 0, 1, y=63)
    bench.put("dust", 1, 1, y=63)
    target = bench.put("solid-block", 2, 1, y=63)
    dry_run = bench.dry_run()
    dry_run.step([Lever(lever, True)])
    assert dry_run.block_power(target) == (15, False)
    assert dry_run.output(on_weak) == 0
    above = Bench()
    rail = above.put("booster-rail", 2, 1, N)
    lever = above.put("lever", 0, 1, y=63)
    above.put("dust", 1, 1, y=63)
    dry_run = above.dry_run()
    dry_run.step([Lever(lever, True)])
    assert dry_run.output(rail) == 15


def test_two_rails_whose_order_of_notice_matters_are_unsure() -> None:
    """1 2 and 2 1 are beside the lever, and both could have the rail at 1 1: the first gets it."""
    rails = [
        (2, 0, N),
        (0, 2, E),
        (3, 1, N),
        (1, 3, E),
        (1, 2, E),
        (1, 1, E),
        (0, 1, N),
        (2, 1, E),
        (2, 3, E),
    ]
    bench = Bench()
    for x, z, facing in rails:
        bench.put("rail", x, z, facing)
    lever = bench.put("lever", 2, 2)
    dry_run = bench.dry_run()
    assert not dry_run.unsure
    dry_run.step()
    dry_run.step([Lever(lever, True)])
    assert dry_run.unsure == [Unsure(1, (cell(1, 2), cell(2, 1)))]
    first = {at: dry_run.shape(at) for at in (cell(1, 2), cell(1, 1), cell(2, 1))}
    other = Bench()
    for x, z, facing in rails:
        other.put("rail", x, z, facing)
    # As the track with the two the other way round in the file would come out, from the same shapes.
    layout = Layout(other.plan())
    for at in (cell(2, 1), cell(1, 2)):
        notice(layout.rails, layout.straight_only, pack(at), powered=True)
    assert first != {at: layout.shape(at) for at in first}


def test_rails_that_do_not_bear_on_each_other_are_not_unsure() -> None:
    bench = Bench()
    for z in (0, 20):
        bench.track(0, z - 1, 3, N)
        bench.track(0, z + 1, 3, S)
        bench.track(1, z, 3, E)
        bench.put("rail", 0, z, N)
    levers = [bench.put("lever", -1, 0), bench.put("lever", -1, 20)]
    dry_run = bench.dry_run()
    dry_run.step([Lever(lever, True) for lever in levers])
    assert (dry_run.shape(cell(0, 0)), dry_run.shape(cell(0, 20))) == (Shape.NORTH_EAST, Shape.NORTH_EAST)
    assert not dry_run.unsure


def test_a_signal_passes_along_the_links_of_the_booster_that_has_it() -> None:
    """The rising booster finds the upper one; that finds the plain rail above first, not the lower one."""
    bench = Bench()
    lower = bench.put("booster-rail", 0, 0, E)
    bench.put("solid-block", 1, 0)
    upper = bench.put("booster-rail", 1, 0, E, y=65)
    bench.put("solid-block", 0, 0, y=65)
    bench.put("rail", 0, 0, E, y=66)
    one, other = bench.put("lever", 0, 1), bench.put("lever", 1, 1, y=65)
    dry_run = bench.dry_run()
    assert dry_run.shape(lower) is Shape.RISING_EAST
    dry_run.step([Lever(one, True)])
    assert (dry_run.output(lower), dry_run.output(upper)) == (15, 15)
    dry_run.step([Lever(one, False), Lever(other, True)])
    assert (dry_run.output(lower), dry_run.output(upper)) == (0, 15)
