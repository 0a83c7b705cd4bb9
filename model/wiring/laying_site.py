"""One line to be laid on a field: where it starts, where it may end, and what takes it in between."""

from __future__ import annotations

from model.grid import Cell, Heading
from model.wiring.laid import Failure, Limits, Line
from model.wiring.laying_field import Field


class Site:
    """A line with its field."""

    def __init__(self, field: Field, line: Line, limits: Limits) -> None:
        self.field = field
        self.line = line
        self.goals: dict[int, list[int]] = {}
        """The cells beside target blocks, each with the places of these in the line's targets."""
        self.blocks = line.targets
        self.limits: list[int | None] = [limits.get((line.name, place)) for place in range(len(line.targets))]
        self.dust_ok = bytearray(field.dust_ok)
        self.failures: list[Failure] = []
        """Why there is no way, whatever the other lines do."""
        for place, group in enumerate(line.targets):
            self._open(place, group)
        self._open_start()

    def fail(self, place: int, reason: str) -> None:
        """Notes a target that cannot be reached."""
        self.failures.append(Failure(self.line, self.line.targets[place][0], reason))

    def _open(self, place: int, group: tuple[Cell, ...]) -> None:
        sides = [block.step(heading) for block in group for heading in Heading]
        free = [cell for cell in sides if self.field.takes_dust(cell, self.line)]
        for cell in free:
            key = self.field.pack(cell)
            self.dust_ok[key] = 1
            places = self.goals.setdefault(key, [])
            if place not in places:
                places.append(place)
        if not free:
            self.fail(place, f"No dust can lie beside the target block at {group[0]}.")

    def _open_start(self) -> None:
        if self.field.takes_dust(self.line.start, self.line):
            self.dust_ok[self.field.pack(self.line.start)] = 1
            return
        for place in range(len(self.line.targets)):
            self.fail(place, f"No dust can lie at {self.line.start}, where the line starts.")
