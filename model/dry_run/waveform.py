"""What probes read as a value change dump, the waveform format of IEEE 1364 (quoted from memory).

Any waveform viewer opens it. It is plain ASCII and says nothing of when it was written, so that the same run
gives the same bytes.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Final

from msgspec import Struct

from model.grid import Cell
from model.parts import TRAITS, Part

MS_A_TICK: Final = 50
"""20 ticks a second. The format knows 1, 10 and 100 of a unit of time only, so a tick is 50 of 1 ms."""
STRENGTHS: Final = frozenset({Part.DUST, Part.COMPARATOR}) | {
    part for part, traits in TRAITS.items() if traits.solid and part not in (Part.LAMP, Part.AUTO_CRAFTER)
}
"""Parts at which a probe reads a strength, 0 to 15; at all others it reads 0 or 15."""
_FIRST, _CODES = 33, 94
"""Codes of signals are made of the printable ASCII characters from ``!`` on."""


class Wave(Struct, frozen=True):
    """What was read at a cell: the first reading and each change, tick and value, in order."""

    cell: Cell
    part: Part | None
    changes: Sequence[tuple[int, int]]

    @property
    def is_strength(self) -> bool:
        """Whether it has four bits, not one."""
        return self.part in STRENGTHS

    @property
    def name(self) -> str:
        """``dust_m1_64_0``: the part and x, y, z, a minus being an m; a name that every viewer takes."""
        part = "cell" if self.part is None else self.part.value.replace("-", "_")
        return "_".join([part, *(str(number).replace("-", "m") for number in self.cell)])


def value_change_dump(waves: Sequence[Wave], ticks: int, title: str = "") -> bytes:
    """The waves of a run of so many ticks. A wave is unknown before its first reading."""
    lines = [*_header(waves, title), *_start(waves)]
    time = 0
    for tick, change in _changes(waves):
        if tick != time:
            lines.append(f"#{tick * MS_A_TICK}")
            time = tick
        lines.append(change)
    lines.append(f"#{max(ticks, time + 1) * MS_A_TICK}")
    return ("\n".join(lines) + "\n").encode("ascii")


def _header(waves: Sequence[Wave], title: str) -> Iterator[str]:
    # A dollar sign would begin a keyword, and a line break would end the line.
    words = "".join(char if char.isascii() and char.isprintable() and char != "$" else "?" for char in title)
    yield f"$comment Dry run{f' of {words}' if words else ''}; one tick is {MS_A_TICK} ms $end"
    yield "$version Platelayer $end"
    yield "$timescale 1 ms $end"
    yield "$scope module dry_run $end"
    for index, wave in enumerate(waves):
        bits = (
            f"wire 4 {_code(index)} {wave.name} [3:0]"
            if wave.is_strength
            else f"wire 1 {_code(index)} {wave.name}"
        )
        yield f"$var {bits} $end"
    yield "$upscope $end"
    yield "$enddefinitions $end"


def _start(waves: Sequence[Wave]) -> Iterator[str]:
    yield "#0"
    yield "$dumpvars"
    for index, wave in enumerate(waves):
        first = wave.changes[0] if wave.changes else None
        yield _value(wave, index, first[1] if first and first[0] == 0 else None)
    yield "$end"


def _changes(waves: Sequence[Wave]) -> Iterable[tuple[int, str]]:
    """All but those of tick 0, by tick and then by wave."""
    found = (
        (tick, index, value) for index, wave in enumerate(waves) for tick, value in wave.changes if tick > 0
    )
    return ((tick, _value(waves[index], index, value)) for tick, index, value in sorted(found))


def _value(wave: Wave, index: int, value: int | None) -> str:
    if wave.is_strength:
        return f"b{'x' if value is None else format(value, 'b')} {_code(index)}"
    return f"{'x' if value is None else int(value > 0)}{_code(index)}"


def _code(index: int) -> str:
    code = ""
    while True:
        index, digit = divmod(index, _CODES)
        code += chr(_FIRST + digit)
        if not index:
            return code
        index -= 1
