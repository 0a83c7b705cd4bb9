"""What a gesture under way would do, in words."""

from __future__ import annotations

from app.arm_ends import ENDS_WORDS
from app.tools.host import Ghost
from app.translation import tr


def gesture_words(ghost: Ghost) -> str:
    """The change that would come of it, and what stands against it; empty where nothing would."""
    said = []
    if ghost.change is not None and not ghost.change.is_empty:
        said.append(ghost.change.label)
    if ghost.crossing is not None:
        said.append(tr("arm, {ends}", ends=tr(ENDS_WORDS[ghost.crossing[2]].spoken)))
    if ghost.cart is not None:
        load = tr("with the waybill") if ghost.cart.loaded else tr("empty")
        said.append(tr("cart heading {heading}, {load}", heading=tr(ghost.cart.heading.word), load=load))
    said += [tr(shape.word) for shape in list(ghost.surveyed.values())[-1:]]
    if ghost.strengths:
        said.append(tr("strength {figure} at the end", figure=list(ghost.strengths.values())[-1]))
    if ghost.crossed:
        said.append(tr("{cells} cannot take it", cells=tr("%n cell(s)", "", len(ghost.crossed))))
    return ", ".join(said)
