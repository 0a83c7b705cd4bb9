"""The module that the builder has in hand: which one, how it is set, and how it is turned."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import Final

from model.grid import Cell, Turn
from model.wiring.modules import Module, load_module

AS_DRAWN: Final = Turn()
QUARTER: Final = Turn(1)
MIRROR: Final = Turn(0, mirror=True)


@dataclass(frozen=True)
class ModuleHand:
    """A module by name, with the parameters that were set."""

    name: str = "reader"
    parameters: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    turn: Turn = AS_DRAWN

    def holding(self, name: str) -> ModuleHand:
        """Another module, turned as the one in hand, with its own first parameters."""
        return self if name == self.name else ModuleHand(name, turn=self.turn)

    def setting(self, parameter: str, value: str) -> ModuleHand:
        """The same with a parameter set. Raises EditRefused for a value that it cannot have."""
        set_so = replace(self, parameters=MappingProxyType({**self.parameters, parameter: value}))
        load_module(set_so.name, **set_so.parameters)
        return set_so

    def turned(self, turn: Turn) -> ModuleHand:
        """Turned further."""
        return replace(self, turn=self.turn.then(turn))

    def module(self, at: Cell) -> Module:
        """The module with its origin in a cell."""
        return load_module(self.name, **self.parameters).turned(self.turn, at)
