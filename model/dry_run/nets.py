"""Nets: dust that hangs together, and what feeds it. A line is a net that throws a rail."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from model.dry_run.circuit import Circuit
from model.dry_run.nodes import Dust, Node, Power, StrongPower


class Net:
    """Dust that is linked, one way or both."""

    def __init__(self, dust: list[Dust]) -> None:
        self.dust = dust
        sources = (source for each in dust for feed in each.feeds for source in sources_of(feed))
        self.sources: list[Node] = list(dict.fromkeys(sources))
        """The parts that feed it, beside it or through a block."""

    def throws(self, rails: Iterable[Node]) -> bool:
        """Whether one of these rails gets its signal, also by way of a block that it powers."""
        found = set(rails)
        outs = {out for each in self.dust for out in each.outs}
        through = {out for block in outs if isinstance(block, Power) for out in block.outs}
        return bool(found & (outs | through))


def nets_of(circuit: Circuit) -> list[Net]:
    """The nets of a circuit, in file order of their first dust."""
    nets: list[Net] = []
    seen: set[Dust] = set()
    for node in circuit.outputs.values():
        if isinstance(node, Dust) and node not in seen:
            together = list(_together(node))
            seen.update(together)
            nets.append(Net(together))
    return nets


def sources_of(feed: Node) -> list[Node]:
    """The part itself, or those that power a block strongly."""
    return list(feed.ins) if isinstance(feed, StrongPower) else [feed]


def _together(first: Dust) -> Iterator[Dust]:
    seen, ends = {first}, [first]
    while ends:
        dust = ends.pop()
        yield dust
        for other in (*dust.takes, *dust.gives):
            if other not in seen:
                seen.add(other)
                ends.append(other)
