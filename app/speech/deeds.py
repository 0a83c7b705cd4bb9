"""What became of a change, as one says it: Laid 6 rails. Undid: Lay 6 rails."""

from __future__ import annotations

from app.translation import tr
from app.undo import Step


def deed_words(step: Step, label: str) -> str:
    """A label said of what is done, taken back, or done again."""
    if step is Step.UNDONE:
        return tr("Undid: {step}", step=label)
    if step is Step.DONE_AGAIN:
        return tr("Did again: {step}", step=label)
    verb, space, rest = label.partition(" ")
    done = done_verbs().get(verb)
    # A language in which the verb stands elsewhere has no such words: its labels stay whole.
    return tr("Done: {step}", step=label) if done is None else f"{done}{space}{rest}"


def done_verbs() -> dict[str, str]:
    """The first word of a label, and how it is said of what is done."""
    return {
        tr("Add", "Begins a step"): tr("Added", "Begins a step that is done"),
        tr("Change", "Begins a step"): tr("Changed", "Begins a step that is done"),
        tr("Copy", "Begins a step"): tr("Copied", "Begins a step that is done"),
        tr("Draw", "Begins a step"): tr("Drew", "Begins a step that is done"),
        tr("Drop", "Begins a step"): tr("Dropped", "Begins a step that is done"),
        tr("Erase", "Begins a step"): tr("Erased", "Begins a step that is done"),
        tr("Fit", "Begins a step"): tr("Fitted", "Begins a step that is done"),
        tr("Fix", "Begins a step"): tr("Fixed", "Begins a step that is done"),
        tr("Give", "Begins a step"): tr("Gave", "Begins a step that is done"),
        tr("Lay", "Begins a step"): tr("Laid", "Begins a step that is done"),
        tr("Leave", "Begins a step"): tr("Left", "Begins a step that is done"),
        tr("Make", "Begins a step"): tr("Made", "Begins a step that is done"),
        tr("Mirror", "Begins a step"): tr("Mirrored", "Begins a step that is done"),
        tr("Move", "Begins a step"): tr("Moved", "Begins a step that is done"),
        tr("Paste", "Begins a step"): tr("Pasted", "Begins a step that is done"),
        tr("Pin", "Begins a step"): tr("Pinned", "Begins a step that is done"),
        tr("Place", "Begins a step"): tr("Placed", "Begins a step that is done"),
        tr("Put", "Begins a step"): tr("Put", "Begins a step that is done"),
        tr("Re-wire", "Begins a step"): tr("Re-wired", "Begins a step that is done"),
        tr("Read", "Begins a step"): tr("Read", "Begins a step that is done"),
        tr("Remove", "Begins a step"): tr("Removed", "Begins a step that is done"),
        tr("Rename", "Begins a step"): tr("Renamed", "Begins a step that is done"),
        tr("Reorder", "Begins a step"): tr("Reordered", "Begins a step that is done"),
        tr("Replace", "Begins a step"): tr("Replaced", "Begins a step that is done"),
        tr("Set", "Begins a step"): tr("Set", "Begins a step that is done"),
        tr("Settle", "Begins a step"): tr("Settled", "Begins a step that is done"),
        tr("Start", "Begins a step"): tr("Started", "Begins a step that is done"),
        tr("Swap", "Begins a step"): tr("Swapped", "Begins a step that is done"),
        tr("Take", "Begins a step"): tr("Took", "Begins a step that is done"),
        tr("Turn", "Begins a step"): tr("Turned", "Begins a step that is done"),
        tr("Unpin", "Begins a step"): tr("Unpinned", "Begins a step that is done"),
        tr("Wire", "Begins a step"): tr("Wired", "Begins a step that is done"),
    }
