"""Test runs and diagnoses in words for people."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from app.subcommands.streams import columns, plain
from app.turn_words import turn_words
from model.commissioning import Commissioning, Diagnosis, Fault, Run
from model.edits.words import counted


def tests_text(commissioning: Commissioning) -> str:
    """The runs to make, then what no run shows and what no run tells apart; how much they show comes last."""
    faults, hidden = commissioning.faults, commissioning.hidden
    runs = [
        [str(number), run.start, _load(run), f"expect {commissioning.outcome(run)}"]
        for number, run in enumerate(commissioning.tests, start=1)
    ]
    shown = f"{len(faults) - len(hidden):,} of {counted(len(faults), 'fault')} shown"
    groups = [", or ".join(fault.words for fault in group) for group in commissioning.alike]
    return (
        _section("Runs", runs)
        + _section("No run shows that", [[fault.words] for fault in hidden])
        + _section("No run tells which", [[group] for group in groups])
        + f"{counted(len(runs), 'run')}: {shown}\n"
    )


def diagnosis_text(found: Diagnosis) -> str:
    """What explains what was seen, an orientation first; the next run comes last."""
    otherwise = [[turn_words(turn)] for turn in found.built_otherwise]
    faults = [[str(number), _together(each)] for number, each in enumerate(found.diagnoses, start=1) if each]
    return (
        _section("What was seen fits the junction built otherwise", otherwise)
        + _section("What may be wrong", faults)
        + ("Nothing is wrong as far as was seen.\n" if () in found.diagnoses else "")
        + "".join(_next(found.next_run))
    )


def _section(heading: str, rows: Sequence[Sequence[str]]) -> str:
    return f"{heading}\n{columns(rows)}" if rows else ""


def _load(run: Run) -> str:
    return "empty" if run.waybill is None else f"with {run.waybill}"


def _together(faults: Sequence[Fault]) -> str:
    return ", and ".join(fault.words for fault in faults)


def _next(run: Run | None) -> Iterator[str]:
    if run is not None:
        cart = "an empty cart" if run.waybill is None else f"a cart with {run.waybill}"
        yield plain(f"Next: send {cart} in by {run.start}.") + "\n"
