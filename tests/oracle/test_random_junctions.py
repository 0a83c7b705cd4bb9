"""The seeds that are known to give a junction are those that do."""

from __future__ import annotations

from random import Random

import pytest

from tests.oracle.random_junctions import KNOWN_BELOW, KNOWN_SEEDS, random_junction


def known(limit: int) -> None:
    """Each seed below the limit is tried."""
    found = [seed for seed in range(limit) if random_junction(Random(seed)) is not None]
    assert found == [seed for seed in KNOWN_SEEDS if seed < limit]


def test_the_first_seeds_are_known() -> None:
    known(200)


@pytest.mark.slow
def test_all_seeds_are_known() -> None:
    known(KNOWN_BELOW)
