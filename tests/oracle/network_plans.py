"""Network plans by brute force: all ways, times all defaults, times all names.

Shares no code with ``model/``: only the values of networks.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from fractions import Fraction
from itertools import count, pairwise, product

import networkx as nx

from model.network.network import Link, Network

Way = tuple[tuple[str, str], ...]
"""The ends reached, each with the arm by which it was left; of a station the arm is empty."""


class Choices:
    """For each pair of stations that anybody rides between all of its shortest ways."""

    def __init__(self, network: Network) -> None:
        self.network = network
        self.specs = {
            f"{junction.name}/{spec.start}": spec
            for junction in network.junctions
            for spec in junction.readers
        }
        self.first: dict[str, Link] = {}
        for link in network.links:
            self.first.setdefault(link.start, link)
        self.ways = {(trip.start, trip.end): self.shortest(trip.start, trip.end)[1] for trip in network.trips}

    def graph(self, start: str) -> nx.DiGraph[str]:
        """By networkx: ends that carts reach, from one station; other stations lead nowhere."""
        graph: nx.DiGraph[str] = nx.DiGraph()
        graph.add_node("from")
        for link in self.network.links:
            if link.start == start:
                _shorten(graph, "from", link)
        for key, spec in self.specs.items():
            for way in spec.ways:
                link = self.first.get(f"{key.partition('/')[0]}/{way}")
                if link is not None:
                    _shorten(graph, key, link)
        return graph

    def shortest(self, start: str, end: str) -> tuple[int | None, list[Way]]:
        """The length and all ways."""
        graph = self.graph(start)
        if end not in graph or not nx.has_path(graph, "from", end):
            return None, []
        length = nx.shortest_path_length(graph, "from", end, weight="length")
        paths = nx.all_shortest_paths(graph, "from", end, weight="length")
        return length, [way for path in paths for way in self._lefts(path[1:])]

    def _lefts(self, path: list[str]) -> Iterator[Way]:
        arms = [
            [way for way in self.specs[key].ways if self._leads(key, way, onward)]
            for key, onward in pairwise(path)
        ]
        for chosen in product(*arms):
            yield tuple(zip(path[:-1], chosen, strict=True))

    def _leads(self, key: str, way: str, onward: str) -> bool:
        link = self.first.get(f"{key.partition('/')[0]}/{way}")
        return link is not None and link.end == onward


def _shorten(graph: nx.DiGraph[str], start: str, link: Link) -> None:
    length = graph.get_edge_data(start, link.end, {"length": link.length})["length"]
    graph.add_edge(start, link.end, length=min(length, link.length))


def best(
    network: Network,
    pinned: Mapping[str, str] | None = None,
    limit: int = 200_000,
) -> tuple[Fraction, int] | None:
    """The fewest waybills a week, with them the fewest names; ``None`` where there is too much to try.

    ``pinned``: names of readers. Infinitely many waybills where no plan keeps the pins.
    """
    choices = Choices(network)
    readers = {key: spec for key, spec in choices.specs.items() if len(spec.ways) == 2}
    passed = {key for ways in choices.ways.values() for way in ways for key, _ in way if key in readers}
    options = {
        key: spec.ways if spec.default is None and key in passed else (spec.default or spec.ways[0],)
        for key, spec in readers.items()
    }
    weights: dict[tuple[str, str], Fraction] = {}
    for trip in network.trips:
        pair = trip.start, trip.end
        weights[pair] = weights.get(pair, Fraction(0)) + Fraction(str(trip.per_week))
    pairs = [pair for pair, ways in choices.ways.items() if ways]
    number = 1
    for several in [*options.values(), *(choices.ways[pair] for pair in pairs)]:
        number *= len(several)
    if number > limit:
        return None
    result = (Fraction(10**9), 10**9)
    for chosen in product(*options.values()):
        defaults = dict(zip(options, chosen, strict=True))
        for ways in product(*(choices.ways[pair] for pair in pairs)):
            cost = Fraction(0)
            for pair, way in zip(pairs, ways, strict=True):
                cost += weights[pair] * sum(key in defaults and defaults[key] != arm for key, arm in way)
            if cost <= result[0]:
                names = fewest_names(defaults, ways, pinned or {})
                if names is not None:
                    result = min(result, (cost, names))
    return result


def fewest_names(defaults: Mapping[str, str], ways: tuple[Way, ...], pinned: Mapping[str, str]) -> int | None:
    """All names for all readers that are called, more and more of them, until no cart loses a waybill."""
    called = sorted({key for way in ways for key, arm in way if key in defaults and defaults[key] != arm})
    runs = {way for way in ways if any(key in called for key, _ in way)}
    words = sorted({pinned[key] for key in called if key in pinned})
    for number in count(len(words)):
        fresh = [*words, *map(str, range(number - len(words)))]
        if number > len(called):
            # Names that the pins allow at all are found with one for each.
            return None
        if _some_naming(called, fresh, pinned, defaults, runs):
            return number
    return None


def _some_naming(
    called: list[str],
    words: list[str],
    pinned: Mapping[str, str],
    defaults: Mapping[str, str],
    runs: set[Way],
    names: dict[str, str] | None = None,
) -> bool:
    """Whether some naming works, reader by reader."""
    names = names or {}
    if len(names) == len(called):
        return all(arrives(way, defaults, names) for way in runs)
    reader = called[len(names)]
    fresh = [word for word in words if word not in names.values() and word not in pinned.values()]
    for word in words:
        # Words that nobody has yet are all the same; one of them is enough.
        if word in fresh[1:] or pinned.get(reader, word) != word:
            continue
        if _some_naming(called, words, pinned, defaults, runs, {**names, reader: word}):
            return True
    return False


def arrives(way: Way, defaults: Mapping[str, str], names: Mapping[str, str]) -> bool:
    """Whether a cart with just the waybills for the readers called on a way is sent along it."""
    cart = Counter(names[key] for key, arm in way if key in defaults and defaults[key] != arm)
    for key, arm in way:
        if key in defaults:
            name = names.get(key)
            takes = name is not None and cart[name] > 0
            if takes == (defaults[key] == arm):
                return False
            if takes and name is not None:
                cart[name] -= 1
    return True
