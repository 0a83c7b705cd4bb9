"""Published diagnoses of broken circuits, by the same tree that finds the faults of a junction."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import product

import pytest

from model.commissioning.alike import groups_alike
from model.commissioning.hitting import hitting_tree, minimal_hitting_sets
from tests.model.commissioning.circuits import C17, FULL_ADDER, POLYBOX, TABLE_1_1, Circuit


def explains(
    circuit: Circuit, broken: frozenset[str], vector: Sequence[int], seen: tuple[int, ...], values: range
) -> bool:
    """Whether the outputs can be so while each broken gate gives any value at all."""
    order = sorted(broken)
    return any(
        circuit.respond(vector, dict(zip(order, given, strict=True))) == seen
        for given in product(values, repeat=len(order))
    )


ADDER_CASE = (FULL_ADDER, (1, 0, 1), (1, 0), range(2))
BOX_CASE = (POLYBOX, (3, 2, 2, 3, 3), (10, 12), range(-30, 31))
ADDER = [("X1",), ("A2", "X2"), ("O1", "X2")]
BOX = [("A1",), ("M1",), ("A2", "M2"), ("M2", "M3")]


@pytest.mark.parametrize(
    ("case", "wanted"),
    [(ADDER_CASE, ADDER), (BOX_CASE, BOX)],
    ids=["full adder", "polybox"],
)
def test_broken_gates(case: tuple, wanted: list[tuple[str, ...]]) -> None:
    """Full adder: Reiter 1987; polybox: de Kleer and Williams 1987; from memory, found again by trying."""
    circuit, vector, seen, values = case
    gates = {gate.line for gate in circuit.gates}

    def label(broken: frozenset[str]) -> set[str] | None:
        return None if explains(circuit, broken, vector, seen, values) else gates - broken

    assert not explains(circuit, frozenset(), vector, seen, values)
    assert hitting_tree(label) == wanted


@pytest.mark.parametrize(
    ("conflicts", "wanted"),
    [
        ([{"X1", "X2"}, {"X1", "A2", "O1"}], ADDER),
        ([{"M1", "M2", "A1"}, {"M1", "M3", "A1", "A2"}], BOX),
    ],
    ids=["full adder", "polybox"],
)
def test_published_conflicts(conflicts: list[set[str]], wanted: list[tuple[str, ...]]) -> None:
    """The smallest conflicts of the same two cases, from the same papers."""
    assert minimal_hitting_sets(map(frozenset, conflicts)) == wanted


def test_stuck_gates_of_the_full_adder() -> None:
    """CSPLib problem 042: all inputs 0, sum 1, carry 0: the first or the second XOR is stuck at 1
    (pycsp.org/documentation/models/COP/Diagnosis)."""
    stuck = {(gate.line, value) for gate in FULL_ADDER.gates for value in (0, 1)}
    assert len(stuck) == 10

    def label(chosen: frozenset[tuple[str, int]]) -> set[tuple[str, int]] | None:
        if FULL_ADDER.respond((0, 0, 0), dict(chosen)) == (1, 0):
            return None
        return {fault for fault in stuck if fault[0] not in dict(chosen)}

    assert hitting_tree(label, 1) == [(("X1", 1),), (("X2", 1),)]


@pytest.mark.parametrize(
    ("circuit", "faults", "classes"), [(C17, 34, 22), (TABLE_1_1, 18, 10)], ids=["c17", "Table 1.1"]
)
def test_faults_that_nothing_tells_apart(circuit: Circuit, faults: int, classes: int) -> None:
    """Table 1.1: ten distinct faulty responses, stated in the book; c17: 22 after collapsing, from memory."""
    responses = {
        (line, value): tuple(circuit.respond(vector, {line: value}) for vector in circuit.vectors())
        for line in circuit.lines
        for value in (0, 1)
    }
    groups = groups_alike(responses)
    assert len(groups) == classes
    assert sum(map(len, groups)) == faults
