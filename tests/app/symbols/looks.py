"""Every symbol and every state that must be told apart, with a name for messages."""

from __future__ import annotations

from dataclasses import replace

from app.canvas.symbols import Look
from model.grid import Facing, Heading
from model.parts import Mode, Part
from model.track.shapes import Shape

LEVEL_LINE = frozenset({Heading.EAST, Heading.WEST})
CURVE = Look(Part.RAIL, shape=Shape.SOUTH_EAST)
SWITCH = replace(CURVE, other_shape=Shape.NORTH_EAST)
THROWN = Look(Part.RAIL, shape=Shape.NORTH_EAST, other_shape=Shape.SOUTH_EAST, powered=True)


def _on_and_off(look: Look, name: str) -> dict[str, Look]:
    return {name: look, f"{name}, on": replace(look, on=True)}


LOOKS: dict[str, Look] = {
    "straight": Look(Part.RAIL, shape=Shape.NORTH_SOUTH),
    "curve": CURVE,
    "curve with run-through": replace(CURVE, run_through=(Shape.EAST_WEST,)),
    "rising": Look(Part.RAIL, shape=Shape.RISING_NORTH),
    "switch at rest": SWITCH,
    "switch powered": THROWN,
    "switch at rest, inverter": replace(SWITCH, inverter=True),
    "switch powered, inverter": replace(THROWN, inverter=True),
    **_on_and_off(Look(Part.BOOSTER_RAIL, shape=Shape.NORTH_SOUTH), "booster"),
    **_on_and_off(Look(Part.DETECTOR_RAIL, shape=Shape.NORTH_SOUTH), "detector"),
    "solid": Look(Part.SOLID_BLOCK),
    "solid, weak power": Look(Part.SOLID_BLOCK, power=7),
    "solid, strong power": Look(Part.SOLID_BLOCK, power=15, strong=True),
    "target, weak power": Look(Part.TARGET_BLOCK, power=7),
    "target, strong power": Look(Part.TARGET_BLOCK, power=15, strong=True),
    "glass": Look(Part.GLASS),
    "slab": Look(Part.SLAB),
    "target": Look(Part.TARGET_BLOCK),
    "dust": Look(Part.DUST, strength=0, links=LEVEL_LINE),
    "dust, on": Look(Part.DUST, strength=13, links=LEVEL_LINE),
    **_on_and_off(Look(Part.TORCH, Facing.UP), "torch on top"),
    "torch on top, burnt out": Look(Part.TORCH, Facing.UP, burnt=True),
    **_on_and_off(Look(Part.TORCH, Facing.NORTH), "torch on side"),
    "torch on side, burnt out": Look(Part.TORCH, Facing.NORTH, burnt=True),
    **_on_and_off(Look(Part.REPEATER), "repeater"),
    **_on_and_off(Look(Part.REPEATER, locked=True), "repeater, locked"),
    **_on_and_off(Look(Part.COMPARATOR), "comparator, compare"),
    **_on_and_off(Look(Part.COMPARATOR, mode=Mode.SUBTRACT), "comparator, subtract"),
    **_on_and_off(Look(Part.LEVER, Facing.UP), "lever"),
    **_on_and_off(Look(Part.BUTTON, Facing.UP), "button"),
    **_on_and_off(Look(Part.HOPPER, Facing.DOWN), "hopper down"),
    **_on_and_off(Look(Part.HOPPER, Facing.EAST), "hopper sideways"),
    **_on_and_off(Look(Part.BARREL), "barrel"),
    **_on_and_off(Look(Part.AUTO_CRAFTER), "auto-crafter"),
    "auto-crafter up": Look(Part.AUTO_CRAFTER, Facing.UP),
    "auto-crafter down": Look(Part.AUTO_CRAFTER, Facing.DOWN),
    **_on_and_off(Look(Part.LAMP), "lamp"),
}
