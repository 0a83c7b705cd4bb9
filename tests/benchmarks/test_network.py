"""Planning a large network: the time a trip, the whole, and the memory it takes."""

from __future__ import annotations

import random
import subprocess
import sys
import time

import pytest

from model.network.planning import planned
from tests.oracle.random_networks import large_network

pytestmark = pytest.mark.slow

MINUTE = 60
GIGABYTE = 10**9
MEMORY = """
import random, resource
from model.network.planning import planned
from tests.oracle.random_networks import large_network
planned(large_network(random.Random(1), junctions=1000, trips=20_000))
print(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * 1024)
"""


@pytest.mark.timeout(600)
def test_ten_times_the_trips_take_at_most_twice_the_time_a_trip() -> None:
    """2,000 stations, 1,000 junctions, 6,000 readers. A ratio; measured: 0.3 to 0.5.

    Seconds are those of the processor, so that a busy machine does not decide; all of it runs on one core.
    """
    few, many = _seconds(2_000), _seconds(20_000)
    assert many / 20_000 <= 2 * few / 2_000
    assert many < MINUTE


@pytest.mark.timeout(600)
def test_twenty_thousand_trips_take_less_than_a_gigabyte() -> None:
    """In a process of its own, since this one has held other things. Measured: 0.17 GB."""
    result = subprocess.run([sys.executable, "-c", MEMORY], capture_output=True, text=True, check=True)
    assert int(result.stdout) < GIGABYTE


def _seconds(trips: int) -> float:
    network = large_network(random.Random(1), junctions=1000, trips=trips)
    start = time.process_time()
    plan = planned(network)
    seconds = time.process_time() - start
    assert plan.waybills_bound == plan.waybills_per_week
    assert all(trip.length is not None for trip in plan.trips)
    return seconds
