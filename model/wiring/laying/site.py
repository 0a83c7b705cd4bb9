"""One line to be laid on a field: where it starts, where it may end, and what takes it in between."""

from __future__ import annotations

from model.grid import Heading
from model.wiring.laying.field import Field
from model.wiring.laying.laid import Failure, Limits, Line
from model.wiring.laying.tree import Step, Tree
from model.wording import tr


class Site:
    """A line with its field."""

    def __init__(self, field: Field, line: Line, limits: Limits) -> None:
        self.field = field
        self.line = line
        self.places = range(len(line.targets))
        """Of the targets."""
        self.limits = {
            place: limits[line.name, place] for place in self.places if (line.name, place) in limits
        }
        self.goals: dict[int, list[int]] = {}
        """The cells beside target blocks, each with the places of these in the line's targets."""
        self.dust_ok = bytearray(field.dust_ok)
        self.rest_ok = bytearray(field.rest_ok)
        self.failures: list[Failure] = []
        """Why there is no way, whatever the other lines do."""
        self.sides = [self._open(place) for place in self.places]
        """The cells in which the line can end, for each of its targets."""
        self._open_start()

    def failure(self, place: int, reason: str) -> Failure:
        """That a target cannot be reached."""
        return Failure(self.line, self.line.targets[place][0], reason)

    def start(self) -> Tree:
        """The line with its first dust alone."""
        return Tree(self.field, self.field.pack(self.line.start))

    def needed(self) -> Tree:
        """The dust that the line cannot do without: its start, and where it can end in one cell alone."""
        tree = self.start()
        tree.add(Step(sides[0], 1, 0, 0, 0, 0, 0) for sides in self.sides if len(sides) == 1)
        return tree

    def keep_off(self, start: Tree) -> None:
        """Bars what the start of another line bars."""
        for cell in start.bars_dust():
            self.dust_ok[cell] = 0
            self.goals.pop(cell, None)
        for cell in start.bars_parts():
            self.rest_ok[cell] = 0
        self.sides = [[cell for cell in sides if self.dust_ok[cell]] for sides in self.sides]

    def _open(self, place: int) -> list[int]:
        """The cells beside the target blocks in which the line can end."""
        group = self.line.targets[place]
        sides = dict.fromkeys(block.step(heading) for block in group for heading in Heading)
        free = [self.field.pack(cell) for cell in sides if self.field.takes_dust(cell, self.line)]
        for key in free:
            self.dust_ok[key] = 1
            self.goals.setdefault(key, []).append(place)
        if not free:
            reason = tr("No dust can lie beside the target block at {group}.", group=group[0])
            self.failures.append(self.failure(place, reason))
        return free

    def _open_start(self) -> None:
        if self.field.takes_dust(self.line.start, self.line):
            self.dust_ok[self.field.pack(self.line.start)] = 1
            return
        reason = tr("No dust can lie at {start}, where the line starts.", start=self.line.start)
        self.failures.append(self.failure(0, reason))
