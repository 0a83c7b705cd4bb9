"""Edits of the title, the running side and what the title block of the sheet says."""

from __future__ import annotations

from model.edits.changes import detailed
from model.edits.refusals import check_texts
from model.plan import Change, Plan, SheetData, Side
from model.wording import tr


def set_title(plan: Plan, title: str) -> Change:
    """Another title. Raises EditRefused for control characters."""
    check_texts([title])
    return detailed(plan, tr("Set title"), plan.details.replace(title=title))


def set_running_side(plan: Plan, side: Side | None) -> Change:
    """The side on which carts run; ``None``: not checked."""
    label = (
        tr("Leave running side unchecked")
        if side is None
        else tr("Set running side to {side}", side=tr(side))
    )
    return detailed(plan, label, plan.details.replace(running_side=side))


def set_sheet(plan: Plan, sheet: SheetData) -> Change:
    """What the title block says. Raises EditRefused for control characters."""
    check_texts([sheet.owner, sheet.number, sheet.revision, sheet.date, sheet.created_by, sheet.approved_by])
    return detailed(plan, tr("Set sheet data"), plan.details.replace(sheet=sheet))
