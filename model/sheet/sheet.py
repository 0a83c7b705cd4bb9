"""The build sheet as data: all that it says, nothing of how it is drawn."""

from __future__ import annotations

from collections.abc import Iterable

import msgspec

from model.commissioning import Commissioning
from model.plan import Arm, SheetData, Side
from model.routing.junction import Junction
from model.sheet.cautions import Caution, Finding, cautions
from model.sheet.checklist import Checklist, checklist
from model.sheet.drawn import drawn_pieces, rail_marks
from model.sheet.footprint import Footprint, footprint
from model.sheet.levels import LevelPage, level_pages
from model.sheet.materials import Materials, materials
from model.sheet.routes import ControlTable, control_table
from model.sheet.steps import StepPicture, step_pictures
from model.steps import build_steps


class Sheet(msgspec.Struct, frozen=True):
    """A build sheet: cover, a page a level, the builder's steps, control table, test checklist."""

    title: str
    summary: str
    """``3 levels, 4 switches``: the supplementary title of the cover."""
    data: SheetData
    running_side: Side | None
    footprint: Footprint | None
    """``None`` for a plan without pieces."""
    arms: tuple[Arm, ...]
    materials: Materials
    cautions: tuple[Caution, ...]
    levels: tuple[LevelPage, ...]
    steps: tuple[StepPicture, ...]
    control: ControlTable
    checklist: Checklist


def build_sheet(junction: Junction, findings: Iterable[Finding]) -> Sheet:
    """The build sheet of a plan, with the errors found in it among the cautions."""
    plan = junction.plan
    steps = build_steps(plan, junction.layout)
    marks = rail_marks(junction, [piece for step in steps for piece in step.place])
    levels = level_pages(drawn_pieces(plan, marks), plan.arms)
    return Sheet(
        plan.details.title,
        _summary(len(levels), len(junction.switches)),
        plan.details.sheet,
        plan.details.running_side,
        footprint(piece.at for piece in plan.pieces),
        plan.arms,
        materials(plan),
        cautions(junction, findings, levels, steps),
        levels,
        tuple(step_pictures(steps, marks)),
        control_table(junction),
        checklist(Commissioning(junction)),
    )


def _summary(levels: int, switches: int) -> str:
    return (
        f"{levels} {'level' if levels == 1 else 'levels'}, "
        f"{switches} {'switch' if switches == 1 else 'switches'}"
    )
