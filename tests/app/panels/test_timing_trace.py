"""What is drawn of a trace, and the axis of time, without a screen."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from app.panels.timing_axis import MARKS, STEPS, TimeAxis
from app.panels.timing_trace import Span, Trace, seconds
from model.grid import Cell
from model.parts import Part
from model.pieces import new_piece

AT = Cell(-1, 64, 4)

CHANGES = st.lists(st.tuples(st.integers(0, 300), st.integers(0, 15)), max_size=60).map(
    lambda found: sorted(dict(found).items())
)


def trace_of(part: Part, *changes: tuple[int, int]) -> Trace:
    trace = Trace(AT, new_piece(part, AT))
    trace.extend(changes)
    return trace


def plainly(changes: list[tuple[int, int]], tick: int) -> int | None:
    """The reading in a tick, looked for one by one."""
    read = None
    for at, value in changes:
        if at <= tick:
            read = value
    return read


@settings(deadline=None)
@given(CHANGES, st.integers(0, 320))
def test_a_reading_holds_until_the_next(changes: list[tuple[int, int]], tick: int) -> None:
    trace = trace_of(Part.DUST, *changes)
    assert trace.value_at(tick) == plainly(changes, tick)
    assert trace.change_before(tick) == max((at for at, _ in changes if at < tick), default=None)
    assert trace.change_after(tick) == min((at for at, _ in changes if at > tick), default=None)


@settings(deadline=None)
@given(CHANGES, st.integers(0, 320), st.integers(1, 100))
def test_spans_tell_every_tick_where_there_is_room(
    changes: list[tuple[int, int]], start: int, long: int
) -> None:
    spans = [*trace_of(Part.DUST, *changes).spans(start, start + long)]
    for tick in range(start, start + long):
        told = [span for span in spans if span.start <= tick < span.end]
        read = plainly(changes, tick)
        assert [(span.low, span.high) for span in told] == ([] if read is None else [(read, read)])


@settings(deadline=None)
@given(CHANGES, st.integers(0, 200), st.floats(0.3, 40), st.integers(1, 300))
def test_spans_are_few_and_hide_nothing(
    changes: list[tuple[int, int]], start: int, least: float, long: int
) -> None:
    """However many changes fall together, each reading lies within what is drawn of its tick."""
    spans = [*trace_of(Part.DUST, *changes).spans(start, start + long, least)]
    assert len(spans) <= 2 * long / least + 2
    assert all(before.end == after.start for before, after in pairwise(spans)), "without gap or overlap"
    for tick in range(start, start + long):
        read = plainly(changes, tick)
        if read is not None:
            told = [span for span in spans if span.start <= tick < span.end or span.start == tick]
            assert any(span.low <= read <= span.high for span in told), (tick, read, spans)


def test_a_long_trace_costs_no_more_than_what_is_seen() -> None:
    trace = trace_of(Part.TORCH, *((tick, 15 * (tick % 2)) for tick in range(12_000)))
    assert [*trace.spans(6_000, 6_003)] == [
        Span(6_000, 6_001, 0, 0),
        Span(6_001, 6_002, 15, 15),
        Span(6_002, 6_003, 0, 0),
    ]
    assert [*trace.spans(0, 12_000, 12_000 / 400)] == [Span(0, 12_000, 0, 15)], "one black bar"
    noise = trace_of(Part.DUST, *((tick, tick * tick % 16) for tick in range(12_000)))
    assert len([*noise.spans(0, 12_000, 12_000 / 400)]) <= 802, "two for each of 400 pixels, and the ends"


@pytest.mark.parametrize(
    ("part", "off", "on"),
    [
        (Part.DUST, "strength 0", "strength 9"),
        (Part.COMPARATOR, "output 0", "output 9"),
        (Part.SOLID_BLOCK, "power 0", "power 9"),
        (Part.RAIL, "at rest", "powered"),
        (Part.BOOSTER_RAIL, "brakes", "drives"),
        (Part.TORCH, "out", "lit"),
        (Part.LEVER, "off", "on"),
    ],
)
def test_a_reading_is_said_as_builders_say_it(part: Part, off: str, on: str) -> None:
    trace = trace_of(part)
    assert (trace.words(None), trace.words(0), trace.words(9)) == ("not read yet", off, on)


def test_a_sentence_says_since_when_and_what_comes() -> None:
    trace = trace_of(Part.DUST, (0, 0), (38, 12), (58, 5))
    assert trace.sentence(37) == "Dust −1 64 4: strength 0 since tick 0, strength 12 from tick 38"
    assert trace.sentence(38) == "Dust −1 64 4: strength 12 since tick 38, strength 5 from tick 58"
    assert trace.sentence(99) == "Dust −1 64 4: strength 5 since tick 58"
    assert trace_of(Part.DUST).sentence(0) == "Dust −1 64 4: not read yet"


def test_a_switch_goes_by_its_name_and_an_empty_cell_says_so() -> None:
    assert Trace(AT, new_piece(Part.RAIL, AT), "S2").name == "S2"
    assert Trace(AT).name == "Nothing"


def test_seconds_are_twentieths() -> None:
    assert [seconds(tick) for tick in (0, 1, 2, 20, 119)] == ["0 s", "0.05 s", "0.1 s", "1 s", "5.95 s"]


@settings(deadline=None)
@given(st.floats(0, 10_000), st.sampled_from(STEPS), st.integers(0, 900), st.booleans())
def test_what_is_under_the_pointer_stays_there_when_zooming(
    first: float, scale: float, x: int, closer: bool
) -> None:
    axis = TimeAxis(900, first, scale)
    after = axis.zoomed(closer, x)
    under = axis.first + x / axis.scale
    assert after.first >= 0
    if after.first > 0:
        assert after.x(under) == pytest.approx(x, abs=1e-3)
    assert (after.scale > axis.scale) == (closer and scale < STEPS[-1])
    assert (after.scale < axis.scale) == (not closer and scale > STEPS[0])


def test_zooming_goes_on_from_a_scale_between_the_steps() -> None:
    fitted = TimeAxis(900).fitted(1_000)
    assert fitted.scale == 0.9
    assert fitted.last == pytest.approx(1_000)
    assert fitted.zoomed(True, 0).scale == 1.0
    assert fitted.zoomed(False, 0).scale == 0.5


@settings(deadline=None)
@given(st.floats(0, 10_000), st.sampled_from(STEPS))
def test_marks_stand_apart_and_on_round_ticks(first: float, scale: float) -> None:
    axis = TimeAxis(900, first, scale)
    marks = [*axis.marks(64)]
    assert all(axis.first <= mark <= axis.last for mark in marks)
    apart = {after - before for before, after in pairwise(marks)}
    assert len(apart) <= 1
    assert apart <= set(MARKS)
    assert all(step * scale >= 64 for step in apart)


def test_a_tick_is_found_again_at_its_middle() -> None:
    axis = TimeAxis(900, 12.5, 8)
    assert [axis.tick_at(axis.middle(tick)) for tick in range(13, 120)] == [*range(13, 120)]


def test_a_tick_out_of_sight_is_brought_to_the_middle_and_one_in_sight_moves_nothing() -> None:
    axis = TimeAxis(900, 0, 9)
    assert axis.showing(99) is axis
    assert axis.showing(100).first == pytest.approx(50.5)
    assert axis.begun_at(60).showing(3).first == 0
