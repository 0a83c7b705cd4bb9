"""A builder who reads only the steps, and what an inspector finds in the work.

The builder knows the rules of the world from the second implementation, and nothing of the plan. The
inspector has the plan, as the pieces of its file. Both take steps and pieces as they stand in JSON.
"""

from __future__ import annotations

from collections import Counter
from typing import Any

import msgspec

from model.files.encoding import piece_value
from model.plan import Plan
from model.steps import build_steps
from tests.oracle.carts import STOPPERS
from tests.oracle.shapes import BACK, ENDS, RAIL_PARTS, STEP, Place, Track, build

Doc = dict[str, Any]
CARRIERS = STOPPERS
"""What a cart cannot run into is just what carries."""
LYING_PARTS = (*RAIL_PARTS, "dust", "repeater", "comparator")
HELD_PARTS = ("torch", "lever", "button")
SIGNAL_PARTS = ("dust", "repeater", "comparator", *HELD_PARTS)
SOLID = ("solid-block", "target-block", "barrel", "auto-crafter", "lamp")
UP, DOWN = (0, 1, 0), (0, -1, 0)
LEVEL = {way: (dx, 0, dz) for way, (dx, dz) in STEP.items()}
SIX = {**LEVEL, "up": UP, "down": DOWN}


def steps_of(plan: Plan) -> list[Doc]:
    """The steps as JSON gives them."""
    docs = [
        {
            "step": step.number,
            "level": step.level,
            "title": step.title,
            "why": step.why,
            "see": step.see,
            "place": [piece_value(piece) for piece in step.place],
            "shapes": [{"at": cell, "shape": shape.word} for cell, shape in step.shapes.items()],
        }
        for step in build_steps(plan)
    ]
    return msgspec.json.decode(msgspec.json.encode(docs))


def pieces_of(plan: Plan) -> list[Doc]:
    """The pieces as the plan's file has them."""
    return msgspec.json.decode(msgspec.json.encode([piece_value(piece) for piece in plan.pieces]))


def place_of(doc: Doc) -> Place:
    """Where a piece stands."""
    return tuple(doc["at"])


def built(steps: list[Doc]) -> Track:
    """The rails after all steps, in a world that was empty; each step shows what it says."""
    track = Track()
    for step in steps:
        before = dict(track.shape)
        for doc in step["place"]:
            if doc["part"] in RAIL_PARTS:
                track.place(doc["part"], place_of(doc), doc["facing"])
        changed = {at: shape for at, shape in track.shape.items() if before.get(at) != shape}
        assert {place_of(entry): entry["shape"] for entry in step["shapes"]} == changed, step
    return track


def inspect(pieces: list[Doc], steps: list[Doc]) -> None:
    """All that is promised of the steps of a plan. Raises AssertionError."""
    assert [step["step"] for step in steps] == [*range(1, len(steps) + 1)]
    placed = [doc for step in steps for doc in step["place"]]
    assert Counter(map(repr, map(sorted_items, placed))) == Counter(map(repr, map(sorted_items, pieces)))
    wanted = build([(doc["part"], place_of(doc), doc.get("facing", "north")) for doc in pieces])
    assert built(steps).shape == wanted.shape
    inspect_carrying(pieces, steps, wanted)
    inspect_signals(pieces, steps)
    inspect_levels(steps)


def sorted_items(doc: Doc) -> list[tuple[str, Any]]:
    """A piece, whatever the order of its keys."""
    return sorted(doc.items())


def moved(at: Place, by: Place) -> Place:
    """The cell that far off."""
    return (at[0] + by[0], at[1] + by[1], at[2] + by[2])


def back_of(doc: Doc) -> Place:
    """The cell of the block that a torch, lever or button stands on or hangs from."""
    facing = doc.get("facing", "up")
    opposite = {"up": "down", "down": "up", **BACK}[facing]
    return moved(place_of(doc), SIX[opposite])


def carried_by(doc: Doc, track: Track) -> list[Place]:
    """The cells that must carry a piece once the plan is built."""
    at = place_of(doc)
    if doc["part"] in HELD_PARTS:
        return [back_of(doc)]
    cells = [moved(at, DOWN)] if doc["part"] in LYING_PARTS else []
    if at in track.shape:
        cells += [moved(at, LEVEL[way]) for way, rise in ENDS[track.shape[at]] if rise]
    return cells


def inspect_carrying(pieces: list[Doc], steps: list[Doc], track: Track) -> None:
    """What carries a piece stands before it; what nothing carries has a ``why``."""
    carriers = {place_of(doc) for doc in pieces if doc["part"] in CARRIERS}
    standing: set[Place] = set()
    for step in steps:
        for doc in step["place"]:
            needed = carried_by(doc, track)
            assert standing.issuperset(cell for cell in needed if cell in carriers), step
            assert step.get("why") or carriers.issuperset(needed), step
            standing.add(place_of(doc))


def touched_rails(doc: Doc, part_at: dict[Place, str]) -> set[Place]:
    """The rails beside a signal part, or at a block that it powers, stands on or hangs from.

    Dust is left out where it may or may not point into the block.
    """
    at = place_of(doc)
    blocks = [back_of(doc)] if doc["part"] in HELD_PARTS else [moved(at, DOWN)]
    ahead = {
        "torch": UP,
        "repeater": LEVEL.get(doc.get("facing", "")),
        "comparator": LEVEL.get(doc.get("facing", "")),
    }
    front = ahead.get(doc["part"])
    if front is not None and part_at.get(moved(at, front)) in SOLID:
        blocks.append(moved(at, front))
    near = [at, *(cell for cell in blocks if part_at.get(cell) in CARRIERS)]
    beside = {moved(cell, by) for cell in near for by in SIX.values()}
    return {cell for cell in beside if part_at.get(cell) in RAIL_PARTS}


def inspect_signals(pieces: list[Doc], steps: list[Doc]) -> None:
    """A signal part comes after the rails that it would power or give notice."""
    part_at = {place_of(doc): doc["part"] for doc in pieces}
    standing: set[Place] = set()
    for step in steps:
        for doc in step["place"]:
            if doc["part"] in SIGNAL_PARTS:
                assert touched_rails(doc, part_at) <= standing, step
            standing.add(place_of(doc))


def inspect_levels(steps: list[Doc]) -> None:
    """A step is all on one level, and below what stands already only with a ``why``."""
    highest = steps[0]["level"] if steps else 0
    for step in steps:
        assert {doc["at"][1] for doc in step["place"]} == {step["level"]}
        assert step["level"] >= highest or step.get("why"), step
        highest = max(highest, step["level"])
