"""What the page of a module says."""

from __future__ import annotations

from typing import Final

from app.translation import QT_TR_NOOP, tr
from model.wiring.modules.modules import Module, Port

_UP_AND_DOWN: Final = {"up": QT_TR_NOOP("into the block above"), "down": QT_TR_NOOP("into the block below")}

IN_TICKS: Final = QT_TR_NOOP("Hold, ticks")
PARAMETER_TIPS: Final = {
    "hold": QT_TR_NOOP("For how many ticks it stays on after its input went off"),
    "lead": QT_TR_NOOP("Where its repeater lies: under the switch, or along the free side"),
    "line": QT_TR_NOOP("Where its line starts: ahead of the carts, or aside of their way"),
    "outputs": QT_TR_NOOP("The second one gives the other state, through a torch"),
    "ring": QT_TR_NOOP("Where the ring lies that keeps the line on, and how long it does; see below"),
    "torches": QT_TR_NOOP("Two leave the signal as it is, three turn it round"),
    "way": QT_TR_NOOP("To which side of the block the torch hangs, as the reader faces"),
    "waybill": QT_TR_NOOP("The waybill that it takes out of the carts"),
}
"""By parameter, what it sets."""


def parameter_word(name: str) -> str:
    """A parameter as it stands before its field."""
    return tr(IN_TICKS) if name == "hold" else tr(name.capitalize())


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
