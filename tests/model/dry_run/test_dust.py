"""Dust: how strong it is. Common practice, no source, unless a test names one."""

from __future__ import annotations

from random import Random

import networkx as nx
import pytest

from model.dry_run import DryRun, Lever
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece, new_piece
from model.plan import plan_of
from tests.model.dry_run.building import UP, Bench, E, S, cell

AROUND = ((1, 0), (-1, 0), (0, 1), (0, -1))


def pulled(bench: Bench, lever: Cell) -> DryRun:
    """After a lever was pulled."""
    dry_run = bench.dry_run()
    dry_run.step([Lever(lever, True)])
    return dry_run


def strengths(dry_run: DryRun, cells: list[Cell]) -> list[int]:
    return [dry_run.strength(at) for at in cells]


def test_each_dust_is_one_weaker_until_nothing_is_left() -> None:
    bench = Bench()
    lever = bench.put("lever", 0, 0)
    line = bench.line(1, 0, 18)
    dry_run = pulled(bench, lever)
    assert strengths(dry_run, line) == [*range(15, 0, -1), 0, 0, 0]
    dry_run.step([Lever(lever, False)])
    assert strengths(dry_run, line) == [0] * 18


def test_a_ring_that_nothing_feeds_any_longer_goes_out() -> None:
    bench = Bench()
    lever = bench.put("lever", 0, 0)
    ring = [
        *bench.line(1, 0, 4),
        *bench.line(4, 1, 3, S),
        *bench.line(3, 3, 3, Facing.WEST),
        *bench.line(1, 2, 2, Facing.NORTH),
    ]
    dry_run = pulled(bench, lever)
    assert min(strengths(dry_run, ring)) == 9
    dry_run.step([Lever(lever, False)])
    assert strengths(dry_run, ring) == [0] * 12


@pytest.mark.parametrize("ground", [Part.SOLID_BLOCK, Part.HOPPER, Part.GLASS, Part.SLAB])
def test_a_step_goes_both_ways_but_from_glass_only_up(ground: Part) -> None:
    """A hopper does not count as glass."""
    for source in (0, 3):
        bench = Bench()
        bench.put(ground, 2, 0)
        low, high = bench.put("dust", 1, 0), bench.put("dust", 2, 0, y=65)
        lever = bench.put("lever", source, 0, y=64 if source == 0 else 65)
        dry_run = pulled(bench, lever)
        down = 0 if ground in (Part.GLASS, Part.SLAB) else 14
        assert strengths(dry_run, [low, high]) == ([15, 14] if source == 0 else [down, 15])


@pytest.mark.parametrize(
    ("roof", "passes"),
    [(Part.SOLID_BLOCK, False), (Part.LAMP, False), (Part.GLASS, True), (Part.HOPPER, True)],
)
def test_a_solid_block_above_the_lower_dust_cuts_the_step(roof: Part, passes: bool) -> None:
    bench = Bench()
    lever = bench.put("lever", 0, 0)
    bench.put("dust", 1, 0)
    bench.put(roof, 1, 0, y=65)
    high = bench.put("dust", 2, 0, y=65)
    assert pulled(bench, lever).strength(high) == (14 if passes else 0)


def test_dust_beside_a_strongly_powered_block_is_fed_and_beside_a_weakly_powered_one_is_not() -> None:
    bench = Bench()
    lever = bench.put("lever", 0, 0)
    bench.put("dust", 1, 0)
    block = bench.put("solid-block", 2, 0)
    beyond = bench.put("dust", 3, 0)
    dry_run = pulled(bench, lever)
    assert dry_run.block_power(block) == (15, False)
    assert dry_run.strength(beyond) == 0
    strong = Bench()
    lever = strong.put("lever", 1, 0, y=65)
    cells = [strong.put("dust", 2, 0), strong.put("dust", 1, 1)]
    dry_run = pulled(strong, lever)
    assert dry_run.block_power(cell(1, 0)) == (15, True)
    assert strengths(dry_run, cells) == [15, 15]


@pytest.mark.parametrize("seed", range(12))
def test_flat_wiring_is_15_less_the_distance_that_networkx_finds(seed: int) -> None:
    """networkx: multi_source_dijkstra_path_length. Levers go on one by one and off again in another order."""
    random = Random(seed)
    cells = [cell(x, z) for x in range(14) for z in range(14)]
    random.shuffle(cells)
    dust, levers = cells[:130], cells[130:133]
    pieces = [Piece(Part.SOLID_BLOCK, at.moved(dy=-1)) for at in (*dust, *levers)]
    pieces += [new_piece(Part.DUST, at) for at in dust] + [new_piece(Part.LEVER, at) for at in levers]
    graph = nx.Graph()
    graph.add_nodes_from(dust)
    graph.add_edges_from((at, other) for at in dust for other in at.six_beside() if other in graph)
    dry_run = DryRun(plan_of(pieces))
    lit: set[Cell] = set()
    for lever, on in [(at, True) for at in levers] + [(at, False) for at in random.sample(levers, 3)]:
        (lit.add if on else lit.discard)(lever)
        dry_run.step([Lever(lever, on)])
        fed = {at for source in lit for at in source.six_beside() if at in graph}
        far = nx.multi_source_dijkstra_path_length(graph, fed) if fed else {}
        assert {at: dry_run.strength(at) for at in dust} == {at: max(0, 15 - far.get(at, 15)) for at in dust}


@pytest.mark.parametrize("seed", range(12))
def test_hilly_wiring_is_15_less_the_distance_that_networkx_finds(seed: int) -> None:
    """networkx: multi_source_dijkstra_path_length, over a directed graph, for glass gives nothing down."""
    random = Random(seed)
    ground = {
        Cell(x, 63 + random.choice((0, 0, 1)), z): random.choice(
            (Part.SOLID_BLOCK, Part.SOLID_BLOCK, Part.GLASS)
        )
        for x in range(12)
        for z in range(12)
    }
    dust = [at.moved(dy=1) for at in ground]
    source = random.choice(dust)
    pieces = [Piece(part, at) for at, part in ground.items()] + [Piece(Part.DUST, at) for at in dust]
    block, lever = source.moved(dy=1), source.moved(dy=2)
    pieces += [Piece(Part.SOLID_BLOCK, block), new_piece(Part.LEVER, lever, UP)]
    graph = hilly(dust, {**ground, block: Part.SOLID_BLOCK})
    dry_run = DryRun(plan_of(pieces))
    dry_run.step([Lever(lever, True)])
    far = nx.multi_source_dijkstra_path_length(graph, {at for at in block.six_beside() if at in graph})
    assert {at: dry_run.strength(at) for at in dust} == {at: max(0, 15 - far.get(at, 15)) for at in dust}
    dry_run.step([Lever(lever, False)])
    assert not any(strengths(dry_run, dust))


def hilly(dust: list[Cell], parts: dict[Cell, Part]) -> nx.DiGraph:
    """Which dust gives to which."""
    graph = nx.DiGraph()
    graph.add_nodes_from(dust)
    solid = {at for at, part in parts.items() if part is Part.SOLID_BLOCK}
    for low in dust:
        for dx, dz in AROUND:
            if low.moved(dx, 0, dz) in graph:
                graph.add_edge(low, low.moved(dx, 0, dz))
            high = low.moved(dx, 1, dz)
            if high in graph and low.moved(dy=1) not in solid:
                graph.add_edge(low, high)
                if high.moved(dy=-1) in solid:
                    graph.add_edge(high, low)
    return graph


def test_dust_points_along_its_line_and_not_beside_it() -> None:
    """The lamp at the end of the line is lit, the one beside it is not; a target block bends the line."""
    bench = Bench()
    lever = bench.put("lever", 0, 0)
    bench.line(1, 0, 3)
    end, beside = bench.put("lamp", 4, 0), bench.put("lamp", 2, 1)
    dry_run = pulled(bench, lever)
    assert (dry_run.output(end), dry_run.output(beside)) == (15, 0)
    bent = Bench()
    lever = bent.put("lever", 0, 0)
    bent.line(1, 0, 3)
    target = bent.put("target-block", 2, 1)
    assert pulled(bent, lever).output(target) == 14


def test_dust_powers_the_block_under_it() -> None:
    bench = Bench()
    lever = bench.put("lever", 0, 0)
    bench.line(1, 0, 2, E)
    assert pulled(bench, lever).block_power(cell(2, 0, 63)) == (14, False)
