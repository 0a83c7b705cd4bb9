"""Hypothesis strategies for plans, their pieces and arms, and for edits of every kind.

Cells come from a small box so that pieces meet. Plans are such as files hold: only a repeater has a delay,
only a comparator a mode, and so on.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final

import msgspec
from hypothesis import strategies as st

from model import edits
from model.grid import ALL_TURNS, FACING_OF, Cell, Facing, Heading, Turn
from model.parts import DELAYS, RAILS, STACK, TRAITS, Mode, Part
from model.pieces import Held, Piece
from model.plan import Arm, ArmEnd, Change, Details, Plan, Route, SheetData, Side, Waiver, plan_of

STATIONS: Final = ("Quay", "Saltern", "Mill", "Fen", "Beacon", "Orchard", "Tithe Barn")
"""Of the invented Brinepan Tramway."""

REACH: Final = 3
"""Cells from the middle of the box to its sides."""

turns: Final[st.SearchStrategy[Turn]] = st.sampled_from(ALL_TURNS)
headings: Final[st.SearchStrategy[Heading]] = st.sampled_from(Heading)
steps: Final = st.integers(-2, 2)
cells: Final[st.SearchStrategy[Cell]] = st.builds(
    Cell, st.integers(-REACH, REACH), st.integers(63, 65), st.integers(-REACH, REACH)
)
texts: Final = st.text(st.characters(codec="utf-8", exclude_categories=("Cc", "Cs")), max_size=12)
names: Final[st.SearchStrategy[str]] = st.sampled_from(STATIONS) | texts.map(
    lambda text: text.replace(",", "").replace("/", "")
).filter(bool)
helds: Final = st.builds(
    Held,
    st.sampled_from(("ingot", "nugget", "salt")) | names.map("waybill:{}".format),
    st.integers(1, STACK),
)
parts: Final[st.SearchStrategy[Part]] = st.sampled_from([*Part, *sorted(RAILS) * 3, *[Part.RAIL] * 10])


@st.composite
def pieces(
    draw: st.DrawFn,
    at: st.SearchStrategy[Cell] = cells,
    part: st.SearchStrategy[Part] = parts,
) -> Piece:
    """One piece of a kind that files can hold."""
    kind = draw(part)
    facing = draw(st.sampled_from(TRAITS[kind].facings))
    slots = TRAITS[kind].slots
    return Piece(
        kind,
        draw(at),
        facing,
        delay=draw(st.sampled_from(DELAYS)) if kind is Part.REPEATER else DELAYS[0],
        mode=draw(st.sampled_from(Mode)) if kind is Part.COMPARATOR else Mode.COMPARE,
        wooden=kind is Part.BUTTON and draw(st.booleans()),
        holds=tuple(draw(st.lists(helds, max_size=min(slots, 3)))) if slots else (),
    )


def piece_lists(
    least: int = 0, most: int = 20, part: st.SearchStrategy[Part] = parts
) -> st.SearchStrategy[list[Piece]]:
    """Pieces in an order of placing, one a cell."""
    return st.lists(pieces(part=part), min_size=least, max_size=most, unique_by=lambda piece: piece.at)


def rail_lists(least: int = 0, most: int = 20) -> st.SearchStrategy[list[Piece]]:
    """Rails of all three kinds in an order of placing, one a cell."""
    return piece_lists(least, most, st.sampled_from([*sorted(RAILS), Part.RAIL, Part.RAIL]))


@st.composite
def tracks(draw: st.DrawFn) -> list[Piece]:
    """Track such as people lay: ways that wander, branch and climb, placed in any order."""
    way = [Cell(0, 64, 0)]
    for _ in range(draw(st.integers(1, 3))):
        cell = draw(st.sampled_from(way))
        for heading, length, rise in draw(
            st.lists(
                st.tuples(headings, st.integers(1, 4), st.sampled_from((0, 0, 1, -1))), min_size=1, max_size=4
            )
        ):
            for _ in range(length):
                cell = cell.step(heading, rise)
                way.append(cell)
    kinds = st.sampled_from([*sorted(RAILS), *[Part.RAIL] * 6])
    return [
        Piece(draw(kinds), cell, draw(st.sampled_from(FACING_OF)))
        for cell in draw(st.permutations(list(dict.fromkeys(way))))
    ]


arm_ends: Final = st.builds(ArmEnd, cells, headings)


@st.composite
def arms(draw: st.DrawFn, name: st.SearchStrategy[str] = names) -> Arm:
    """An arm with an in, an out, or both."""
    has_in, has_out = draw(st.sampled_from(((True, True), (True, False), (False, True))))
    enter = draw(arm_ends) if has_in else None
    return Arm(draw(name), enter, draw(arm_ends) if has_out else None)


routes: Final[st.SearchStrategy[Route]] = st.builds(Route, names, names, st.none() | names, st.none() | names)
waivers: Final[st.SearchStrategy[Waiver]] = st.builds(
    Waiver,
    st.sampled_from(("running-side", "loose-end", "unreached")),
    st.lists(cells, max_size=3, unique=True).map(tuple),
    st.lists(names, max_size=2, unique=True).map(tuple),
    texts,
)
sheets: Final[st.SearchStrategy[SheetData]] = st.builds(SheetData, texts, texts, texts, texts, texts, texts)
sides: Final[st.SearchStrategy[Side | None]] = st.none() | st.sampled_from(Side)


@st.composite
def details(draw: st.DrawFn, least_arms: int = 0) -> Details:
    """All of a plan that is not pieces; at least one route and one waiver where it has to have arms."""
    listed = draw(st.lists(arms(), min_size=least_arms, max_size=4, unique_by=lambda arm: arm.name))
    starts = st.sampled_from([arm.name for arm in listed]) | names if listed else names
    least = min(least_arms, 1)
    wanted = draw(st.lists(starts, min_size=least, max_size=3, unique=True))
    return Details(
        draw(texts),
        draw(sides),
        tuple(listed),
        tuple(msgspec.structs.replace(draw(routes), start=start) for start in wanted),
        tuple(draw(st.lists(waivers, min_size=least, max_size=2))),
        draw(sheets),
    )


@st.composite
def plans(draw: st.DrawFn, least_pieces: int = 0, least_arms: int = 0) -> Plan:
    """A plan, which need make no sense as a junction: broken plans are normal."""
    return plan_of(draw(piece_lists(least_pieces)), draw(details(least_arms)))


filled_plans: Final[st.SearchStrategy[Plan]] = plans(least_pieces=1, least_arms=1)
"""Plans on which every kind of edit finds something to change."""


def chosen(plan: Plan) -> st.SearchStrategy[list[Cell]]:
    """A selection: some of the plan's cells, and perhaps an empty one."""
    own = [piece.at for piece in plan.pieces]
    return st.lists(st.sampled_from(own) | cells if own else cells, min_size=1, max_size=6)


@st.composite
def drags(draw: st.DrawFn) -> list[Cell]:
    """The cells of a drag: each beside the one before, on one level; it may come back over itself."""
    drag = [draw(cells)]
    for heading in draw(st.lists(headings, max_size=8)):
        drag.append(drag[-1].step(heading))
    return drag


def _lay_track(draw: st.DrawFn, plan: Plan) -> Change:
    return edits.lay_track(plan, draw(drags()), draw(st.sampled_from(sorted(RAILS))))


@st.composite
def climbing_drags(draw: st.DrawFn) -> list[Cell]:
    """The same from level to level, up and down."""
    drag = [draw(cells)]
    for heading in draw(st.lists(headings, max_size=8)):
        drag.append(drag[-1].step(heading, draw(st.integers(-1, 1))))
    return drag


def _lay_line(draw: st.DrawFn, plan: Plan) -> Change:
    drag = draw(climbing_drags())
    facings = {cell: FACING_OF[draw(headings)] for cell in drag[1::3]}
    return edits.lay_line(plan, drag, facings)


def _place(draw: st.DrawFn, plan: Plan) -> Change:
    return edits.place(plan, draw(pieces()))


def _place_all(draw: st.DrawFn, plan: Plan) -> Change:
    return edits.place_all(plan, draw(st.lists(pieces(), max_size=4, unique_by=lambda piece: piece.at)))


def _erase(draw: st.DrawFn, plan: Plan) -> Change:
    return edits.erase(plan, draw(chosen(plan)))


def _offset(draw: st.DrawFn, plan: Plan) -> tuple[int, int, int]:
    """A few cells any way, or from one piece to another, so that moved pieces meet others."""
    own = [piece.at for piece in plan.pieces]
    if not own or draw(st.booleans()):
        return draw(steps), draw(steps), draw(steps)
    start, end = draw(st.sampled_from(own)), draw(st.sampled_from(own))
    return end.x - start.x, end.y - start.y, end.z - start.z


def _move(draw: st.DrawFn, plan: Plan) -> Change:
    return edits.move(plan, draw(chosen(plan)), *_offset(draw, plan))


def _paste(draw: st.DrawFn, plan: Plan) -> Change:
    copied = edits.copy_pieces(plan, draw(chosen(plan)))
    offset = _offset(draw, plan)
    return edits.paste(plan, [msgspec.structs.replace(p, at=p.at.moved(*offset)) for p in copied])


def _set_next(draw: st.DrawFn, plan: Plan) -> Change:
    return edits.set_next(
        plan, draw(st.sets(st.sampled_from([piece.at for piece in plan.pieces]), max_size=9))
    )


def _set_piece(draw: st.DrawFn, plan: Plan) -> Change:
    old = draw(st.sampled_from(list(plan.pieces)))
    return edits.set_piece(plan, draw(pieces(at=st.just(old.at), part=st.just(old.part))))


def _turn_pieces(draw: st.DrawFn, plan: Plan) -> Change:
    return edits.turn_pieces(plan, draw(chosen(plan)), draw(turns))


def _turn_plan(draw: st.DrawFn, plan: Plan) -> Change:
    return edits.turn_plan(plan, draw(turns))


def _turn_and_order(draw: st.DrawFn, plan: Plan) -> Change:
    turn = draw(turns)
    turned = edits.turn_plan(plan, turn).applied(plan)
    return edits.turn_and_order(plan, turn, draw(_build_orders(turned)))


def _move_plan(draw: st.DrawFn, plan: Plan) -> Change:
    return edits.move_plan(plan, draw(steps), draw(steps), draw(steps))


def _reorder(draw: st.DrawFn, plan: Plan) -> Change:
    cells = draw(st.permutations([piece.at for piece in plan.pieces]))
    return edits.reorder(plan, cells[: draw(st.integers(0, len(cells)))])


@st.composite
def _build_orders(draw: st.DrawFn, plan: Plan) -> list[tuple[Cell, Facing]]:
    rails = [piece.at for piece in plan.pieces if piece.part in RAILS]
    return [(cell, draw(st.sampled_from(FACING_OF))) for cell in draw(st.permutations(rails))]


def _become(draw: st.DrawFn, plan: Plan) -> Change:
    other = draw(plans() | st.builds(lambda change: change.applied(plan), changes(plan, "place_all")))
    return edits.become(plan, plan_of([*other.pieces], other.details))


def _set_build_order(draw: st.DrawFn, plan: Plan) -> Change:
    return edits.set_build_order(plan, draw(_build_orders(plan)))


def _add_blocks(draw: st.DrawFn, plan: Plan) -> Change:
    return edits.add_blocks(plan, draw(st.lists(cells, max_size=5)))


def _free_names(plan: Plan) -> st.SearchStrategy[str]:
    return names.filter(lambda name: plan.details.arm(name) is None)


def _add_arm(draw: st.DrawFn, plan: Plan) -> Change:
    return edits.add_arm(plan, draw(arms(_free_names(plan))))


def _set_arm(draw: st.DrawFn, plan: Plan) -> Change:
    old = draw(st.sampled_from(plan.arms))
    starts = {route.start for route in plan.routes}
    other = _free_names(plan).filter(lambda name: name not in starts)
    return edits.set_arm(plan, old.name, draw(arms(st.just(old.name) | other)))


def _remove_arm(draw: st.DrawFn, plan: Plan) -> Change:
    return edits.remove_arm(plan, draw(st.sampled_from(plan.arms)).name)


def _set_route(draw: st.DrawFn, plan: Plan) -> Change:
    return edits.set_route(plan, draw(routes))


def _remove_route(draw: st.DrawFn, plan: Plan) -> Change:
    return edits.remove_route(plan, draw(st.sampled_from(plan.routes)).start)


def _set_aside(draw: st.DrawFn, plan: Plan) -> Change:
    return edits.set_aside(plan, draw(waivers))


def _take_up(draw: st.DrawFn, plan: Plan) -> Change:
    return edits.take_up(plan, draw(st.sampled_from(plan.details.waivers)))


def _set_title(draw: st.DrawFn, plan: Plan) -> Change:
    return edits.set_title(plan, draw(texts))


def _set_running_side(draw: st.DrawFn, plan: Plan) -> Change:
    return edits.set_running_side(plan, draw(sides))


def _set_sheet(draw: st.DrawFn, plan: Plan) -> Change:
    return edits.set_sheet(plan, draw(sheets))


def _start_route_at(draw: st.DrawFn, plan: Plan) -> Change:
    old = draw(st.sampled_from(plan.routes)).start
    free = names.filter(lambda name: all(route.start != name for route in plan.routes))
    return edits.start_route_at(plan, old, draw(free))


EDITS: Final[dict[str, Callable[[st.DrawFn, Plan], Change]]] = {
    edit.__name__[1:]: edit
    for edit in (
        *(
            _lay_track,
            _lay_line,
            _place,
            _place_all,
            _erase,
            _move,
            _paste,
            _set_next,
            _set_piece,
            _turn_pieces,
            _turn_plan,
            _turn_and_order,
            _move_plan,
        ),
        *(_reorder, _become, _set_build_order, _add_blocks, _add_arm, _set_arm, _remove_arm),
        *(_set_route, _start_route_at, _remove_route),
        *(_set_aside, _take_up, _set_title, _set_running_side, _set_sheet),
    )
}
"""Every kind of edit by the name of its function, with how to draw one."""

NEEDED: Final[dict[str, Callable[[Plan], Sequence[object] | int]]] = {
    "set_next": lambda plan: len(plan.pieces),
    "set_piece": lambda plan: len(plan.pieces),
    "set_arm": lambda plan: plan.arms,
    "remove_arm": lambda plan: plan.arms,
    "remove_route": lambda plan: plan.routes,
    "start_route_at": lambda plan: plan.routes,
    "take_up": lambda plan: plan.details.waivers,
}
"""What a plan must have some of for an edit of that kind."""


@st.composite
def changes(draw: st.DrawFn, plan: Plan, kind: str | None = None) -> Change:
    """An edit of the plan, of the given kind or of any that the plan has something for.

    Coordinates may drift off the box, never near the limits.
    """
    if kind is None:
        kind = draw(st.sampled_from([k for k in EDITS if k not in NEEDED or NEEDED[k](plan)]))
    return EDITS[kind](draw, plan)
