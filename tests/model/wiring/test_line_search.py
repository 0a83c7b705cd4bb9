"""One line to one target on a flat square with barred cells, held against shortest paths of networkx.

On a square that costs the same everywhere, a wave from the start finds a shortest way to the target if there
is one (Lee 1961, "An algorithm for path connections and its applications", IRE Trans. EC-10).
"""

from __future__ import annotations

from functools import cache
from random import Random

import networkx as nx
import pytest

from model.grid import Cell, Heading
from model.parts import Part
from model.pieces import Piece
from model.wiring.laying.laid import Line, Routed
from model.wiring.laying.tree import DUST_PRICE, REPEATER_PRICE
from tests.model.wiring.laying_bench import Yard, routed

DUST = 63
"""The level on which dust can lie; the one below takes the blocks under it, and no others are allowed."""


class Square:
    """A source at the west side, a target to the east, and glass here and there between them."""

    def __init__(self, seed: int, size: int, share: float) -> None:
        random = Random(seed)
        yard = Yard(size)
        self.source = yard.source(Cell(1, DUST, random.randrange(1, size - 1)), Heading.EAST)
        self.target = yard.put(Part.TARGET_BLOCK, Cell(size - 5, DUST, random.randrange(4, size - 4)))
        kept = {self.source.start, *(self.target.step(heading) for heading in Heading)}
        for x in range(3, size):
            for z in range(size):
                cell = Cell(x, DUST, z)
                if cell not in kept and cell not in yard.pieces and random.random() < share:
                    yard.pieces[cell] = Piece(Part.GLASS, cell)
        self.yard = yard

    def routed(self) -> Routed:
        """What comes of one line; the box leaves no level but the one."""
        return routed(self.yard.plan, [Line("flat", self.source.start, ((self.target,),))], depth=2)

    def free(self) -> nx.Graph:
        """Where dust may lie: no piece there, not beside the lever nor behind the repeater."""
        across = range(-1, self.yard.size + 1)
        rail_blocks = [cell for cell in self.yard.pieces if cell.y == DUST + 1]
        barred = {beside for lever in rail_blocks for beside in lever.six_beside()}
        behind = self.source.repeater.step(Heading.WEST)
        barred.update(behind.step(heading) for heading in Heading)
        cells = {Cell(x, DUST, z) for x in across for z in across} - self.yard.pieces.keys() - barred
        graph = nx.Graph(
            (cell, cell.step(way)) for cell in cells for way in Heading if cell.step(way) in cells
        )
        graph.add_node(self.source.start)
        return graph

    def ends(self) -> list[Cell]:
        """The cells beside the target."""
        return [self.target.step(heading) for heading in Heading]


@pytest.mark.parametrize("seed", range(40))
def test_a_line_as_far_as_dust_reaches_is_a_shortest_path(seed: int) -> None:
    square = short_square(seed)
    lengths = nx.single_source_shortest_path_length(square.free(), square.source.start)
    shortest = min((lengths[end] for end in square.ends() if end in lengths), default=None)
    result = square.routed()
    if shortest is None:
        assert not result.laid
    elif shortest < 15:
        (laid,) = result.laid
        assert (laid.dust, laid.repeaters) == (shortest + 1, 0)


@pytest.mark.parametrize("seed", range(10))
def test_a_longer_line_is_a_cheapest_path_over_cells_and_strengths(seed: int) -> None:
    """Where that path does not come beside itself: there the search must go round, and pays more."""
    best = cheapest(seed)
    result = long_square(seed).routed()
    if best is None:
        assert not result.laid
        return
    price, path = best
    for laid in result.laid:
        assert laid.dust * DUST_PRICE + laid.repeaters * REPEATER_PRICE >= price
    if not comes_beside_itself(path):
        (laid,) = result.laid
        assert laid.dust * DUST_PRICE + laid.repeaters * REPEATER_PRICE == price


def test_the_squares_try_all_cases() -> None:
    """Some have no way, some a way; of the longer ones most have a way that does not come beside itself."""
    short = [bool(short_square(seed).routed().laid) for seed in range(40)]
    assert 5 < sum(short) < 35
    long = [best for seed in range(10) if (best := cheapest(seed)) is not None]
    assert sum(not comes_beside_itself(path) for _, path in long) > 5


def short_square(seed: int) -> Square:
    return Square(seed, 13, 0.25 if seed % 2 else 0.6)


def long_square(seed: int) -> Square:
    return Square(100 + seed, 22, 0.2)


@cache
def cheapest(seed: int) -> tuple[int, list[Cell]] | None:
    """The price of a cheapest path over a long square, with its cells; ``None`` where there is none."""
    square = long_square(seed)
    free = square.free()
    graph = nx.DiGraph()
    for cell in free:
        for way in Heading:
            beside, front = cell.step(way), cell.step(way).step(way)
            for strength in range(1, 16):
                if beside in free and strength > 1:
                    graph.add_edge((cell, strength), (beside, strength - 1), weight=DUST_PRICE)
                if beside in free and front in free:
                    graph.add_edge((cell, strength), (front, 15), weight=DUST_PRICE + REPEATER_PRICE)
    for end in square.ends():
        graph.add_edges_from(((end, strength), "end", {"weight": 0}) for strength in range(1, 16))
    start = (square.source.start, 15)
    if start not in graph or not nx.has_path(graph, start, "end"):
        return None
    price, nodes = nx.single_source_dijkstra(graph, start, "end")
    return price + DUST_PRICE, [cell for cell, _ in nodes[:-1]]


def comes_beside_itself(path: list[Cell]) -> bool:
    """Whether two dusts of a path lie side by side that do not follow one another."""
    return any(
        path[later] in [path[earlier].step(way) for way in Heading]
        for later in range(len(path))
        for earlier in range(later - 1)
    )
