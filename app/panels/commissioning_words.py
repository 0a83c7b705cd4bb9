"""What the window says of test runs and of what they showed."""

from __future__ import annotations

from collections.abc import Sequence
from functools import reduce
from typing import Final, NamedTuple

from app.panels.commissioning_book import Worked
from app.translation import QT_TR_NOOP, tr
from app.turn_words import turn_words
from model.commissioning import Diagnosis, Fault, Run
from model.grid import Turn

EMPTY: Final = QT_TR_NOOP("empty")
ANEW: Final = QT_TR_NOOP("Being worked out…")
LOOKING: Final = QT_TR_NOOP("Looking for what explains it…")
LIMITS: Final = QT_TR_NOOP("What no run tells:")
NO_ROUTES: Final = QT_TR_NOOP("The test runs of the wanted routes are listed here; no routes are wanted yet.")
NO_RUNS: Final = QT_TR_NOOP("No cart can come in by the arms of the wanted routes.")
WORKING: Final = QT_TR_NOOP("Working out the test runs…")
NOT_SERVED: Final = QT_TR_NOOP("Not every wanted route arrives as drawn; the findings say why.")
UNEXPLAINED: Final = QT_TR_NOOP(
    "No fault explains what the carts did, nor do any two together, "
    "nor does the plan built turned or mirrored."
)


class Said(NamedTuple):
    """A row: a sentence, and the faults of which it speaks; none where it speaks of the whole plan."""

    words: str
    faults: tuple[Fault, ...] = ()


def load_words(run: Run) -> str:
    """What the cart of a run carries: its waybill, or nothing."""
    return tr(EMPTY) if run.waybill is None else run.waybill


def next_words(run: Run) -> str:
    """The run that tells the most, as something to do."""
    cart = tr("an empty cart") if run.waybill is None else tr("a cart with {waybill}", waybill=run.waybill)
    return tr("Next: send {cart} in at {start}", cart=cart, start=run.start)


def coverage_words(worked: Worked) -> str:
    """How much the fewest runs show of what can be wrong."""
    runs = len(worked.tests)
    if not worked.faults:
        said = tr("No single fault is possible here, so no run is needed.")
    elif not runs:
        said = tr("No run shows any of {faults}.", faults=tr("%n fault(s)", "", worked.faults))
    else:
        text = (
            QT_TR_NOOP("{runs} shows {shown} of {faults}.")
            if runs == 1
            else QT_TR_NOOP("{runs} show {shown} of {faults}.")
        )
        said = tr(
            text,
            runs=tr("%n run(s)", "", runs),
            shown=worked.shown,
            faults=tr("%n fault(s)", "", worked.faults),
        )
    return said if worked.serves else f"{said} {tr(NOT_SERVED)}"


def faults_words(faults: Sequence[Fault]) -> str:
    """Faults that are there together, as one sentence."""
    return _sentence(reduce(_and, (fault.words for fault in faults)))


def _and(first: str, second: str) -> str:
    return tr("{first}, and {second}", first=first, second=second)


def turned_words(turns: Sequence[Turn]) -> str:
    """How the plan may have been built otherwise than drawn."""
    return tr(
        "It looks as if it was built otherwise than drawn: {names}.",
        names="; or ".join(map(turn_words, turns)),
    )


def alike_words(faults: Sequence[Fault]) -> str:
    """Faults that every run shows in the same way."""
    return _sentence(tr("which of these it is: {names}", names="; ".join(fault.words for fault in faults)))


def hidden_words(fault: Fault) -> str:
    """A fault that changes the way of no cart."""
    return _sentence(tr("whether {fault}", fault=fault.words))


def progress_words(ticked: int, runs: int) -> str:
    """While every cart that was sent did as it must."""
    if not ticked:
        return tr("Tick a run when its cart came out as it must; else choose what the cart did.")
    if ticked < runs:
        return tr(
            "{ticked} of {runs} came out right; no fault shows so far.",
            ticked=ticked,
            runs=tr("%n run(s)", "", runs),
        )
    return tr("Every cart did as it must: there is no single fault that a run could show.")


def explained_words(diagnosis: Diagnosis) -> str:
    """The heading of what may be wrong."""
    explanations = len(explanations_of(diagnosis))
    if not explanations:
        return tr(UNEXPLAINED)
    if explanations == 1:
        return tr("One explanation:")
    # The next run is one that tells faults apart; whether it was built otherwise, others may tell.
    if diagnosis.next_run is None and not diagnosis.built_otherwise:
        return tr(
            "No further run tells these {explanations} apart; the smallest first:", explanations=explanations
        )
    return tr("{explanations} explanations, the smallest first:", explanations=explanations)


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
