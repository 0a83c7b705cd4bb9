"""From a document to a plan: the defaults, and the rules that hang on two values at once."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any, Final

from msgspec import UNSET, Struct
from msgspec.structs import replace

from model.files.decoding import KeptByPlace
from model.files.document import ArmDoc, EndDoc, HeldDoc, PieceDoc, PlanDoc, RouteDoc, WaiverDoc
from model.files.errors import PlaceError
from model.grid import Heading
from model.parts import TRAITS, Part
from model.pieces import Held, Piece, Pieces, slots_needed
from model.plan import Arm, ArmEnd, Details, Plan, Route, SheetData, Waiver
from model.wording import tr

CONTAINERS: Final = tuple(part for part in Part if TRAITS[part].slots)
OWN_KEYS: Final[dict[str, tuple[Part, ...]]] = {
    "delay": (Part.REPEATER,),
    "mode": (Part.COMPARATOR,),
    "wooden": (Part.BUTTON,),
    "holds": CONTAINERS,
}
"""Keys that mean something for these parts only."""


def plan_of_document(document: PlanDoc, kept: KeptByPlace) -> Plan:
    """The plan that a document stands for. Raises PlaceError."""
    return Plan(_pieces(document.pieces, kept), _details(document, kept))


def _pieces(docs: list[PieceDoc], kept: KeptByPlace) -> Pieces:
    pieces = [_piece(doc, index) for index, doc in enumerate(docs)]
    for index in _indexes_with_kept(kept):
        pieces[index] = _with_kept(pieces[index], f"pieces[{index}]", kept)
    try:
        return Pieces.of(pieces)
    except ValueError:
        raise _two_in_one_cell(pieces) from None


def _piece(doc: PieceDoc, index: int) -> Piece:
    traits = TRAITS[doc.part]
    facing = traits.first_facing if doc.facing is UNSET else doc.facing
    if facing not in traits.facings:
        raise PlaceError(
            f"pieces[{index}].facing",
            tr("{facings} for {part}", facings=any_of(traits.facings), part=doc.part),
        )
    if doc.delay is UNSET and doc.mode is UNSET and doc.wooden is UNSET and doc.holds is UNSET:
        return Piece(doc.part, doc.at, facing)
    return replace(Piece(doc.part, doc.at, facing), **_own(doc, index))


def _own(doc: PieceDoc, index: int) -> dict[str, Any]:
    """What only some parts have, checked against the part."""
    own = {key: value for key in OWN_KEYS if (value := getattr(doc, key)) is not UNSET}
    for key in own:
        if doc.part not in OWN_KEYS[key]:
            expected = tr(
                "this key only on {parts}, not on {part}", parts=any_of(OWN_KEYS[key]), part=doc.part
            )
            raise PlaceError(f"pieces[{index}].{key}", expected)
    if "holds" in own:
        own["holds"] = _holds(doc.part, own["holds"], index)
    return own


def _holds(part: Part, docs: tuple[HeldDoc, ...], index: int) -> tuple[Held, ...]:
    slots = TRAITS[part].slots
    holds = tuple(Held(doc.item, doc.count) for doc in docs)
    if slots_needed(holds) > slots:
        raise PlaceError(f"pieces[{index}].holds", what_slots_hold(slots))
    return holds


def _details(document: PlanDoc, kept: KeptByPlace) -> Details:
    arms = () if document.arms is UNSET else document.arms
    routes = () if document.routes is UNSET else document.routes
    waivers = () if document.waivers is UNSET else document.waivers
    sheet = SheetData() if document.sheet is UNSET else SheetData(**_given(document.sheet))
    _check_one_route_an_arm(routes)
    return Details(
        title="" if document.title is UNSET else document.title,
        running_side=None if document.running_side is UNSET else document.running_side,
        arms=tuple(_arm(arm, f"arms[{index}]", kept) for index, arm in enumerate(arms)),
        routes=tuple(_route(route, f"routes[{index}]", kept) for index, route in enumerate(routes)),
        waivers=tuple(_waiver(waiver, f"waivers[{index}]", kept) for index, waiver in enumerate(waivers)),
        sheet=replace(sheet, kept=kept.get("sheet", ())),
        kept=kept.get("", ()),
    )


def _arm(doc: ArmDoc, place: str, kept: KeptByPlace) -> Arm:
    if doc.enter is UNSET and doc.leave is UNSET:
        raise PlaceError(place, tr('at least one of "in" and "out"'))
    enter = None if doc.enter is UNSET else _end(doc.enter, f"{place}.in", kept)
    leave = None if doc.leave is UNSET else _end(doc.leave, f"{place}.out", kept)
    return Arm(doc.name, enter, leave, kept.get(place, ()))


def _end(doc: EndDoc, place: str, kept: KeptByPlace) -> ArmEnd:
    return ArmEnd(doc.at, Heading[doc.heading.upper()], kept.get(place, ()))


def _route(doc: RouteDoc, place: str, kept: KeptByPlace) -> Route:
    return Route(**_given(doc), kept=kept.get(place, ()))


def _waiver(doc: WaiverDoc, place: str, kept: KeptByPlace) -> Waiver:
    return Waiver(**_given(doc), kept=kept.get(place, ()))


def _given(doc: Struct) -> dict[str, Any]:
    """The keys that were not left out."""
    values = ((name, getattr(doc, name)) for name in doc.__struct_fields__)
    return {name: value for name, value in values if value is not UNSET}


def _indexes_with_kept(kept: KeptByPlace) -> set[int]:
    """The pieces with unknown keys, on themselves or on what they hold."""
    start = "pieces["
    return {int(place[len(start) : place.index("]")]) for place in kept if place.startswith(start)}


def _with_kept(piece: Piece, place: str, kept: KeptByPlace) -> Piece:
    holds = tuple(
        replace(held, kept=kept.get(f"{place}.holds[{index}]", ())) for index, held in enumerate(piece.holds)
    )
    return replace(piece, holds=holds, kept=kept.get(place, ()))


def _two_in_one_cell(pieces: list[Piece]) -> PlaceError:
    first: dict[tuple[int, int, int], int] = {}
    for index, piece in enumerate(pieces):
        earlier = first.setdefault(piece.at, index)
        if earlier != index:
            expected = tr("a cell of its own; {other} stands there", other=f"pieces[{earlier}]")
            return PlaceError(f"pieces[{index}].at", expected)
    raise AssertionError("no two pieces share a cell")


def _check_one_route_an_arm(routes: tuple[RouteDoc, ...]) -> None:
    first: dict[str, int] = {}
    for index, route in enumerate(routes):
        earlier = first.setdefault(route.start, index)
        if earlier != index:
            expected = tr("one route an arm; {other} begins there too", other=f"routes[{earlier}]")
            raise PlaceError(f"routes[{index}].from", expected)


def any_of(words: Iterable[str]) -> str:
    """``rail``, ``compare or subtract``, ``up, down or east``: words as files have them."""
    *most, last = words
    return tr("{words} or {last}", words=", ".join(most), last=last) if most else str(last)


def what_slots_hold(slots: int) -> str:
    """What is expected where a container is given more than it has room for."""
    return tr("what {slots} slots can hold", slots=slots)
