"""Defaults of readers that nobody passes: they lead empty carts to a station, where any way does."""

from __future__ import annotations

from model.network.planning_choice import Choice
from model.network.planning_task import Task
from model.network.ways import NO_TURN


def homeward(task: Task, choice: Choice) -> list[int]:
    """The defaults, those that no trip passes leading to the station that is fewest links away."""
    stretches = task.tracks.stretches
    passed = {stretches[number].turn >> 1 for run in choice.runs for number in run}
    defaults = list(choice.defaults)
    free = {reader for reader, given in enumerate(task.given) if given is None} - passed
    waiting = task.tracks.arrivals()
    home = set(waiting)
    for place in waiting:
        for number in task.tracks.into[place]:
            start, _, _, _, turn = stretches[number]
            reader, way = turn >> 1, turn & 1
            if start in home or (turn != NO_TURN and reader not in free and defaults[reader] != way):
                continue
            if turn != NO_TURN and reader in free:
                defaults[reader] = way
            home.add(start)
            waiting.append(start)
    return defaults
