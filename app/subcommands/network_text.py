"""The plan of a network in words for people: what to write on signs first, and the findings last."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from app.subcommands.streams import columns, plain
from model.edits.words import counted
from model.network.cards import ReaderSign, reader_signs
from model.network.network import Network, ReaderPin, end_of
from model.network.times import seconds_for
from model.severity import Severity

if TYPE_CHECKING:  # what planning needs takes long to import, and the help of all commands must not wait
    from collections.abc import Sequence

    from model.network.findings import NetworkFinding
    from model.network.network import Trip
    from model.network.result import NetworkPlan, Price, TripPlan


def network_text(file: str, network: Network, plan: NetworkPlan, findings: Sequence[NetworkFinding]) -> str:
    """The report on a network."""
    trips = zip(network.trips, plan.trips, strict=True)
    sections = {
        "Readers": [_sign(sign) for sign in reader_signs(network, plan)],
        "Trips": [_trip(trip, planned) for trip, planned in trips],
        "Pins, and what each costs": [_price(price) for price in plan.prices],
        "Findings": [_finding(finding) for finding in findings],
    }
    head = plain(f"{file}: {network.title}" if network.title else file)
    tables = "".join(f"{heading}\n{columns(rows)}" for heading, rows in sections.items() if rows)
    return f"{head}\n{tables}{_summary(plan)}\n{_counts(findings)}\n"


def in_a_row(waybills: Sequence[str]) -> str:
    """``2 Salt, Reed``: what to carry, in the order in which it is taken."""
    runs = [(name, len(list(run))) for name, run in groupby(waybills)]
    return ", ".join(name if number == 1 else f"{number:,} {name}" for name, number in runs)


def _sign(sign: ReaderSign) -> list[str]:
    takes = "takes nothing" if sign.name is None else f"takes {sign.name}, then by {sign.other}"
    return [end_of(sign.junction, sign.arm), f"empty by {sign.default}", takes]


def _trip(trip: Trip, planned: TripPlan) -> list[str]:
    name, often = f"{trip.start} → {trip.end}", f"{trip.per_week:,} a week"
    if planned.length is None:
        return [name, often, "no way", "", ""]
    cells, seconds = counted(planned.length, "cell"), f"{seconds_for(planned.length):,.1f} s"
    return [name, often, cells, seconds, in_a_row(planned.waybills) or "no waybill"]


def _price(price: Price) -> list[str]:
    """What would be saved without the pin."""
    pin = price.pin
    what = pin.reader if isinstance(pin, ReaderPin) else f"{pin.start} → {pin.end}"
    costs = [_more(price.waybills_per_week, "waybill") + " a week", _more(price.names, "name")]
    return [what, *costs, _more(price.length, "cell")]


def _more(number: float, word: str) -> str:
    """``+1 name``, ``−2 names``."""
    sign = "−" if number < 0 else "+"
    return f"{sign}{abs(number):,} {word if abs(number) == 1 else word + 's'}"


def _summary(plan: NetworkPlan) -> str:
    waybills, names = f"{plan.waybills_per_week:,} waybills a week", counted(plan.distinct_names, "name")
    if plan.proved:
        return f"{waybills}, {names}: no plan has fewer"
    bounds = f"{plan.waybills_bound:,} waybills, {counted(plan.names_bound, 'name')}"
    return f"{waybills}, {names}; proved to be needed: {bounds}"


def _finding(finding: NetworkFinding) -> list[str]:
    aside = f" (set aside: {finding.reason})" if finding.waived else ""
    return [finding.severity, finding.rule, finding.message + aside]


def _counts(findings: Sequence[NetworkFinding]) -> str:
    """How many of each count that are not set aside, and how many are."""
    counts = (
        counted(sum(each.severity is severity and not each.waived for each in findings), severity.value)
        for severity in Severity
    )
    aside = sum(finding.waived for finding in findings)
    return ", ".join(counts) + (f"; {aside:,} set aside" if aside else "")
