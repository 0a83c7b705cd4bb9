"""A rule of rails that is asked again and again, with its answers remembered.

A rule looks into cells near the rail that it is asked for, and where it looks next hangs only on what it has
seen so far. So questions and answers make a tree: who comes to a leaf by the answers found around another
rail knows what the rule would write, and need not ask it. A track has few kinds of places, and its tree is
soon grown. A tree that has grown large grows no more, and the rule is asked where it ends.
"""

from __future__ import annotations

from collections.abc import Callable, Container
from typing import Final, NamedTuple

from model.track.shapes import Shape

MOST_LEAVES: Final = 1_000
"""Some 2 kB each. A tidy track has 150, random clutter 1,700: that is laid a third slower for it."""

Get = Callable[[int], Shape | None]
"""How the rail in a packed cell lies; ``None`` where no rail stands."""
Answer = Shape | bool | None


class Leaf(NamedTuple):
    """All that comes of a rule; cells are counted from the rail that it is asked for."""

    writes: tuple[tuple[int, Shape], ...]
    """The shapes that it gives to rails."""
    changes: tuple[tuple[int, Shape], ...]
    """Those of them that do not lie so already."""
    seen: tuple[int, ...]
    """The cells at which it looks."""


class _Look(NamedTuple):
    """A rule asks how the rail in a cell lies."""

    offset: int
    answers: dict[Answer, _Node]


class _Curves(NamedTuple):
    """A rule asks whether the rail in a cell never curves."""

    offset: int
    answers: dict[Answer, _Node]


_Node = _Look | _Curves | Leaf


class Sight:
    """The rails, and which of them never curve, as a rule sees and writes them; notes what it asks."""

    __slots__ = ("_get", "_straight_only", "asked", "written")

    def __init__(self, get: Get, straight_only: Container[int]) -> None:
        self._get = get
        self._straight_only = straight_only
        self.asked: dict[tuple[type[_Look | _Curves], int], Answer] = {}
        self.written: dict[int, Shape] = {}

    def get(self, key: int, /) -> Shape | None:
        """The shape that the rule wrote itself, or else the one found."""
        own = self.written.get(key)
        if own is not None:
            return own
        shape = self.asked[_Look, key] = self._get(key)
        return shape

    def __setitem__(self, key: int, shape: Shape, /) -> None:
        self.written[key] = shape

    def __contains__(self, key: object, /) -> bool:
        assert isinstance(key, int)
        never = self.asked[_Curves, key] = key in self._straight_only
        return never

    def leaf(self, origin: int) -> Leaf:
        """What came of the rule that was asked for the rail in ``origin``."""
        written = self.written.items()
        return Leaf(
            tuple((key - origin, shape) for key, shape in written),
            tuple(
                (key - origin, shape) for key, shape in written if self.asked.get((_Look, key)) is not shape
            ),
            tuple(key - origin for kind, key in self.asked if kind is _Look),
        )


class Remembered:
    """One rule with its tree, which several threads may use."""

    def __init__(self, rule: Callable[[Sight, int], None]) -> None:
        self._rule = rule
        self._root: _Node | None = None
        self._leaves = 0

    def asked(self, get: Get, straight_only: Container[int], key: int) -> Leaf:
        """What comes of the rule for the rail in a packed cell."""
        node = self._root
        while node is not None:
            while type(node) is _Look:  # as nearly all are
                offset, answers = node
                node = answers.get(get(key + offset))
            if type(node) is Leaf:
                return node
            if type(node) is _Curves:
                offset, answers = node
                node = answers.get(key + offset in straight_only)
        return self._learned(get, straight_only, key)

    def _learned(self, get: Get, straight_only: Container[int], key: int) -> Leaf:
        sight = Sight(get, straight_only)
        self._rule(sight, key)
        leaf = sight.leaf(key)
        if self._leaves < MOST_LEAVES:
            self._leaves += 1
            self._grow([(kind, at - key, answer) for (kind, at), answer in sight.asked.items()], leaf)
        return leaf

    def _grow(self, way: list[tuple[type[_Look | _Curves], int, Answer]], leaf: Leaf) -> None:
        """Lets the tree have a leaf where that way of answers ends; no thread sees a branch half grown."""
        node, depth = self._root, 0
        while node is not None and not isinstance(node, Leaf):
            branches, answer = node.answers, way[depth][2]
            node, depth = branches.get(answer), depth + 1
        new: _Node = leaf
        for kind, offset, found in reversed(way[depth:]):
            new = kind(offset, {found: new})
        if depth:
            branches[answer] = new
        else:
            self._root = new
