"""What holds for every plan, however it is put together."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from model.dry_run import Drop, DryRun, Event, Fill, Lever, Press
from model.grid import ALL_TURNS, Cell, Heading, Turn
from model.parts import RAILS, TRAITS, Part
from model.pieces import Held, Piece
from model.plan import Plan, plan_of
from model.track.layout import Layout
from tests.strategies import piece_lists

TICKS = 30
WIRED = st.sampled_from(
    [
        *[Part.DUST] * 4,
        *[Part.SOLID_BLOCK] * 3,
        Part.TORCH,
        Part.REPEATER,
        Part.COMPARATOR,
        Part.LEVER,
        Part.LEVER,
        Part.LAMP,
        Part.GLASS,
        Part.TARGET_BLOCK,
        Part.BUTTON,
    ]
)
ANYTHING = st.sampled_from([*Part, Part.RAIL, Part.DUST, Part.LEVER, Part.HOPPER, Part.DETECTOR_RAIL])

Script = dict[int, list[Event]]


def event_at(piece: Piece, flag: bool, heading: Heading) -> Event | None:
    """Something that can be done to a piece."""
    if piece.part is Part.LEVER:
        return Lever(piece.at, flag)
    if piece.part is Part.BUTTON:
        return Press(piece.at)
    if piece.part in RAILS:
        return Drop(piece.at, heading, (("Salt", 2),))
    return Fill(piece.at, (Held("ingot", 1),)) if TRAITS[piece.part].slots else None


@st.composite
def scripts(draw: st.DrawFn, pieces: list[Piece]) -> Script:
    script: Script = {}
    for piece in pieces:
        for tick in draw(st.lists(st.integers(0, TICKS - 1), max_size=2)):
            event = event_at(piece, draw(st.booleans()), draw(st.sampled_from(Heading)))
            if event is not None:
                script.setdefault(tick, []).append(event)
    return script


@st.composite
def runs(draw: st.DrawFn, part: st.SearchStrategy[Part]) -> tuple[list[Piece], Script]:
    pieces = draw(piece_lists(4, 40, part))
    return pieces, draw(scripts(pieces))


def looks(run: DryRun, plan: Plan) -> dict[Cell, object]:
    """All that can be seen of each cell."""
    carts: dict[Cell, list[object]] = {}
    for cart in run.carts:
        carts.setdefault(cart.at, []).append((cart.cart, cart.heading))
    cells = {piece.at for piece in plan.pieces} | carts.keys()
    return {
        at: (run.output(at), run.block_power(at), run.shape(at), run.contents(at), carts.get(at))
        for at in cells
    }


@given(runs(ANYTHING))
def test_every_cell_that_looks_otherwise_is_among_those_that_changed(run: tuple[list[Piece], Script]) -> None:
    pieces, script = run
    plan = plan_of(pieces)
    layout = Layout(plan)
    shapes = dict(layout.shapes)
    dry_run = DryRun(plan, layout)
    before = looks(dry_run, plan)
    for tick in range(TICKS):
        dry_run.step(script.get(tick, ()))
        after = looks(dry_run, plan)
        assert {at for at in before if before[at] != after[at]} <= dry_run.changed
        before = after
    assert dict(layout.shapes) == shapes, "the layout stays as it is"


@given(runs(WIRED), st.sampled_from(ALL_TURNS))
@settings(max_examples=60)
def test_a_turned_circuit_does_the_same(run: tuple[list[Piece], Script], turn: Turn) -> None:
    """No signal part knows north from east, or left from right."""
    pieces, script = run
    other = [
        Piece(p.part, turn.cell(p.at), turn.facing(p.facing), p.delay, p.mode, p.wooden, p.holds)
        for p in pieces
    ]
    one, turned = DryRun(plan_of(pieces)), DryRun(plan_of(other))
    for tick in range(TICKS):
        events = script.get(tick, [])
        one.step(events)
        turned.step([turned_event(event, turn) for event in events])
        assert {p.at: one.output(p.at) for p in pieces} == {
            p.at: turned.output(turn.cell(p.at)) for p in pieces
        }
        assert len(one.unsure) == len(turned.unsure)


def turned_event(event: Event, turn: Turn) -> Event:
    if isinstance(event, Lever):
        return Lever(turn.cell(event.at), event.on)
    assert isinstance(event, Press)
    return Press(turn.cell(event.at))
