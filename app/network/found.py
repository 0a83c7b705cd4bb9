"""The findings of a network as rows of a list, and what on the map each is about."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from app.network.items import Item, Kind
from app.panels.words import listed
from app.translation import tr
from model.network.findings import NETWORK_RULES, NetworkFinding, findings
from model.network.network import Network, junction_and_arm
from model.network.result import NetworkPlan
from model.severity import Severity


class Found(NamedTuple):
    """A finding, as the list has it."""

    finding: NetworkFinding

    @property
    def waived(self) -> bool:
        """Whether it is set aside."""
        return self.finding.waived

    @property
    def key(self) -> tuple[object, ...]:
        """What tells it from others."""
        return (self.finding.rule, self.finding.names, self.finding.message)

    @property
    def severity(self) -> Severity:
        """How grave it is."""
        return self.finding.severity

    @property
    def title(self) -> str:
        """What is wrong, in a few words."""
        return tr(NETWORK_RULES[self.finding.rule].title)

    @property
    def message(self) -> str:
        """What is wrong here."""
        return self.finding.message

    @property
    def place(self) -> str:
        """Where: names."""
        names = self.finding.names
        return listed(names[:2]) + ("…" if len(names) > 2 else "") if names else ""

    @property
    def items(self) -> frozenset[Item]:
        """What on the map it is about."""
        about = self.finding.found
        return frozenset(
            Item(kind, place)
            for kind, places in (
                (Kind.STATION, about.stations),
                (Kind.JUNCTION, about.junctions),
                (Kind.LINK, about.links),
            )
            for place in places
        )

    @property
    def trips(self) -> tuple[int, ...]:
        """The trips that it is about, by their places in the network."""
        return self.finding.found.trips

    @property
    def readers(self) -> tuple[str, ...]:
        """The arms that it names: ``Mill/East``."""
        return tuple(name for name in self.finding.names if junction_and_arm(name) is not None)


def found_in(network: Network, plan: NetworkPlan) -> tuple[Found, ...]:
    """All findings of a network."""
    return tuple(Found(finding) for finding in findings(network, plan))


def markers_of(found: Iterable[Found]) -> dict[Item, tuple[str, int]]:
    """Of each thing on the map the gravest severity and how many findings there are, but those set aside."""
    markers: dict[Item, tuple[str, int]] = {}
    ranks = {severity.value: severity.rank for severity in Severity}
    for each in (each for each in found if not each.waived):
        for item in each.items:
            word, count = markers.get(item, (each.severity.value, 0))
            graver = min(word, each.severity.value, key=ranks.__getitem__)
            markers[item] = (graver, count + 1)
    return markers
