"""What the page of a module says."""

from __future__ import annotations

from typing import Final

from app.translation import QT_TR_NOOP, tr
from model.wiring.modules.modules import Module, Port

_UP_AND_DOWN: Final = {"up": QT_TR_NOOP("into the block above"), "down": QT_TR_NOOP("into the block below")}


def level_words(rise: int) -> str:
    """Where a level lies, from the one that is shown when the module is put down."""
    if rise == 0:
        return tr("level shown")
    return tr("{abs} above", abs=abs(rise)) if rise > 0 else tr("{value} below", value=-rise)


def facts_words(module: Module) -> str:
    """Its delay and its size."""
    levels = tr("%n level(s)", "", module.depth)
    columns = tr("%n column(s)", "", len(module.footprint))
    return tr(
        "Delay {delay} ticks, {columns}, {levels}, {counted}.",
        delay=module.delay,
        columns=columns,
        levels=levels,
        counted=tr("%n piece(s)", "", len(module.pieces)),
    )


def port_words(number: int, port: Port) -> str:
    """A row of the list of ports: ``1 set: in, going east``."""
    way = _UP_AND_DOWN.get(port.facing, tr("going {facing}", facing=tr(port.facing)))
    kind, name = tr("carts" if port.kind == "track" else port.kind), tr(port.name)
    return f"{number}  {name}: {kind}, {way}" if name != kind else f"{number}  {kind}, {way}"


def spoken(module: Module) -> str:
    """The picture in words, for a screen reader."""
    ports = "; ".join(port_words(number, port) for number, port in enumerate(module.ports, 1))
    return tr("{title}. Ports: {ports}.", title=tr(module.title), ports=ports)
