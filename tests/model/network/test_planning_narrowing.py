"""What is settled without a search is so in a best plan: brute force with it settled is as good."""

from __future__ import annotations

import random

import msgspec
import pytest

from model.network.planning_narrowing import narrowed
from model.network.planning_task import Survey
from tests.model.network.test_planning import small_network
from tests.oracle.network_plans import best


@pytest.mark.parametrize("seed", range(25))
def test_what_is_settled_costs_nothing(seed: int) -> None:
    network = small_network(random.Random(seed))
    known = best(network, limit=500)
    if known is None:
        pytest.skip("too much to try")
    survey = Survey(network)
    list(survey.run())
    task = survey.task(())
    found = narrowed(task)
    assert len(found.open_readers) <= task.given.count(None)
    defaults = {
        reader.key: reader.spec.ways[default]
        for reader, default in zip(task.tracks.readers, found.defaults, strict=True)
        if default is not None
    }
    settled = network.replace(
        junctions=tuple(
            msgspec.structs.replace(
                junction,
                readers=tuple(
                    msgspec.structs.replace(spec, default=defaults.get(f"{junction.name}/{spec.start}"))
                    for spec in junction.readers
                ),
            )
            for junction in network.junctions
        )
    )
    assert best(settled, limit=500) == known


def test_two_pinned_to_one_name_leave_the_choice_open() -> None:
    """What is cheapest may not be allowed then."""
    network = small_network(random.Random(3))
    survey = Survey(network)
    list(survey.run())
    free = survey.task(())
    found = narrowed(free)
    ridden = [reader for reader in range(len(free.given)) if found.tally.sure[2 * reader]]
    alike = msgspec.structs.replace(
        free, given=(None,) * len(free.given), names=dict.fromkeys(ridden[:2], 0), words=("Salt",)
    )
    assert alike.alike == frozenset(ridden[:2])
    both_ways = {
        reader
        for reader in range(len(free.given))
        if all(narrowed(alike).tally.taken[2 * reader + way] for way in (0, 1))
    }
    assert both_ways
    assert both_ways == set(narrowed(alike).open_readers)
