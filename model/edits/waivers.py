"""Setting a finding aside with a reason, and taking it up again."""

from __future__ import annotations

from model.edits.changes import detailed
from model.edits.refusals import check_texts
from model.grid import Cell
from model.plan import Change, Plan, Waiver
from model.wording import tr


def set_aside(plan: Plan, waiver: Waiver) -> Change:
    """A waiver, in the place of one for the same finding, or after the others.

    Raises EditRefused for control characters in the reason.
    """
    check_texts([waiver.reason])
    waivers = list(plan.details.waivers)
    at = next((at for at, old in enumerate(waivers) if _key(old) == _key(waiver)), len(waivers))
    waivers[at : at + 1] = [waiver]
    return detailed(
        plan, tr("Set aside {rule}", rule=waiver.rule), plan.details.replace(waivers=tuple(waivers))
    )


def take_up(plan: Plan, waiver: Waiver) -> Change:
    """The waivers for the same finding go; empty when there is none."""
    waivers = tuple(old for old in plan.details.waivers if _key(old) != _key(waiver))
    return detailed(plan, tr("Take up {rule}", rule=waiver.rule), plan.details.replace(waivers=waivers))


def _key(waiver: Waiver) -> tuple[str, frozenset[Cell], frozenset[str]]:
    """A turned plan may list the cells of a finding in another order."""
    return waiver.rule, frozenset(waiver.cells), frozenset(waiver.arms)
