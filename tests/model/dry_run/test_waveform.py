"""The value change dump, read back by pyvcd, a reader from PyPI that shares no code with the writer."""

from __future__ import annotations

import io
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st
from vcd.common import TimescaleMagnitude, TimescaleUnit, VarType
from vcd.reader import TokenKind, tokenize

from model.dry_run import DryRun, Lever, Probes
from model.dry_run.waveform import STRENGTHS, Wave, value_change_dump
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece, new_piece
from model.plan import plan_of

Readings = dict[str, list[tuple[int, int | str]]]
"""By the name of the signal: tick and value of the first reading and of each change."""


class ReadBack:
    """What the reader finds in a dump."""

    def __init__(self, dump: bytes) -> None:
        self.readings: Readings = {}
        self.widths: dict[str, int] = {}
        self.comment = ""
        self.times = [0]
        names: dict[str, str] = {}
        for token in tokenize(io.BytesIO(dump)):
            if token.kind is TokenKind.COMMENT:
                self.comment = token.comment
            elif token.kind is TokenKind.TIMESCALE:
                assert (token.timescale.magnitude, token.timescale.unit) == (
                    TimescaleMagnitude.one,
                    TimescaleUnit.millisecond,
                )
            elif token.kind is TokenKind.VAR:
                var = token.var
                assert var.type_ is VarType.wire
                assert var.bit_index == ((3, 0) if var.size == 4 else None)
                names[var.id_code] = var.reference
                self.readings[var.reference] = []
                self.widths[var.reference] = var.size
            elif token.kind is TokenKind.CHANGE_TIME:
                self.times.append(token.time_change)
            elif token.kind in (TokenKind.CHANGE_SCALAR, TokenKind.CHANGE_VECTOR):
                scalar = token.kind is TokenKind.CHANGE_SCALAR
                change = token.scalar_change if scalar else token.vector_change
                tick, rest = divmod(self.times[-1], 50)
                assert rest == 0, "20 ticks a second, so one is 50 ms"
                value = (
                    change.value
                    if isinstance(change.value, int) or "x" in change.value
                    else int(change.value)
                )
                self.readings[names[change.id_code]].append((tick, value))
        assert len(names) == len(self.readings), "no two signals share a code or a name"


def readings_of(part: Part) -> st.SearchStrategy[tuple[tuple[int, int], ...]]:
    """Ticks that rise, each with another value than before it."""
    values = range(16) if part in STRENGTHS else (0, 15)
    change = st.tuples(st.integers(0, 500), st.sampled_from(values))

    def risen(changes: list[tuple[int, int]]) -> tuple[tuple[int, int], ...]:
        by_tick = sorted(dict(changes).items())
        return (*by_tick[:1], *(now for before, now in pairwise(by_tick) if now[1] != before[1]))

    return st.lists(change, max_size=12).map(risen)


CELLS = st.builds(
    Cell,
    st.integers(-10_000_000, 10_000_000),
    st.integers(-1_024, 1_023),
    st.integers(-10_000_000, 10_000_000),
)
WAVES = st.lists(
    st.tuples(CELLS, st.sampled_from(Part)).flatmap(
        lambda at: st.builds(Wave, st.just(at[0]), st.just(at[1]), readings_of(at[1]))
    ),
    max_size=8,
    unique_by=lambda wave: wave.cell,
)


@settings(deadline=None)
@given(WAVES, st.integers(0, 600), st.text(max_size=20))
def test_what_was_read_is_read_back(waves: list[Wave], ticks: int, title: str) -> None:
    found = ReadBack(value_change_dump(waves, ticks, title))
    assert len(found.readings) == len(waves)
    for wave in waves:
        assert found.widths[wave.name] == (4 if wave.part in STRENGTHS else 1)
        told = [(tick, value if wave.is_strength else int(value > 0)) for tick, value in wave.changes]
        unknown = [] if told and told[0][0] == 0 else [(0, "x")]
        assert found.readings[wave.name] == unknown + told
    assert found.times == sorted(found.times)
    last = max((tick for wave in waves for tick, _ in wave.changes), default=0)
    assert found.times[-1] == 50 * max(ticks, last + 1), "the end of the run is the last time"


def test_many_signals_have_codes_of_their_own() -> None:
    waves = [Wave(Cell(x, 64, 0), Part.LEVER, ((0, 15 * (x % 2)),)) for x in range(9_000)]
    found = ReadBack(value_change_dump(waves, 1))
    assert all(found.readings[wave.name] == [(0, wave.cell.x % 2)] for wave in waves)


def test_a_title_can_say_nothing_that_the_format_takes_for_its_own() -> None:
    wave = Wave(Cell(0, 64, 0), Part.LEVER, ((0, 0), (3, 15)))
    found = ReadBack(value_change_dump([wave], 5, "Brine$end\n#7\n1! $comment Fähre"))
    assert found.comment == "Dry run of Brine?end?#7?1! ?comment F?hre; one tick is 50 ms"
    assert found.readings == {"lever_0_64_0": [(0, 0), (3, 1)]}


def test_a_dry_run_comes_back_tick_by_tick() -> None:
    """A lever pulled at tick 3 shows in dust at tick 3 and behind a repeater with delay 4 at tick 7."""
    cells = [Cell(x, 64, 0) for x in range(-1, 4)]
    pieces = [new_piece(Part.SOLID_BLOCK, cell.moved(dy=-1)) for cell in cells]
    pieces += [
        new_piece(Part.LEVER, cells[0]),
        new_piece(Part.DUST, cells[1]),
        new_piece(Part.DUST, cells[2]),
        Piece(Part.REPEATER, cells[3], Facing.EAST, delay=4),
        new_piece(Part.DUST, cells[4]),
    ]
    plan = plan_of(pieces)
    run, probes = DryRun(plan), Probes(cells)
    for tick in range(20):
        run.step([Lever(cells[0], True)] if tick == 3 else [])
        probes.note(run, tick)
    waves = [Wave(cell, plan.pieces.part_at(cell), read) for cell, read in probes.watched.items()]
    found = ReadBack(value_change_dump(waves, run.tick))
    assert found.readings == {
        "lever_m1_64_0": [(0, 0), (3, 1)],
        "dust_0_64_0": [(0, 0), (3, 15)],
        "dust_1_64_0": [(0, 0), (3, 14)],
        "repeater_2_64_0": [(0, 0), (7, 1)],
        "dust_3_64_0": [(0, 0), (7, 15)],
    }
    assert found.times[-1] == 20 * 50
