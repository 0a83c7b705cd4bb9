"""A bench for modules: levers at the ports in, and what comes out, tick by tick."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from model.dry_run import DryRun, Lever
from model.edits import turn_plan
from model.grid import ALL_TURNS, Cell, Facing, Turn
from model.parts import Part
from model.pieces import Piece, Pieces, rests_on
from model.plan import Plan
from model.wiring.modules.modules import (
    Module,
    Port,
    load_module,
    module_names,
    module_parameters,
    trial_plan,
)

Wave = Sequence[bool]
"""Whether a lever is on, tick by tick."""
WITHOUT_TRACK = tuple(name for name in module_names() if name != "reader")
"""The modules that are signals alone; the reader has tests of its own."""
CASES: tuple[tuple[str, dict[str, str]], ...] = tuple(
    (name, {} if parameter is None else {parameter.name: value})
    for name in WITHOUT_TRACK
    for parameter in module_parameters(name) or (None,)
    for value in (("",) if parameter is None else parameter.choices)
)
"""Each of them with each value of its parameter."""


class Bench:
    """A module with its trial pieces in one of the eight orientations, running."""

    def __init__(self, name: str, parameters: Mapping[str, str], turn: Turn = ALL_TURNS[0]) -> None:
        self.parameters = parameters
        plan = trial_plan(name, **parameters)
        module = load_module(name, **parameters)
        self.module = module.turned(turn, turn.cell(module.origin))
        self.plan = turn_plan(plan, turn).applied(plan)
        self.run = DryRun(self.plan)

    def without(self, cell: Cell) -> Bench:
        """The same with a piece taken out."""
        stay = Pieces.of(piece for piece in self.plan.pieces if piece.at != cell)
        self.plan = Plan(stay, self.plan.details)
        self.run = DryRun(self.plan)
        return self

    @property
    def ins(self) -> tuple[str, ...]:
        """The ports in."""
        return tuple(port.name for port in self.module.ports if port.kind == "in")

    @property
    def outs(self) -> tuple[str, ...]:
        """The ports out."""
        return tuple(port.name for port in self.module.ports if port.kind == "out")

    def strength(self, port: str) -> int:
        """What is read at a port now."""
        return self.run.output(self.module.port(port).at)

    def set(self, **levers: bool) -> None:
        """One tick, with the levers at these ports pulled; a port may have ``_`` in place of a space."""
        self.run.step([Lever(self._lever(name.replace("_", " ")), on) for name, on in levers.items()])

    def step(self, ticks: int = 1) -> None:
        """So many ticks more."""
        for _ in range(ticks):
            self.run.step()

    def answer(self, waves: Mapping[str, Wave], out: str) -> list[bool]:
        """Whether the port out is on, at each tick of the waves."""
        before = dict.fromkeys(waves, False)
        seen: list[bool] = []
        for now in zip(*waves.values(), strict=True):
            levers = dict(zip(waves, now, strict=True))
            self.set(**{name: on for name, on in levers.items() if before[name] != on})
            before = levers
            seen.append(self.strength(out) > 0)
        return seen

    def _lever(self, port: str) -> Cell:
        found = self.module.port(port)
        return found.at.beside(found.facing.opposite)


def working_pieces(module: Module) -> tuple[Piece, ...]:
    """The pieces that do more than carry: all but the blocks that only lie under another piece.

    Such a block touches nothing that is powered by it or powers it but what lies on it.
    """
    carried = {rests_on(piece) for piece in module.pieces if piece.part not in (Part.TORCH, Part.LEVER)}
    lowest = min(piece.at.y for piece in module.pieces)
    return tuple(
        piece
        for piece in module.pieces
        if not (piece.part is Part.SOLID_BLOCK and piece.at in carried and piece.at.y == lowest)
    )


def unsupported(module: Module) -> list[Cell]:
    """The pieces that nothing of the module carries."""
    return [p.at for p in module.pieces if (below := rests_on(p)) is not None and below not in module.cells]


def faces(module: Module, port: Port) -> bool:
    """Whether some piece of the module gives to a port out: it points there, or is dust or a torch beside."""
    return any(
        piece.at.beside(piece.facing) == port.at
        or (piece.part is Part.TORCH and piece.at.beside(Facing.UP) == port.at)
        or (piece.part is Part.DUST and piece.at.beside(port.facing) == port.at)
        for piece in module.pieces
    )
