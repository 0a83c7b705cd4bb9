"""What the window says of test runs and of what they showed."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, NamedTuple

from app.panels.commissioning_book import Worked
from app.panels.words import counted
from app.turn_words import turn_words
from model.commissioning import Diagnosis, Fault, Run
from model.grid import Turn

EMPTY: Final = "empty"
ANEW: Final = "Being worked out…"
LOOKING: Final = "Looking for what explains it…"
LIMITS: Final = "What no run tells:"
NO_ROUTES: Final = "The test runs of the wanted routes are listed here; no routes are wanted yet."
NO_RUNS: Final = "No cart can come in by the arms of the wanted routes."
WORKING: Final = "Working out the test runs…"
NOT_SERVED: Final = "Not every wanted route arrives as drawn; the findings say why."
UNEXPLAINED: Final = (
    "No fault explains what the carts did, nor do any two together, "
    "nor does the plan built turned or mirrored."
)


class Said(NamedTuple):
    """A row: a sentence, and the faults of which it speaks; none where it speaks of the whole plan."""

    words: str
    faults: tuple[Fault, ...] = ()


def load_words(run: Run) -> str:
    """What the cart of a run carries: its waybill, or nothing."""
    return EMPTY if run.waybill is None else run.waybill


def next_words(run: Run) -> str:
    """The run that tells the most, as something to do."""
    cart = "an empty cart" if run.waybill is None else f"a cart with {run.waybill}"
    return f"Next: send {cart} in at {run.start}"


def coverage_words(worked: Worked) -> str:
    """How much the fewest runs show of what can be wrong."""
    runs = len(worked.tests)
    if not worked.faults:
        said = "No single fault is possible here, so no run is needed."
    elif not runs:
        said = f"No run shows any of {counted(worked.faults, 'fault')}."
    else:
        verb = "shows" if runs == 1 else "show"
        said = f"{counted(runs, 'run')} {verb} {worked.shown} of {counted(worked.faults, 'fault')}."
    return said if worked.serves else f"{said} {NOT_SERVED}"


def faults_words(faults: Sequence[Fault]) -> str:
    """Faults that are there together, as one sentence."""
    return _sentence(", and ".join(fault.words for fault in faults))


def turned_words(turns: Sequence[Turn]) -> str:
    """How the plan may have been built otherwise than drawn."""
    return f"It looks as if it was built otherwise than drawn: {'; or '.join(map(turn_words, turns))}."


def alike_words(faults: Sequence[Fault]) -> str:
    """Faults that every run shows in the same way."""
    return _sentence(f"which of these it is: {'; '.join(fault.words for fault in faults)}")


def hidden_words(fault: Fault) -> str:
    """A fault that changes the way of no cart."""
    return _sentence(f"whether {fault.words}")


def progress_words(ticked: int, runs: int) -> str:
    """While every cart that was sent did as it must."""
    if not ticked:
        return "Tick a run when its cart came out as it must; else choose what the cart did."
    if ticked < runs:
        return f"{ticked} of {counted(runs, 'run')} came out right; no fault shows so far."
    return "Every cart did as it must: there is no single fault that a run could show."


def explained_words(diagnosis: Diagnosis) -> str:
    """The heading of what may be wrong."""
    explanations = len(explanations_of(diagnosis))
    if not explanations:
        return UNEXPLAINED
    if explanations == 1:
        return "One explanation:"
    # The next run is one that tells faults apart; whether it was built otherwise, others may tell.
    if diagnosis.next_run is None and not diagnosis.built_otherwise:
        return f"No further run tells these {explanations} apart; the smallest first:"
    return f"{explanations} explanations, the smallest first:"


def explanations_of(diagnosis: Diagnosis) -> list[Said]:
    """What may be wrong, a row each: first that it was built otherwise, then the faults, the fewest first."""
    turned = [Said(turned_words(diagnosis.built_otherwise))] if diagnosis.built_otherwise else []
    return turned + [Said(faults_words(faults), faults) for faults in diagnosis.diagnoses]


def limits_of(worked: Worked) -> list[Said]:
    """What no run shows, and what none tells apart, a row each."""
    hidden = [Said(hidden_words(fault), (fault,)) for fault in worked.hidden]
    return hidden + [Said(alike_words(faults), faults) for faults in worked.alike]


def _sentence(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}."
