"""The module that the builder has in hand: which one, how it is set, and how it is turned."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import Final

import msgspec

from model.grid import Cell, Turn
from model.parts import RAILS
from model.pieces import Piece
from model.wiring.modules.modules import Module, load_module, trial_plan

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

    def track(self, at: Cell) -> tuple[Piece, ...]:
        """The rails about it in its file, which are not its own: where it wants track to be."""
        own = load_module(self.name, **self.parameters)
        trial = trial_plan(self.name, **self.parameters)
        rails = [piece for piece in trial.pieces if piece.part in RAILS and piece.at not in own.cells]
        return msgspec.structs.replace(own, pieces=tuple(rails)).turned(self.turn, at).pieces
