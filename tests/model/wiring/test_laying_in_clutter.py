"""Lines laid between all kinds of parts that stand about: they couple with none of them."""

from __future__ import annotations

from random import Random

import pytest

from model.grid import Cell, Heading
from model.parts import CARRIERS, RAILS, TRAITS, Part
from model.pieces import new_piece, rests_on
from model.wiring.laying.laid import Line, Routed
from model.wiring.lines.coupling import couplings
from tests.model.wiring.laying_bench import RAIL_LEVEL, Problem, Yard, about, routed, wired

SIZE = 14


def cluttered(seed: int, parts: int) -> Problem:
    """Two lines of one or two targets each, and so many other parts all over."""
    random = Random(seed)
    yard = Yard(SIZE)
    sources, lines, sinks = [], [], []
    for number in range(2):
        source = yard.source(lonely_cell(random, yard), Heading(random.randrange(4)))
        targets: dict[Cell, Cell] = {}
        for _ in range(random.randint(1, 2)):
            target = lonely_cell(random, yard)
            targets[target] = yard.sink(target, random.choice([Part.LAMP, Part.TORCH]))
        sinks.append(tuple(targets.values()))
        sources.append(source)
        lines.append(Line(f"line {number}", source.start, tuple((target,) for target in targets)))
    kept = {cell for source in sources for end in (source.start, source.repeater) for cell in about(end)}
    for _ in range(parts):
        put_somewhere(random, yard, kept)
    return Problem(yard.plan, tuple(lines), tuple(sources), tuple(sinks))


def lonely_cell(random: Random, yard: Yard) -> Cell:
    while True:
        cell = Cell(random.randrange(2, SIZE - 2), random.randint(60, 62), random.randrange(2, SIZE - 2))
        if not any(other in yard.pieces for near in about(cell) for other in about(near)):
            return cell


def put_somewhere(random: Random, yard: Yard, kept: set[Cell]) -> None:
    """Any part anywhere, where there is room for it and something can carry it."""
    part = random.choice(list(Part))
    level = random.choice([RAIL_LEVEL - 1, RAIL_LEVEL]) if part in RAILS else random.randint(59, 63)
    at = Cell(random.randrange(SIZE), level, random.randrange(SIZE))
    facing = random.choice(TRAITS[part].facings)
    holder = rests_on(new_piece(part, at, facing))
    holding = yard.pieces.get(holder) if holder is not None else None
    carried = holding is None or holding.part in CARRIERS
    if carried and at not in yard.pieces and at not in kept and holder not in kept:
        yard.put(part, at, facing)


def foreign_couplings(seed: int, parts: int) -> tuple[int, list[str]]:
    """How many lines could be laid, and what they couple with besides their source and their targets."""
    problem = cluttered(seed, parts)
    result = routed(problem.plan, problem.lines)
    found: list[str] = []
    for laid in result.laid:
        source = problem.sources[problem.lines.index(laid.line)]
        others = Routed(tuple(other for other in result.laid if other is not laid), ())
        found += [
            f"{seed}: {coupling.why}"
            for coupling in couplings(wired(problem.plan, others), laid.pieces)
            if coupling.other != source.repeater and coupling.through not in laid.reached
        ]
    return len(result.laid), found


@pytest.mark.parametrize("parts", [60, 140, 200])
def test_lines_couple_with_nothing_about_them(parts: int) -> None:
    laid = 0
    for seed in range(16):
        count, found = foreign_couplings(seed, parts)
        assert found == []
        laid += count
    assert laid >= 8


@pytest.mark.slow
@pytest.mark.timeout(1200)
@pytest.mark.parametrize("parts", [60, 140, 200])
def test_lines_couple_with_nothing_about_them_many_times(parts: int) -> None:
    for seed in range(100, 300):
        assert foreign_couplings(seed, parts)[1] == []
