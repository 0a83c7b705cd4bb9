"""A case for the model, and what the model and the plain dry run show, in the same words."""

from __future__ import annotations

from collections.abc import Iterator

import msgspec

from model.dry_run import DryRun as Engine
from model.dry_run import Event, Fill, Lever, Press, Send
from model.grid import Cell
from model.pieces import Held, Piece
from model.plan import Details, Plan, plan_of
from tests.oracle.adapter import FACING_OF, PART_OF, WORD_OF, plan_from
from tests.oracle.dry_run import DryRun
from tests.oracle.dry_run_cases import Case
from tests.oracle.dry_run_pieces import SLOTS
from tests.oracle.dry_run_pieces import Piece as PlainPiece
from tests.oracle.shapes import RAIL_PARTS

Shown = dict[str, object]


def model_piece(piece: PlainPiece) -> Piece:
    """A piece of the model."""
    held = tuple(Held(item, count) for item, count in piece.holds)
    made = Piece(PART_OF[piece.part], Cell(*piece.at), FACING_OF[piece.facing], piece.delay)
    mode = msgspec.convert(piece.mode, type(made.mode))
    return msgspec.structs.replace(made, mode=mode, wooden=piece.wooden, holds=held)


def model_plan(case: Case) -> Plan:
    """The plan of a case for the model."""
    arms = plan_from((), case.arms).details.arms
    return plan_of([model_piece(piece) for piece in case.pieces], Details(arms=arms))


def model_event(event: dict) -> Event:
    """An event of a script for the model."""
    if event["do"] == "send":
        return Send(event["arm"], tuple(loads(event)), event["gap"])
    at = Cell(*event["at"])
    if event["do"] == "lever":
        return Lever(at, event["on"])
    if event["do"] == "button":
        return Press(at)
    return Fill(at, tuple(Held(held["item"], held["count"]) for held in event["holds"]))


def loads(event: dict) -> Iterator[tuple[tuple[str, int], ...]]:
    """What is in each cart of a train."""
    for number in range(event["carts"]):
        waybills = event["waybills"]
        yield tuple((waybills[number] if isinstance(waybills, list) else waybills).items())


def shown_by_model(run: Engine, case: Case) -> Shown:
    """Whatever can be seen of it after a tick."""
    pieces = [(piece.part, Cell(*piece.at)) for piece in case.pieces]
    lost = [(found.cart, tuple(found.at), str(found.why)) for found in (*run.lost, *run.running)]
    return {
        "probes": {tuple(at): run.output(at) for _, at in pieces},
        "shapes": {tuple(at): WORD_OF[run.shape(at)] for part, at in pieces if part in RAIL_PARTS},
        "contents": {tuple(at): list(run.contents(at)) for part, at in pieces if part in SLOTS},
        "carts": sorted((cart.cart, tuple(cart.at)) for cart in run.carts),
        "arrivals": sorted((a.cart, a.tick, a.arm, tuple(sorted(a.carries))) for a in run.arrivals),
        "lost": sorted(lost),
        "unsure": sorted((found.tick, *map(tuple, found.at)) for found in run.unsure),
    }


def shown_by_oracle(run: DryRun) -> Shown:
    """The same of the plain dry run."""
    state = run.state
    return {
        "probes": {at: run.probe(at) for at in run.pieces},
        "shapes": dict(state.track.shape),
        "contents": {at: list(slots) for at, slots in state.slots.items()},
        "carts": sorted((cart.number, cart.at) for cart in state.carts if cart.at is not None),
        "arrivals": sorted((*found[:3], tuple(sorted(found[3].items()))) for found in state.arrivals),
        "lost": sorted(run.all_lost()),
        "unsure": sorted(run.unsure),
    }


def first_difference(case: Case) -> str | None:
    """The first tick after which the two show something else, in words; ``None`` where they never do."""
    engine, plain = Engine(model_plan(case)), DryRun(case.pieces, case.arms)
    for tick in range(case.ticks):
        events = case.events_at(tick)
        engine.step([model_event(event) for event in events])
        plain.step(events)
        ours, theirs = shown_by_model(engine, case), shown_by_oracle(plain)
        if ours != theirs:
            return f"tick {tick}: {told(ours, theirs)}"
    return None


def told(ours: Shown, theirs: Shown) -> str:
    """What differs: first the model's, then the plain one's."""
    words = []
    for name, mine in ours.items():
        other = theirs[name]
        if isinstance(mine, dict):
            words += [f"{name} {at}: {mine[at]}, not {other[at]}" for at in mine if mine[at] != other[at]]
        elif mine != other:
            words.append(f"{name}: {mine}, not {other}")
    return "; ".join(words)
