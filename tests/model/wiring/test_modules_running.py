"""Each module in the dry run: in all eight orientations, with each value of its parameter, and broken.

How the parts behave is common practice, no source; the table of a latch is named where it is used.
"""

from __future__ import annotations

from collections.abc import Callable
from itertools import product

import pytest

from model.grid import ALL_TURNS, Cell, Turn
from tests.model.wiring.module_bench import CASES, Bench, working_pieces
from tests.model.wiring.module_checks import CHECKS, check_delay

Check = Callable[[Bench], None]
BROKEN = [
    (name, parameters, piece.at)
    for name, parameters in CASES
    for piece in working_pieces(Bench(name, parameters).module)
]
"""Each piece that does more than carry, to be taken out."""


def test_every_module_has_a_check() -> None:
    assert {name for name, _ in CASES} == set(CHECKS)


@pytest.mark.parametrize("turn", ALL_TURNS, ids=lambda turn: str(turn.number))
@pytest.mark.parametrize(("name", "parameters"), CASES)
def test_it_does_what_it_should(name: str, parameters: dict[str, str], turn: Turn) -> None:
    CHECKS[name](Bench(name, parameters, turn))


@pytest.mark.parametrize("turn", ALL_TURNS, ids=lambda turn: str(turn.number))
@pytest.mark.parametrize(("name", "parameters"), CASES)
def test_its_delay_is_what_the_file_says(name: str, parameters: dict[str, str], turn: Turn) -> None:
    check_delay(Bench(name, parameters, turn))


@pytest.mark.parametrize(("name", "parameters", "cell"), BROKEN)
def test_no_piece_is_there_for_nothing(name: str, parameters: dict[str, str], cell: Cell) -> None:
    with pytest.raises(AssertionError):
        CHECKS[name](Bench(name, parameters).without(cell))


@pytest.mark.parametrize(("name", "parameters"), CASES)
def test_it_burns_nothing_out_and_leaves_nothing_unsure(name: str, parameters: dict[str, str]) -> None:
    """Every lever changed once in 32 ticks, all of them in every combination."""
    bench = Bench(name, parameters)
    for states in product((False, True), repeat=len(bench.ins)):
        bench.set(**{port.replace(" ", "_"): on for port, on in zip(bench.ins, states, strict=True)})
        for _ in range(32):
            bench.step()
            assert not any(bench.run.is_burnt_out(piece.at) for piece in bench.module.pieces)
    assert bench.run.unsure == []
