"""The comparator over all inputs: subtraction obeys the laws of monus.

(a ∸ b) + b = max(a, b); a ∸ (a ∸ b) = min(a, b); a ∸ (b + c) = (a ∸ b) ∸ c: textbook, from memory.
"""

from __future__ import annotations

from itertools import product

from model.parts import Mode
from model.signals.comparator import called_for, through_block

STRENGTHS = range(16)


def minus(a: int, b: int) -> int:
    return called_for(Mode.SUBTRACT, a, b)


def test_subtraction_is_monus() -> None:
    for a, b in product(STRENGTHS, repeat=2):
        assert minus(a, b) + b == max(a, b)
        assert minus(a, minus(a, b)) == min(a, b)
        for c in range(16 - b):
            assert minus(a, b + c) == minus(minus(a, b), c)


def test_14_less_15_is_0() -> None:
    """Common practice, no source: the swapped default of a reader."""
    assert minus(14, 15) == 0


def test_comparing_lets_the_back_through_unless_a_side_is_greater() -> None:
    for back, side in product(STRENGTHS, repeat=2):
        assert called_for(Mode.COMPARE, back, side) == (0 if side > back else back)


def test_a_reading_through_a_block_gives_way_to_full_power_only() -> None:
    for power, reading in product(STRENGTHS, repeat=2):
        assert through_block(power, reading) == (15 if power == 15 else reading)
