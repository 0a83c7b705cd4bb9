"""Gates of torches, repeaters and dust, and any netlist of NAND gates laid out in blocks."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from model.dry_run import DryRun, Lever
from model.grid import Cell
from tests.model.dry_run.building import UP, Bench, E, S

ROW = 6
"""Cells between two rows."""
COLUMN = 3
"""Cells between two columns."""
TOP = 67
"""The level of the dust of a column; that of a row is 64."""


class Netlist:
    """NAND gates between rows of dust that run to the east, one row a signal.

    Each input of a gate is a column: a repeater taps the row, a torch turns the signal round, and dust three
    levels up carries it south over the rows between, down a stair into the row of the gate. Two such columns
    that end in one row make a NAND: dust is on where either torch is lit. A torch lies two ticks after what
    taps the row, repeaters add their own.
    """

    def __init__(self, inputs: Sequence[str], gates: Mapping[str, tuple[str, str]]) -> None:
        self.bench = Bench()
        signals = [*inputs, *gates]
        self.rows = {name: index * ROW for index, name in enumerate(signals)}
        self.columns = [(source, gate) for gate, sources in gates.items() for source in sources]
        self.levers = {name: self.bench.put("lever", -1, self.rows[name]) for name in inputs}
        self.length = len(self.columns) * COLUMN + 1
        for number, (source, gate) in enumerate(self.columns):
            self._column(number * COLUMN, self.rows[source], self.rows[gate])
        for name in signals:
            self._row(name, name in self.levers)

    def end(self, name: str) -> Cell:
        """The last dust of a row."""
        return Cell(self.length, 64, self.rows[name])

    def read(self, dry_run: DryRun, values: Mapping[str, int], outputs: Sequence[str]) -> list[int]:
        """What is on at the ends of some rows when nothing changes any longer."""
        dry_run.step([Lever(self.levers[name], bool(value)) for name, value in values.items()])
        while not dry_run.is_quiet:
            dry_run.step()
        return [int(dry_run.strength(self.end(name)) > 0) for name in outputs]

    def _row(self, name: str, is_input: bool) -> None:
        """Dust from the lever, or from the first column of the gate, with a repeater in every ninth cell."""
        z = self.rows[name]
        first = next((COLUMN * n for n, (_, gate) in enumerate(self.columns) if gate == name), 0)
        assert is_input or first >= 0
        for x in range(first, self.length + 1):
            self.bench.put("repeater" if x % 9 == 7 else "dust", x, z, E)

    def _column(self, x: int, z: int, to: int) -> None:
        bench = self.bench
        bench.put("repeater", x, z + 1, S)
        bench.put("solid-block", x, z + 2)
        bench.put("torch", x, z + 2, UP, y=65)
        for step, at in enumerate(range(z + 2, to - 3)):
            bench.put("repeater" if step % 9 == 8 else "dust", x, at, S, y=TOP)
        bench.put("repeater", x, to - 3, S, y=TOP)
        bench.put("solid-block", x, to - 2, y=TOP)
        bench.put("dust", x, to - 2, y=66)
        bench.put("dust", x, to - 1, y=65)


C17 = {
    "10": ("1", "3"),
    "11": ("3", "6"),
    "16": ("2", "11"),
    "19": ("11", "7"),
    "22": ("10", "16"),
    "23": ("16", "19"),
}
"""ISCAS-85 c17 (Brglez & Fujiwara 1985), six NAND gates, as read in published netlists."""
