"""The JSON of a plan file as types: the keys that this version knows, and what may stand under them.

What hangs on two values at once (a part and its delay) is left to the reading of the plan.
"""

from __future__ import annotations

from typing import Annotated, Any, Final, Literal

from msgspec import UNSET, Meta, Struct, UnsetType, field

from model.files.limits import CELL_LIMIT, ROUTE_LIMIT, WAIVER_LIMIT
from model.grid import Cell, Facing
from model.parts import STACK, TRAITS, Mode, Part
from model.pieces import WAYBILL
from model.plan import ARM_LIMIT, NAME_LIMIT, PIECE_LIMIT, TEXT_LIMIT, Side

FORMAT: Final = "platelayer-plan"
VERSION: Final = 1

NAME_PATTERN: Final = r"^(?![\s\S]*[,/\u0000-\u001f\u007f-\u009f])"
"""No comma, slash or control character anywhere."""
ITEM_PATTERN: Final = (
    rf"^{WAYBILL}(?=[\s\S])(?![\s\S]*[,/\u0000-\u001f\u007f-\u009f])"
    rf"|^(?!{WAYBILL})(?![\s\S]*[\u0000-\u001f\u007f-\u009f])"
)
"""A waybill's name keeps to the rule for names; any other word only has no control characters."""
COUNT_LIMIT: Final = STACK * max(traits.slots for traits in TRAITS.values())
"""Items of one kind in the largest container."""

Name = Annotated[str, Meta(min_length=1, max_length=NAME_LIMIT, pattern=NAME_PATTERN)]
Item = Annotated[str, Meta(min_length=1, max_length=len(WAYBILL) + NAME_LIMIT, pattern=ITEM_PATTERN)]
RuleId = Annotated[str, Meta(min_length=1, max_length=NAME_LIMIT)]
Text = Annotated[str, Meta(max_length=TEXT_LIMIT)]
HeadingWord = Literal["north", "east", "south", "west"]


class HeldDoc(Struct, gc=False):
    item: Item
    count: Annotated[int, Meta(ge=1, le=COUNT_LIMIT)]


class PieceDoc(Struct, gc=False):
    part: Part
    at: Cell
    facing: Facing | UnsetType = UNSET
    delay: Literal[2, 4, 6, 8] | UnsetType = UNSET
    mode: Mode | UnsetType = UNSET
    wooden: bool | UnsetType = UNSET
    holds: tuple[HeldDoc, ...] | UnsetType = UNSET


class EndDoc(Struct):
    at: Cell
    heading: HeadingWord


class ArmDoc(Struct):
    name: Name
    enter: EndDoc | UnsetType = field(name="in", default=UNSET)
    leave: EndDoc | UnsetType = field(name="out", default=UNSET)


class RouteDoc(Struct):
    start: Name = field(name="from")
    idle: Name
    called: Name | UnsetType = UNSET
    waybill: Name | UnsetType = UNSET


class WaiverDoc(Struct):
    rule: RuleId
    cells: Annotated[tuple[Cell, ...], Meta(max_length=CELL_LIMIT)] | UnsetType = UNSET
    arms: Annotated[tuple[Name, ...], Meta(max_length=ARM_LIMIT)] | UnsetType = UNSET
    reason: Text | UnsetType = UNSET


class SheetDoc(Struct):
    owner: Text | UnsetType = UNSET
    number: Text | UnsetType = UNSET
    revision: Text | UnsetType = UNSET
    date: Text | UnsetType = UNSET
    created_by: Text | UnsetType = UNSET
    approved_by: Text | UnsetType = UNSET


class PlanDoc(Struct, kw_only=True):
    format: Literal["platelayer-plan"]
    version: Literal[1]
    title: Text | UnsetType = UNSET
    running_side: Side | UnsetType = UNSET
    pieces: Annotated[list[PieceDoc], Meta(max_length=PIECE_LIMIT)]
    arms: Annotated[tuple[ArmDoc, ...], Meta(max_length=ARM_LIMIT)] | UnsetType = UNSET
    routes: Annotated[tuple[RouteDoc, ...], Meta(max_length=ROUTE_LIMIT)] | UnsetType = UNSET
    waivers: Annotated[tuple[WaiverDoc, ...], Meta(max_length=WAIVER_LIMIT)] | UnsetType = UNSET
    sheet: SheetDoc | UnsetType = UNSET


class Header(Struct):
    """What is looked at before all else: a later version may have changed the rest."""

    format: Any = UNSET
    version: Any = UNSET


OBJECTS_BELOW: Final[dict[type[Struct], dict[str, type[Struct]]]] = {
    PlanDoc: {
        "pieces": PieceDoc,
        "arms": ArmDoc,
        "routes": RouteDoc,
        "waivers": WaiverDoc,
        "sheet": SheetDoc,
    },
    PieceDoc: {"holds": HeldDoc},
    ArmDoc: {"in": EndDoc, "out": EndDoc},
}
"""The keys under which further objects, or lists of them, stand."""
