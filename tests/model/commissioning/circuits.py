"""Small circuits with single stuck-at faults, simulated plainly, for test sets and diagnoses."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from itertools import product
from typing import NamedTuple

Value = int
Stuck = tuple[str, Value]
"""A line and the value that it always has."""


class Gate(NamedTuple):
    """A gate, or a branch of a line: its output line, what it computes, its input lines."""

    line: str
    compute: Callable[..., Value]
    inputs: tuple[str, ...]


class Circuit(NamedTuple):
    """Gates in the order in which signals run through them."""

    inputs: tuple[str, ...]
    gates: tuple[Gate, ...]
    outputs: tuple[str, ...]

    @property
    def lines(self) -> tuple[str, ...]:
        return (*self.inputs, *(gate.line for gate in self.gates))

    def respond(self, vector: Sequence[Value], stuck: Mapping[str, Value]) -> tuple[Value, ...]:
        """The outputs for a vector of inputs while some lines are stuck."""
        values: dict[str, Value] = {}
        for line, value in zip(self.inputs, vector, strict=True):
            values[line] = stuck.get(line, value)
        for line, compute, inputs in self.gates:
            values[line] = stuck.get(line, compute(*(values[i] for i in inputs)))
        return tuple(values[line] for line in self.outputs)

    def vectors(self) -> list[tuple[Value, ...]]:
        return list(product((0, 1), repeat=len(self.inputs)))

    def shown(self, lines: Sequence[str]) -> dict[tuple[Value, ...], frozenset[Stuck]]:
        """By vector, the stuck lines that it shows."""
        faults = [(line, value) for line in lines for value in (0, 1)]
        return {
            vector: frozenset(
                (line, value)
                for line, value in faults
                if self.respond(vector, {line: value}) != self.respond(vector, {})
            )
            for vector in self.vectors()
        }


def nand(one: Value, other: Value) -> Value:
    return 1 - one * other


def xor(one: Value, other: Value) -> Value:
    return one ^ other


def land(one: Value, other: Value) -> Value:
    return one & other


def lor(one: Value, other: Value) -> Value:
    return one | other


def inverse(one: Value) -> Value:
    return 1 - one


def same(one: Value) -> Value:
    return one


C17 = Circuit(
    ("1", "2", "3", "6", "7"),
    (
        *(Gate(branch, same, (stem,)) for branch, stem in (("3a", "3"), ("3b", "3"))),
        Gate("10", nand, ("1", "3a")),
        Gate("11", nand, ("3b", "6")),
        *(Gate(branch, same, ("11",)) for branch in ("11a", "11b")),
        Gate("16", nand, ("2", "11a")),
        Gate("19", nand, ("11b", "7")),
        *(Gate(branch, same, ("16",)) for branch in ("16a", "16b")),
        Gate("22", nand, ("10", "16a")),
        Gate("23", nand, ("16b", "19")),
    ),
    ("22", "23"),
)
"""ISCAS-85 c17 (Brglez and Fujiwara 1985): six NAND gates, netlist as in Gloriaclaro/hecate C17_nangate.v."""

TABLE_1_1 = Circuit(
    ("a", "b", "c"),
    (
        Gate("d", same, ("b",)),
        Gate("e", same, ("b",)),
        Gate("f", inverse, ("e",)),
        Gate("g", land, ("a", "d")),
        Gate("h", land, ("f", "c")),
        Gate("i", lor, ("g", "h")),
    ),
    ("i",),
)
"""Wang, Wu and Wen, VLSI Test Principles and Architectures, Table 1.1; site letters read off the figure."""

FULL_ADDER = Circuit(
    ("in1", "in2", "in3"),
    (
        Gate("X1", xor, ("in1", "in2")),
        Gate("X2", xor, ("in3", "X1")),
        Gate("A1", land, ("in1", "in2")),
        Gate("A2", land, ("in3", "X1")),
        Gate("O1", lor, ("A1", "A2")),
    ),
    ("X2", "O1"),
)
"""The full adder of Reiter 1987; circuit as in bornobob/RPI-Prolog diagnosis.pl."""


def plus(one: Value, other: Value) -> Value:
    return one + other


def times(one: Value, other: Value) -> Value:
    return one * other


POLYBOX = Circuit(
    ("A", "B", "C", "D", "E"),
    (
        Gate("M1", times, ("A", "C")),
        Gate("M2", times, ("B", "D")),
        Gate("M3", times, ("C", "E")),
        Gate("A1", plus, ("M1", "M2")),
        Gate("A2", plus, ("M2", "M3")),
    ),
    ("A1", "A2"),
)
"""Davis 1984; de Kleer and Williams 1987, Artificial Intelligence 32, 97-130; from memory."""
