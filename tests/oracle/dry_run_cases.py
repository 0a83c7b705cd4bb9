"""Random small plans with signal parts and scripts for them: the same seed gives the same case everywhere."""

from __future__ import annotations

import json
from random import Random
from typing import NamedTuple

from tests.oracle.carts import ArmSpec
from tests.oracle.dry_run_circuits import blinker, floored, random_circuit
from tests.oracle.dry_run_pieces import CARRIES, GIVES_IN_FRONT, SLOTS, Piece, step
from tests.oracle.dry_run_plans import random_box, random_content
from tests.oracle.shapes import RAIL_PARTS, STEP, Place

NAMES = ("Salt", "Peat")


class Case(NamedTuple):
    """A plan with what is done to it."""

    pieces: list[Piece]
    arms: list[ArmSpec]
    events: list[dict]
    ticks: int

    def events_at(self, tick: int) -> list[dict]:
        """What the script does in a tick, in the order of the script."""
        return [event for event in self.events if event["tick"] == tick]


def random_arms(random: Random, pieces: list[Piece]) -> list[ArmSpec]:
    """Ways in and out anywhere on the track."""
    rails = [piece.at for piece in pieces if piece.part in RAIL_PARTS]
    if not rails:
        return []

    def entry() -> tuple[Place, str]:
        return random.choice(rails), random.choice(tuple(STEP))

    at_edge = [(at, way) for at in rails for way in STEP if step(at, way) not in rails]
    ways_out = random.sample(at_edge, min(3, len(at_edge)))
    named = zip(("Quay", "Mill", "Fen"), ways_out, strict=False)
    return [ArmSpec(name, None if name == "Fen" else entry(), way_out) for name, way_out in named]


def random_waybills(random: Random) -> dict[str, int]:
    """A few waybills for a cart."""
    names = random.sample(NAMES, random.randint(0, 2))
    return {name: random.choice((1, 2, 65)) for name in names}


def random_event(random: Random, tick: int, pieces: list[Piece], arms: list[ArmSpec]) -> dict | None:
    """Something that a script can do with the plan."""
    enter = [arm.name for arm in arms if arm.way_in is not None]
    if enter and random.random() < 0.3:
        carts = random.choice((1, 1, 1, 2, 3))
        waybills = random_waybills(random)
        return {
            "tick": tick,
            "do": "send",
            "arm": random.choice(enter),
            "carts": carts,
            "gap": random.choice((0, 1, 2)),
            "waybills": [random_waybills(random) for _ in range(carts)]
            if random.random() < 0.3
            else waybills,
        }
    able = [piece for piece in pieces if piece.part in ("lever", "button", *SLOTS)]
    if not able:
        return None
    piece = random.choice(able)
    event = {"tick": tick, "at": list(piece.at)}
    if piece.part == "lever":
        return event | {"do": "lever", "on": random.random() < 0.55}
    if piece.part == "button":
        return event | {"do": "button"}
    holds = random_content(random, piece.part)
    return event | {"do": "fill", "holds": [{"item": item, "count": count} for item, count in holds]}


def random_events(random: Random, pieces: list[Piece], arms: list[ArmSpec], until: int) -> list[dict]:
    """A script in the order of its ticks, often with several events in one tick or close together."""
    early = (0, 1, 2, 3, 5, 8, 10)
    number = random.choice((2, 6, 6, 12, 20))
    ticks = sorted(
        random.choice((*early, *(random.randrange(until) for _ in range(7)))) for _ in range(number)
    )
    events = (random_event(random, tick, pieces, arms) for tick in ticks)
    blinks = blinking(random, pieces) if random.random() < 0.5 else []
    return [event for event in events if event is not None] + blinks


def blinking(random: Random, pieces: list[Piece]) -> list[dict]:
    """A lever that goes on and off nine times and more, in about the time in which a torch burns out."""
    levers = [piece for piece in pieces if piece.part == "lever"]
    if not levers:
        return []
    at = list(random.choice(levers).at)
    tick, pause = random.randrange(5), random.choice((1, 2, 3, 5, 7, 7, 7, 8))
    events = []
    for number in range(random.randint(9, 12)):
        events.append({"tick": tick, "at": at, "do": "lever", "on": number % 2 == 0})
        tick += pause + random.choice((0, 0, 0, 1))
    return events


def random_case(seed: int) -> Case:
    """A dense box, or a circuit with something changed in it."""
    random = Random(seed)
    if random.random() < 0.35:
        pieces = random_box(random)
        arms = random_arms(random, pieces)
    else:
        pieces, arms = random_circuit(random)
    ticks = random.choice((25, 40, 40, 80))
    events = random_events(random, pieces, arms, ticks)
    if max((event["tick"] for event in events), default=0) > 60:
        ticks = random.choice((80, 80, 240))
    return Case(pieces, arms, events, ticks)


def blinking_case(seed: int) -> Case:
    """A torch that a lever puts out again and again, for longer than a torch stays burnt out."""
    random = Random(seed)
    pieces = floored(blinker(random)[0])
    return Case(pieces, [], blinking(random, pieces), 250)


# In the words of files, for reports and for the other side.


def piece_as_file(piece: Piece) -> dict:
    """A piece as the plan file has it."""
    words: dict = {"part": piece.part, "at": list(piece.at), "facing": piece.facing}
    if piece.part in CARRIES and piece.part not in ("hopper", "auto-crafter"):
        del words["facing"]
    if piece.part in GIVES_IN_FRONT:
        words |= {"delay": piece.delay} if piece.part == "repeater" else {"mode": piece.mode}
    if piece.wooden:
        words["wooden"] = True
    if piece.holds:
        words["holds"] = [{"item": item, "count": count} for item, count in piece.holds]
    return words if piece.part != "dust" else {"part": "dust", "at": list(piece.at)}


def arm_as_file(arm: ArmSpec) -> dict:
    """An arm as the plan file has it."""
    ends = {"in": arm.way_in, "out": arm.way_out}
    found = {key: {"at": list(end[0]), "heading": end[1]} for key, end in ends.items() if end is not None}
    return {"name": arm.name} | found


def plan_as_file(pieces: list[Piece], arms: list[ArmSpec]) -> dict:
    """A whole plan file."""
    return {
        "format": "platelayer-plan",
        "version": 1,
        "pieces": [piece_as_file(piece) for piece in pieces],
        "arms": [arm_as_file(arm) for arm in arms],
    }


def script_as_file(case: Case) -> str:
    """The plan with one piece a line, then the events."""
    plan = plan_as_file(case.pieces, case.arms)
    lines = [json.dumps(entry) for entry in (*plan["pieces"], *plan["arms"], *case.events)]
    return "\n".join(lines)
