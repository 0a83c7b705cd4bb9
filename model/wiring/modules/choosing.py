"""Which shapes of the inverter fit into a given box."""

from __future__ import annotations

from typing import Final

from model.grid import Turn
from model.wiring.modules.modules import Module, load_module

_Shapes = tuple[tuple[str, dict[str, object]], ...]
_INVERTING: Final[_Shapes] = (
    ("inverter-upright", {}),
    ("inverter-flat", {}),
    ("torch-stack", {"torches": 3}),
)
_LEAVING: Final[_Shapes] = (("torch-stack", {"torches": 2}), ("side-drive", {}))


def inverters_fitting(wide: int, high: int, long: int) -> tuple[Module, ...]:
    """The shapes that turn a signal round and fit into a box of so many cells (x, y, z), fewest pieces first.

    Each lies about its own origin, a quarter round where only that fits. The height is that of its own
    pieces: what a torch on top drives stands over the box.
    """
    return _fitting(_INVERTING, (wide, high, long))


def drives_fitting(wide: int, high: int, long: int) -> tuple[Module, ...]:
    """The same for what drives a switch and leaves the signal as it is, from below or from the side."""
    return _fitting(_LEAVING, (wide, high, long))


def _fitting(shapes: _Shapes, box: tuple[int, int, int]) -> tuple[Module, ...]:
    """Of each shape that fits, the way in which it does; where both ways do, the one of the file."""
    found: dict[str, Module] = {}
    for name, parameters in shapes:
        module = load_module(name, **parameters)
        for way in (module, module.turned(Turn(1), module.origin)):
            if _fits(way, box):
                found.setdefault(name, way)
    return tuple(sorted(found.values(), key=lambda module: len(module.pieces)))


def _fits(module: Module, box: tuple[int, int, int]) -> bool:
    axes = zip(*(piece.at for piece in module.pieces), strict=True)
    return all(max(axis) - min(axis) < room for axis, room in zip(axes, box, strict=True))
