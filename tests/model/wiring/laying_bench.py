"""Problems for laying lines, the wired plan that comes of one, and what the dry run makes of it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from random import Random

from msgspec import Struct

from model.dry_run import DryRun, Lever
from model.grid import FACING_OF, Cell, Facing, Heading
from model.parts import Part
from model.pieces import Piece, new_piece, rests_on
from model.plan import Plan, plan_of
from model.wiring.laying.ground import Ground
from model.wiring.laying.laid import Line, Routed
from model.wiring.laying.laying import lay_lines

RAIL_LEVEL = 64


class Source(Struct, frozen=True):
    """A lever with the repeater that it drives."""

    lever: Cell
    repeater: Cell
    start: Cell
    """In front of the repeater."""


class Yard:
    """Pieces below a square of track, of which only two corners lie there."""

    def __init__(self, size: int) -> None:
        self.size = size
        self.pieces: dict[Cell, Piece] = {}
        for corner in (0, size - 1):
            self.put(Part.RAIL, Cell(corner, RAIL_LEVEL, corner))

    @property
    def plan(self) -> Plan:
        """The plan so far."""
        return plan_of(list(self.pieces.values()))

    def put(self, part: Part, at: Cell, facing: Facing | None = None) -> Cell:
        """A part; a solid block comes under it, or behind it, where it needs one and there is none."""
        piece = new_piece(part, at, facing)
        holder = rests_on(piece)
        if holder is not None and holder not in self.pieces:
            self.pieces[holder] = new_piece(Part.SOLID_BLOCK, holder)
        assert at not in self.pieces, at
        self.pieces[at] = piece
        return at

    def source(self, at: Cell, heading: Heading) -> Source:
        """A repeater at ``at``, and a lever on the block behind it."""
        self.put(Part.REPEATER, at, FACING_OF[heading])
        lever = self.put(Part.LEVER, at.step(heading.opposite, 1))
        return Source(lever, at, at.step(heading))

    def sink(self, target: Cell, part: Part) -> Cell:
        """A target block, and a lamp or a torch on it."""
        self.put(Part.TARGET_BLOCK, target)
        return self.put(part, target.moved(dy=1))


class Problem(Struct, frozen=True):
    """Lines that are wanted, with what drives them and what shows that they are on."""

    plan: Plan
    lines: tuple[Line, ...]
    sources: tuple[Source, ...]
    sinks: tuple[tuple[Cell, ...], ...]
    """By line: a lamp that goes on, or a torch that goes out, for each of its targets."""


def random_problem(seed: int, size: int = 20, glass: int = 0) -> Problem:
    """Three or four lines of one to four targets each, all over a square, with so much glass between them."""
    random = Random(seed)
    yard = Yard(size)
    spots = [(x, z) for x in range(2, size - 2) for z in range(2, size - 2)]
    random.shuffle(spots)

    def spot(level: int, room: int) -> Cell:
        """A place with so many cells about it that no later place lies in."""
        x, z = spots[-1]
        spots[:] = [(a, b) for a, b in spots if max(abs(a - x), abs(b - z)) > room]
        return Cell(x, level, z)

    sources, sinks, lines = [], [], []
    for number in range(random.randint(3, 4)):
        source = yard.source(spot(random.randint(59, 62), 3), Heading(random.randrange(4)))
        targets = [spot(random.randint(59, 61), 2) for _ in range(random.randint(1, 4))]
        sinks.append(tuple(yard.sink(each, random.choice([Part.LAMP, Part.TORCH])) for each in targets))
        sources.append(source)
        lines.append(Line(f"line {number}", source.start, tuple((target,) for target in targets)))
    ends = [end for line in lines for end in (line.start, *(target for (target,) in line.targets))]
    kept = {cell for end in ends for cell in about(end)}
    for _ in range(glass):
        at = Cell(random.randrange(size), random.randint(59, 63), random.randrange(size))
        if at not in yard.pieces and at not in kept:
            yard.put(Part.GLASS, at)
    return Problem(yard.plan, tuple(lines), tuple(sources), tuple(sinks))


def about(cell: Cell) -> Iterator[Cell]:
    """The cell and all that touch it, be it with a corner."""
    for dx in (-1, 0, 1):
        for dy in (-1, 0, 1):
            for dz in (-1, 0, 1):
                yield cell.moved(dx, dy, dz)


def routed(
    plan: Plan,
    lines: Sequence[Line],
    seed: int = 0,
    depth: int = 6,
    limits: Mapping[tuple[str, int], int] | None = None,
) -> Routed:
    """What comes of laying the lines."""
    *_, last = lay_lines(Ground(plan, 1, depth), lines, seed, limits)
    assert isinstance(last, Routed)
    return last


def wired(plan: Plan, result: Routed) -> Plan:
    """The plan with the lines laid."""
    return plan_of([*plan.pieces, *(piece for laid in result.laid for piece in laid.pieces)])


class Trial:
    """A wired plan while it runs."""

    def __init__(self, plan: Plan) -> None:
        self.dry_run = DryRun(plan)
        self.plan = plan

    def pull(self, lever: Cell, *, on: bool) -> None:
        """Pulls a lever, and waits until nothing changes any more."""
        self.dry_run.step([Lever(lever, on)])
        for _ in range(200):
            if self.dry_run.is_quiet:
                return
            self.dry_run.step()
        raise AssertionError("the circuit finds no rest")

    def is_called(self, sink: Cell) -> bool:
        """Whether a lamp is on, or a torch out."""
        return (self.dry_run.output(sink) > 0) is (self.plan.pieces.part_at(sink) is Part.LAMP)
