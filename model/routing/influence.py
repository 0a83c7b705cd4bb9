"""Which rails can lie in several shapes when signals come and go, and which switches bear on which.

A notice at a switch looks at rails up to two columns away. What it really depends on is found by trying all
shapes in which those rails can lie; most switches turn out to depend on nothing but their own signal.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import NamedTuple

from model.pauses import pause
from model.track.layout import Layout
from model.track.settling import noticed
from model.track.shapes import Shape

Shapes = dict[int, Shape]
"""Shape by packed cell."""
Possible = dict[int, set[Shape]]
"""The shapes in which a rail can lie, by packed cell; rails that always lie as built are left out."""


class Branch(NamedTuple):
    """What a notice does hangs on how this rail lies."""

    key: int
    answers: dict[Shape, Node]


Node = Branch | Shapes
"""Shapes at an end: what the notice writes."""


class Reaction(NamedTuple):
    """What a notice at one switch does with one signal: what it writes, by the shapes it depends on.

    A tree and no table: a notice that finds one rail in the way looks no further, so that it comes to far
    fewer ends than its rails have combinations of shapes.
    """

    reads: tuple[int, ...]
    """The rails that make a difference, in order."""
    root: Node

    def written(self, shapes: Mapping[int, Shape]) -> Shapes:
        """What the notice writes where the rails lie so; rails that make no difference may be left out."""
        node = self.root
        while isinstance(node, Branch):
            shape = shapes.get(node.key)
            node = next(iter(node.answers.values())) if shape is None else node.answers[shape]
        return node

    def ends(self) -> Iterator[Shapes]:
        """All that it may write."""
        return _ends(self.root)


class Influence(NamedTuple):
    """What every switch does, by its packed cell."""

    possible: Possible
    reactions: dict[int, tuple[Reaction, Reaction]]
    """Released, powered."""

    def reads(self, switch: int) -> set[int]:
        """The rails on whose shape a notice at the switch depends."""
        return {key for reaction in self.reactions[switch] for key in reaction.reads}

    def writes(self, switch: int) -> set[int]:
        """The rails of several shapes that a notice at the switch may bend; itself among them."""
        results = (shapes for reaction in self.reactions[switch] for shapes in reaction.ends())
        return {key for shapes in results for key in shapes if key in self.possible}


def influence(layout: Layout, switches: Iterable[int]) -> Influence:
    """Tries every notice on every combination of shapes, until no new shape comes up."""
    possible: Possible = {}
    reactions: dict[int, tuple[Reaction, Reaction]] = {}
    looking_at: dict[int, set[int]] = {}
    waiting = dict.fromkeys(switches)
    while waiting:
        pause()
        switch = next(iter(waiting))
        del waiting[switch]
        trial = _Trial(layout, possible, switch)
        reactions[switch] = (trial.reaction(powered=False), trial.reaction(powered=True))
        for key in trial.looked_at:
            looking_at.setdefault(key, set()).add(switch)
        for key in sorted(_take_over(layout, possible, reactions[switch])):
            waiting.update(dict.fromkeys(sorted(looking_at.get(key, ()))))
    return Influence(possible, {switch: _with_reads(pair, possible) for switch, pair in reactions.items()})


def _take_over(layout: Layout, possible: Possible, reactions: Sequence[Reaction]) -> set[int]:
    """Adds the shapes that came up; returns the rails with a new one."""
    news: set[int] = set()
    for reaction in reactions:
        for shapes in reaction.ends():
            for key, shape in shapes.items():
                built = layout.rails[key]
                known = possible.get(key, {built})
                if shape not in known:
                    possible[key] = known | {shape}
                    news.add(key)
    return news


class _Trial:
    """Tries notices at one switch."""

    def __init__(self, layout: Layout, possible: Possible, switch: int) -> None:
        self.layout = layout
        self.possible = possible
        self.switch = switch
        self.looked_at: set[int] = set()

    def reaction(self, *, powered: bool) -> Reaction:
        """What the notice does for all shapes that it may meet; which of them matter is not told yet."""
        return Reaction((), self._tried({}, powered=powered))

    def _tried(self, assumed: Shapes, *, powered: bool) -> Node:
        """The tree where some rails lie as assumed: it branches at the first rail that is still open."""
        built = self.layout.rails

        def get(key: int) -> Shape | None:
            shape = assumed.get(key)
            return built.get(key) if shape is None else shape

        leaf = noticed(get, self.layout.straight_only, self.switch, powered=powered)
        seen = (self.switch, *(self.switch + offset for offset in leaf.seen))
        self.looked_at.update(seen)
        for key in seen:
            if key in self.possible and key not in assumed:
                answers = {
                    shape: self._tried({**assumed, key: shape}, powered=powered)
                    for shape in sorted(self.possible[key])
                }
                return _without_idle(Branch(key, answers))
        present = get(self.switch)
        assert present is not None
        return {self.switch: present} | {self.switch + offset: shape for offset, shape in leaf.writes}


def _without_idle(branch: Branch) -> Node:
    first, *others = branch.answers.values()
    return first if all(other == first for other in others) else branch


def _ends(node: Node) -> Iterator[Shapes]:
    if isinstance(node, Branch):
        for answer in node.answers.values():
            yield from _ends(answer)
    else:
        yield node


def _with_reads(pair: tuple[Reaction, Reaction], possible: Possible) -> tuple[Reaction, Reaction]:
    released, powered = ((_reads(reaction.root, possible), reaction.root) for reaction in pair)
    return Reaction(*released), Reaction(*powered)


def _reads(root: Node, possible: Possible) -> tuple[int, ...]:
    """The rails that make a difference: a tree may ask for others on some of its ways."""
    return tuple(sorted(key for key in _asked(root) if _matters(key, root, possible)))


def _asked(node: Node) -> set[int]:
    if not isinstance(node, Branch):
        return set()
    return {node.key}.union(*map(_asked, node.answers.values()))


def _matters(key: int, root: Node, possible: Possible) -> bool:
    first, *others = possible[key]
    return not all(_is_same(root, root, {key: first}, {key: other}, possible) for other in others)


def _is_same(one: Node, other: Node, here: Shapes, there: Shapes, possible: Possible) -> bool:
    """Whether two trees end alike, whatever the rails lie like of which nothing is assumed."""
    one, other = _followed(one, here), _followed(other, there)
    open_one = one if isinstance(one, Branch) else other
    if not isinstance(open_one, Branch):
        return one == other
    key = open_one.key
    return all(
        _is_same(one, other, {**here, key: shape}, {**there, key: shape}, possible) for shape in possible[key]
    )


def _followed(node: Node, assumed: Shapes) -> Node:
    while isinstance(node, Branch) and node.key in assumed:
        node = node.answers[assumed[node.key]]
    return node
