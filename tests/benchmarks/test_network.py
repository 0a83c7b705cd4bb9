"""Planning networks: the time a trip, the memory, and the waybills and names against their bounds."""

from __future__ import annotations

import random
import subprocess
import sys
from typing import Final

import networkx as nx
import pytest

from model.network.network import Network, end_of
from model.network.planning import planned
from model.network.result import NetworkPlan
from tests.benchmarks.conftest import AddRow, Ratio
from tests.benchmarks.measuring import seconds
from tests.oracle.random_networks import large_network, random_network

pytestmark = pytest.mark.slow

FEW: Final = 2_000
MANY: Final = 20_000
GIGABYTE: Final = 10**9
MEMORY: Final = f"""
import random
from pathlib import Path
from model.network.planning import planned
from tests.oracle.random_networks import large_network
planned(large_network(random.Random(1), junctions=1000, trips={MANY}))
lines = Path("/proc/self/status").read_text().splitlines()
print(next(int(line.split()[1]) * 1024 for line in lines if line.startswith("VmHWM:")))
"""
"""Prints the most bytes in memory. What getrusage tells of a process begins with what its parent held."""
SMALL: Final = 20
"""Networks of 40 junctions, drawn by lot."""


def large(trips: int) -> Network:
    """2,000 stations, 1,000 junctions, 6,000 readers."""
    return large_network(random.Random(1), junctions=1000, trips=trips)


def test_ten_times_the_trips(add_row: AddRow) -> None:
    few, many = timed(FEW), timed(MANY)
    add_row(f"planning {MANY:,} trips, the time a trip", f"the same of {FEW:,} trips", many[1] / few[1], 2)
    for trips, (plan, _) in ((FEW, few), (MANY, many)):
        assert all(trip.length is not None for trip in plan.trips)
        waybills = plan.waybills_per_week / plan.waybills_bound
        add_row(f"waybills a week of {trips:,} trips", "what is proved to be the least", waybills, 1)
        names = plan.distinct_names / plan.names_bound
        add_row(f"names of the waybills of {trips:,} trips", "a number that is proved to be needed", names)


def timed(trips: int) -> tuple[NetworkPlan, float]:
    """The plan, and seconds a trip."""
    network = large(trips)
    plans: list[NetworkPlan] = []
    taken = seconds(lambda: plans.append(planned(network)))
    return plans[0], taken / trips


def test_ways_of_many_trips(ratio: Ratio) -> None:
    """The general library finds the length of a way for each trip, and neither readers nor names."""
    network = large(FEW)
    graph = graph_of(network)
    lengths = [trip.length for trip in planned(network).trips]
    assert lengths == ways_alone(network, graph)
    ratio(
        f"planning {FEW:,} trips past 6,000 readers",
        lambda: planned(network),
        against="networkx finding the ways alone",
        bound=lambda: ways_alone(network, graph),
        rounds=2,
    )


def graph_of(network: Network) -> nx.DiGraph[str]:
    """Ends of links as nodes; within a junction a way costs nothing, and no cart goes on past a station."""
    graph: nx.DiGraph[str] = nx.DiGraph()
    stations = {station.name for station in network.stations}
    for link in network.links:
        end = reached(link.end) if link.end in stations else link.end
        graph.add_edge(link.start, end, length=link.length)
    for junction in network.junctions:
        for reader in junction.readers:
            start = end_of(junction.name, reader.start)
            graph.add_edges_from((start, end_of(junction.name, way), {"length": 0}) for way in reader.ways)
    return graph


def reached(station: str) -> str:
    """Where carts end, apart from where they begin."""
    return f"at {station}"


def ways_alone(network: Network, graph: nx.DiGraph[str]) -> list[int]:
    """All ways from each station where trips begin, looked up for each trip."""
    starts = {trip.start for trip in network.trips}
    found = {start: nx.single_source_dijkstra_path_length(graph, start, weight="length") for start in starts}
    return [found[trip.start][reached(trip.end)] for trip in network.trips]


def test_names_in_small_networks(add_row: AddRow) -> None:
    plans = [planned(random_network(random.Random(seed), junctions=40, trips=100)) for seed in range(SMALL)]
    assert all(plan.waybills_per_week == plan.waybills_bound for plan in plans)
    add_row(
        f"names of waybills in {SMALL} networks of 40 junctions",
        "a number that is proved to be needed",
        sum(plan.distinct_names for plan in plans) / sum(plan.names_bound for plan in plans),
        1.1,
    )


def test_memory_of_twenty_thousand_trips(add_row: AddRow) -> None:
    """In a process of its own, since this one has held other things."""
    result = subprocess.run([sys.executable, "-c", MEMORY], capture_output=True, text=True, check=True)
    add_row(f"memory of planning {MANY:,} trips", "a gigabyte", int(result.stdout) / GIGABYTE, 1)
