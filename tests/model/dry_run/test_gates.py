"""Gates of torches and dust against logic: the 0 and 1 part of IEEE 1164, ISCAS-85 c17, worked tables."""

from __future__ import annotations

from itertools import product

import pytest

from model.dry_run import Event, Lever
from model.grid import Cell
from tests.model.dry_run.building import Bench, E, N, S, W, changes, off, on
from tests.model.dry_run.gates import C17, Netlist

IEEE_1164 = {
    "and": {(0, 0): 0, (0, 1): 0, (1, 0): 0, (1, 1): 1},
    "or": {(0, 0): 0, (0, 1): 1, (1, 0): 1, (1, 1): 1},
    "xor": {(0, 0): 0, (0, 1): 1, (1, 0): 1, (1, 1): 0},
    "nand": {(0, 0): 1, (0, 1): 1, (1, 0): 1, (1, 1): 0},
    "nor": {(0, 0): 1, (0, 1): 0, (1, 0): 0, (1, 1): 0},
    "xnor": {(0, 0): 1, (0, 1): 0, (1, 0): 0, (1, 1): 1},
}
"""IEEE 1164, the rows and columns 0 and 1 of its tables. Read in a published std_logic_1164 (AND), the rest
from memory."""
IN_NANDS = {
    "and": {"n": ("a", "b"), "y": ("n", "n")},
    "or": {"p": ("a", "a"), "q": ("b", "b"), "y": ("p", "q")},
    "xor": {"n": ("a", "b"), "p": ("a", "n"), "q": ("n", "b"), "y": ("p", "q")},
    "nand": {"y": ("a", "b")},
    "nor": {"p": ("a", "a"), "q": ("b", "b"), "r": ("p", "q"), "y": ("r", "r")},
    "xnor": {"n": ("a", "b"), "p": ("a", "n"), "q": ("n", "b"), "r": ("p", "q"), "y": ("r", "r")},
}
"""Each in NAND gates: textbook, from memory."""


@pytest.mark.parametrize("gate", IEEE_1164)
def test_gates_follow_ieee_1164(gate: str) -> None:
    netlist = Netlist("ab", IN_NANDS[gate])
    dry_run = netlist.bench.dry_run()
    read = {
        values: netlist.read(dry_run, dict(zip("ab", values, strict=True)), ["y"])[0]
        for values in IEEE_1164[gate]
    }
    assert read == IEEE_1164[gate]


def test_a_torch_is_a_not() -> None:
    """IEEE 1164: not 0 is 1, not 1 is 0."""
    bench = Bench()
    lever = bench.put("lever", 0, 0)
    bench.put("dust", 1, 0)
    bench.put("solid-block", 2, 0)
    assert changes(bench, bench.put("torch", 3, 0, E), [on(lever, 5), off(lever, 9)]) == [
        (0, 15),
        (7, 0),
        (11, 15),
    ]


def test_c17_gives_all_32_rows() -> None:
    """ISCAS-85 c17: both outputs for every input, worked out from the netlist with Python's own logic."""
    netlist = Netlist(["1", "2", "3", "6", "7"], C17)
    dry_run = netlist.bench.dry_run()
    for row in product((0, 1), repeat=5):
        values = dict(zip(netlist.levers, row, strict=True))
        known: dict[str, int] = dict(values)
        for gate, (one, other) in C17.items():
            known[gate] = int(not (known[one] and known[other]))
        assert netlist.read(dry_run, values, ["22", "23"]) == [known["22"], known["23"]], row


def test_a_complete_test_set_of_c17() -> None:
    """Outputs 22 and 23 for inputs 1, 2, 3, 6, 7 of a complete test set (recomputed by brute force)."""
    netlist = Netlist(["1", "2", "3", "6", "7"], C17)
    dry_run = netlist.bench.dry_run()
    rows = {"10010": [0, 0], "01111": [0, 0], "11010": [1, 1], "10101": [1, 1]}
    for row, expected in rows.items():
        values = dict(zip(netlist.levers, map(int, row), strict=True))
        assert netlist.read(dry_run, values, ["22", "23"]) == expected


def latch() -> tuple[Bench, dict[str, Cell]]:
    """Two NOR gates in a ring: a torch on the side of a target block into which the other's dust runs."""
    bench = Bench()
    bench.put("target-block", 0, 0)
    bench.put("target-block", 0, 4)
    at = {"q": bench.put("torch", 1, 0, E), "not q": bench.put("torch", -1, 4, W)}
    # From q down to the other block, and from not q up to the first one.
    bench.line(2, 0, 4, S)
    bench.put("dust", 2, 4)
    bench.put("dust", 1, 4)
    bench.line(-2, 4, 4, N)
    bench.put("dust", -2, 0)
    bench.put("dust", -1, 0)
    at["r"] = bench.put("lever", 0, -1, N)
    at["s"] = bench.put("lever", 0, 5, S)
    return bench, at


def test_an_sr_latch_of_two_nor_gates() -> None:
    """00 holds, 01 resets, 10 sets, 11 puts both out; after 11 it swings.

    Textbook, from memory. At the start both torches are lit, which is the same: they burn out.
    """
    bench, at = latch()
    dry_run = bench.dry_run()
    dry_run.step([Lever(at["s"], True)])
    for _ in range(160):
        dry_run.step()
    steps = [(1, 0, 1, 0), (0, 0, 1, 0), (0, 1, 0, 1), (0, 0, 0, 1), (1, 0, 1, 0), (1, 1, 0, 0), (0, 1, 0, 1)]
    for s, r, q, not_q in steps:
        dry_run.step([Lever(at["s"], bool(s)), Lever(at["r"], bool(r))])
        for _ in range(12):
            dry_run.step()
        assert (dry_run.output(at["q"]) > 0, dry_run.output(at["not q"]) > 0) == (bool(q), bool(not_q))


def worked_circuit() -> tuple[Bench, dict[str, Cell]]:
    """E = OR(B, C) after 8, H = AND(A, E) after 8, J = NOT(E) after 4, K = NOR(H, J) after 6.

    A tick stands for a nanosecond. A repeater is a delay, a torch a NOT after 2. E is dust and a repeater
    of 8; J a repeater of 2 and a torch; H is NOT(NOT A or NOT E): two torches, dust, a torch, a repeater of
    4; K is dust, a repeater of 4, a torch.
    """
    bench = Bench()
    at: dict[str, Cell] = {}
    # B and C into one dust, and E behind a repeater.
    at["B"] = bench.put("lever", -2, 0)
    at["C"] = bench.put("lever", -1, -1)
    bench.put("dust", -1, 0)
    at["E"] = bench.put("repeater", 0, 0, E, delay=8)
    bench.put("dust", 1, 0)
    # J: to the east.
    bench.put("dust", 2, 0)
    bench.put("repeater", 3, 0, E, delay=2)
    bench.put("solid-block", 4, 0)
    at["J"] = bench.put("torch", 5, 0, E)
    # NOT E and NOT A, to the south, into one dust.
    bench.put("dust", 1, 1)
    bench.put("solid-block", 1, 2)
    bench.put("torch", 1, 3, S)
    at["A"] = bench.put("lever", -2, 4)
    bench.put("dust", -1, 4)
    bench.put("solid-block", 0, 4)
    bench.put("torch", 0, 5, S)
    bench.line(1, 4, 2, S)
    bench.put("dust", 2, 4)
    bench.put("solid-block", 3, 4)
    bench.put("torch", 4, 4, E)
    at["H"] = bench.put("repeater", 5, 4, E, delay=4)
    # H and J into one dust, and K.
    bench.line(6, 0, 4, S)
    bench.put("dust", 6, 4)
    bench.put("repeater", 7, 2, E, delay=4)
    bench.put("solid-block", 8, 2)
    at["K"] = bench.put("torch", 9, 2, E)
    return bench, at


def test_the_worked_table_of_event_driven_simulation() -> None:
    """Wang, Wu & Wen, VLSI Test Principles and Architectures, Table 3.5; the circuit is inferred from it.

    Events A=1 at 0, C=0 at 2, B=0 at 4, A=0 at 8, from A=0 and B=C=1. H rises at 8 and falls at 16, E falls
    at 12, J rises at 16, K falls at 14 and stays 0. Before that, 40 ticks bring the circuit to its start.
    """
    bench, at = worked_circuit()
    start = 40
    events: list[tuple[int, Event]] = [on(at["B"]), on(at["C"])]
    events += [on(at["A"], start), off(at["C"], start + 2), off(at["B"], start + 4), off(at["A"], start + 8)]
    done = bench.watch([at[name] for name in "EHJK"], events)
    seen = {
        name: [(tick - start, strength // 15) for tick, strength in done.probes[at[name]] if tick >= start]
        for name in "EHJK"
    }
    assert seen == {"E": [(12, 0)], "H": [(8, 1), (16, 0)], "J": [(16, 1)], "K": [(14, 0)]}


def test_a_static_1_hazard() -> None:
    """y = a·b + b̄·c in NAND gates of delay 1 with a NOT of delay 2 (published exercise on gate delays): with
    a = b = c = 1 and b falling at 2, y falls at 4 and rises at 6. A unit of delay is two ticks here.
    """
    bench = Bench()
    a, b, c = bench.put("lever", 0, 0), bench.put("lever", 0, 2), bench.put("lever", 3, 8)
    y = _hazard(bench)
    begin = 40
    done = bench.watch([y], [on(a), on(b), on(c), off(b, begin + 4)])
    assert [(t - begin, s > 0) for t, s in done.probes[y] if t >= begin] == [(8, False), (12, True)]
    back = bench.watch([y], [on(a), on(b), on(c), off(b, begin + 4), on(b, begin + 14)])
    assert [(t - begin, s > 0) for t, s in back.probes[y] if begin <= t][:2] == [(8, False), (12, True)]
    assert all(s for t, s in back.probes[y] if t >= begin + 12)


def _hazard(bench: Bench) -> Cell:
    """Two NAND gates of two torches on one dust each, and a third that joins them; gives its dust.

    The levers stand in front of the dust at 1 0 (a), 1 2 and 0 3 (b), and 4 8 (c).
    """
    for x, z in ((1, 0), (1, 2), (4, 6), (4, 8)):
        bench.put("dust", x, z)
        bench.put("solid-block", x + 1, z)
        bench.put("torch", x + 2, z, E)
    bench.line(0, 3, 4, S)
    bench.put("repeater", 1, 6, E, delay=2)
    bench.put("solid-block", 2, 6)
    bench.put("torch", 3, 6, E)
    bench.line(4, 0, 3, S)
    bench.line(5, 1, 4)
    bench.line(7, 6, 3, S)
    bench.put("dust", 8, 7)
    for z in (1, 7):
        bench.put("solid-block", 9, z)
        bench.put("torch", 10, z, E)
    return bench.line(11, 1, 7, S)[0]
