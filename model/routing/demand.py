"""What is demanded of the wiring: that a wanted route is served, by whichever of its ways."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cached_property

from model.routing.paths import Move, Stage


class Demand:
    """A wanted route: in which setting it runs, and the ways that would serve it, stage by stage."""

    def __init__(self, setting: int, stages: tuple[Stage, ...]) -> None:
        self.setting = setting
        self.stages = stages

    @cached_property
    def size(self) -> int:
        """The moves of all stages together."""
        return sum(len(moves) for stage in self.stages for moves in stage.moves.values())

    @cached_property
    def clusters(self) -> frozenset[int]:
        """The clusters that some way passes."""
        return frozenset(cluster for stage in self.stages for cluster in stage.clusters)

    @cached_property
    def needs(self) -> dict[int, int]:
        """By cluster, the states in which it may lie at the most, as a mask, whichever way is taken."""
        needs: dict[int, int] = {}
        for stage in self.stages:
            for cluster, mask in _states_allowed(stage.first_moves).items():
                needs[cluster] = needs.get(cluster, mask) & mask
        return needs

    @cached_property
    def has_one_way(self) -> bool:
        """Whether there is no choice of ways: what it needs in any case is all that it needs."""
        return not self.stages_with_choice

    @cached_property
    def stages_with_choice(self) -> tuple[Stage, ...]:
        """The stages through which there is more than one way, or none."""
        return tuple(stage for stage in self.stages if len(stage.moves) != 1 or len(stage.first_moves) != 1)


def _states_allowed(moves: Iterable[Move]) -> dict[int, int]:
    """By cluster, the states in which one of the moves can be made, as a mask."""
    states: dict[int, int] = {}
    for move in moves:
        states[move.cluster] = states.get(move.cluster, 0) | move.states
    return states
