"""What became of a change, as one says it: Laid 6 rails. Undid: Lay 6 rails."""

from __future__ import annotations

from typing import Final

from app.translation import tr
from app.undo import Step

DONE: Final = {
    "Add": "Added",
    "Change": "Changed",
    "Copy": "Copied",
    "Draw": "Drew",
    "Drop": "Dropped",
    "Erase": "Erased",
    "Fit": "Fitted",
    "Fix": "Fixed",
    "Give": "Gave",
    "Lay": "Laid",
    "Leave": "Left",
    "Make": "Made",
    "Mirror": "Mirrored",
    "Move": "Moved",
    "Paste": "Pasted",
    "Pin": "Pinned",
    "Place": "Placed",
    "Put": "Put",
    "Re-wire": "Re-wired",
    "Read": "Read",
    "Remove": "Removed",
    "Rename": "Renamed",
    "Reorder": "Reordered",
    "Replace": "Replaced",
    "Set": "Set",
    "Settle": "Settled",
    "Start": "Started",
    "Swap": "Swapped",
    "Take": "Took",
    "Turn": "Turned",
    "Unpin": "Unpinned",
    "Wire": "Wired",
}
"""The first word of a label, and how it is said of what is done."""


def deed_words(step: Step, label: str) -> str:
    """A label said of what is done, taken back, or done again."""
    if step is Step.UNDONE:
        return tr("Undid: {step}", step=label)
    if step is Step.DONE_AGAIN:
        return tr("Did again: {step}", step=label)
    verb, space, rest = label.partition(" ")
    # A label in another language begins with a word that is not listed.
    return f"{DONE[verb]}{space}{rest}" if verb in DONE else tr("Done: {step}", step=label)
