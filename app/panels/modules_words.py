"""What the page of a module says."""

from __future__ import annotations

from typing import Final

from app.panels.words import counted
from model.wiring.modules.modules import Module, Port

_UP_AND_DOWN: Final = {"up": "into the block above", "down": "into the block below"}


def level_words(rise: int) -> str:
    """Where a level lies, from the one that is shown when the module is put down."""
    if rise == 0:
        return "level shown"
    return f"{abs(rise)} above" if rise > 0 else f"{-rise} below"


def facts_words(module: Module) -> str:
    """Its delay and its size."""
    levels = counted(module.depth, "level")
    columns = counted(len(module.footprint), "column")
    return f"Delay {module.delay} ticks, {columns}, {levels}, {counted(len(module.pieces), 'piece')}."


def port_words(number: int, port: Port) -> str:
    """A row of the list of ports: ``1 set: in, going east``."""
    way = _UP_AND_DOWN.get(port.facing, f"going {port.facing}")
    kind = "carts" if port.kind == "track" else port.kind
    return f"{number}  {port.name}: {kind}, {way}" if port.name != kind else f"{number}  {kind}, {way}"


def spoken(module: Module) -> str:
    """The picture in words, for a screen reader."""
    ports = "; ".join(port_words(number, port) for number, port in enumerate(module.ports, 1))
    return f"{module.title}. Ports: {ports}."
