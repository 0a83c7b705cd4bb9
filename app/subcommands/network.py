"""``platelayer network``: ways, defaults and waybills of a whole network, and what is wrong with it."""

from __future__ import annotations

import os
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

import click

from app.interrupts import interrupt_held_back
from app.subcommands.completing import any_file, networks
from app.subcommands.network_since import changes_json, changes_text
from app.subcommands.network_traffic import (
    run_traffic,
    settings_from,
    traffic_json,
    traffic_options,
    traffic_text,
)
from app.subcommands.numbers import Within
from app.subcommands.progress import Progress
from app.subcommands.sheet import ENDINGS, say_pages
from app.subcommands.statuses import DONE, ERROR_FOUND
from app.subcommands.streams import put, put_json, say
from model.files.network_file import read_network
from model.files.writer import check_writable, write_bytes
from model.network.network import Network
from model.severity import Severity

if TYPE_CHECKING:  # what planning needs takes long to import, and the help of all commands must not wait
    from collections.abc import Sequence

    from model.network.changes import PlanChanges
    from model.network.findings import NetworkFinding
    from model.network.result import NetworkPlan
    from model.network.traffic_values import Traffic

STAGES: Final = {"ways": "ways", "defaults": "defaults", "names": "names", "prices": "prices of pins"}


@click.command("network")
@click.argument("file", shell_complete=networks)
@click.option(
    "--seconds",
    type=Within(min=0),
    default=60,
    show_default=True,
    help="For better plans, at most.",
)
@click.option(
    "--graphml", metavar="OUT.graphml", shell_complete=any_file, help="Write the network as a graph, too."
)
@click.option(
    "--cards",
    metavar="OUT.pdf",
    shell_complete=any_file,
    help="Write departure cards and the list of readers, too.",
)
@click.option(
    "--since",
    metavar="OLD.network.json",
    shell_complete=networks,
    help="Tell what changes; names stay where they can.",
)
@traffic_options
@click.option("--json", "as_json", is_flag=True, help="Print one JSON object.")
def command(
    file: str,
    seconds: float,
    graphml: str | None,
    cards: str | None,
    since: str | None,
    traffic: bool,
    as_json: bool,
    **options: Any,
) -> int:
    """Plan a network: the way of each trip, the default and the waybill of each reader, what to take along.

    Each trip takes a shortest way; then the waybills carried in a week are the fewest, then their names.
    """
    if cards is not None and Path(cards).suffix.lower() not in ENDINGS:
        raise click.BadParameter(f"the name must end in {', '.join(ENDINGS)}", param_hint="--cards")
    _check_apart({"--graphml": graphml, "--cards": cards}, [file, *([] if since is None else [since])])
    network = read_network(file)
    if graphml is not None and any(_is_same(graphml, plan) for plan in _plans(file, network)):
        raise click.BadParameter("a plan of the network would be written over", param_hint="--graphml")
    earlier = None if since is None else read_network(since)
    settings = settings_from(network, **options)
    for path in filter(None, (graphml, cards)):
        check_writable(path)
    plan, changes = _plan(network, seconds), None
    if earlier is not None:
        plan, changes = _compared(earlier, network, plan, seconds)
    found = _findings(network, plan)
    if graphml is not None:
        _write_graph(graphml, network, plan)
    if cards is not None:
        _write_cards(cards, network, plan)
    counts = run_traffic(network, plan, settings) if traffic else None
    if as_json:
        put_json(_as_json(plan, found, counts, changes))
    else:
        put(_as_text(click.format_filename(file), network, plan, found, counts, changes))
    is_wrong = any(each.severity is Severity.ERROR and not each.waived for each in found)
    return ERROR_FOUND if is_wrong else DONE


def _check_apart(outputs: dict[str, str | None], read: Sequence[str]) -> None:
    """Nothing is written over what is read, nor two things into one file. Raises BadParameter."""
    asked = {option: path for option, path in outputs.items() if path is not None}
    for option, path in asked.items():
        if any(_is_same(path, other) for other in read):
            raise click.BadParameter("the network itself would be written over", param_hint=option)
    if len({*map(os.path.realpath, asked.values())}) < len(asked):
        raise click.BadParameter("the cards are to be written there", param_hint="--graphml")


def _is_same(path: str, other: str) -> bool:
    return os.path.realpath(path) == os.path.realpath(other)


def _plans(file: str, network: Network) -> list[str]:
    """The files of the plans that a network names."""
    folder = os.path.dirname(file)
    return [os.path.join(folder, each.plan) for each in network.junctions if each.plan is not None]


def _plan(network: Network, seconds: float) -> NetworkPlan:
    """The last plan, telling of how far it is meanwhile."""
    from model.network.planning import plan_network
    from model.network.result import NetworkPlan

    best: NetworkPlan | None = None
    with Progress() as progress:
        for step in plan_network(network, seconds):
            if isinstance(step, NetworkPlan):
                best = step
            else:
                progress.tell(f"{STAGES.get(step.stage, step.stage)}: {step.done:,} of {step.of:,}")
    assert best is not None, "there is always a plan"
    return best


def _findings(network: Network, plan: NetworkPlan) -> tuple[NetworkFinding, ...]:
    from model.network.findings import findings

    return findings(network, plan)


def _write_graph(path: str, network: Network, plan: NetworkPlan) -> None:
    from model.files.network_graphml import graphml_bytes

    write_bytes(path, graphml_bytes(network, plan))
    say(f"wrote {click.format_filename(path)}")


def _compared(
    earlier: Network, network: Network, plan: NetworkPlan, seconds: float
) -> tuple[NetworkPlan, PlanChanges]:
    """The plan under the names of the earlier network, and what changes."""
    from model.network.changes import plan_changes, with_names_of

    before = _plan(earlier, seconds)
    plan = with_names_of(before, network, plan)
    return plan, plan_changes(before, plan)


def _write_cards(path: str, network: Network, plan: NetworkPlan) -> None:
    # Qt looks at these when it is imported: drawing needs no screen, and is the same in every locale.
    os.environ |= {"QT_QPA_PLATFORM": "offscreen", "LC_ALL": "C.UTF-8"}
    with interrupt_held_back():
        from app.export.cards import export_cards

    say_pages(Path(path), export_cards(network, plan, path))


def _as_json(
    plan: NetworkPlan, found: Sequence[NetworkFinding], counts: Traffic | None, changes: PlanChanges | None
) -> dict[str, Any]:
    asked = {} if counts is None else {"traffic": traffic_json(counts)}
    asked |= {} if changes is None else {"changes": changes_json(changes)}
    return asked | {
        "waybills_per_week": plan.waybills_per_week,
        "distinct_names": plan.distinct_names,
        "names_bound": plan.names_bound,
        "readers": {
            key: {"default": planned.default, "name": planned.name} for key, planned in plan.readers.items()
        },
        "trips": [
            {"from": trip.start, "to": trip.end, "via": trip.via, "waybills": trip.waybills}
            for trip in plan.trips
        ],
        "findings": [
            {
                "rule": finding.rule,
                "severity": finding.severity,
                "names": finding.names,
                "message": finding.message,
                "waived": finding.waived,
            }
            for finding in found
        ],
    }


def _as_text(
    file: str,
    network: Network,
    plan: NetworkPlan,
    found: Sequence[NetworkFinding],
    counts: Traffic | None,
    changes: PlanChanges | None,
) -> str:
    from app.subcommands.network_text import network_text

    asked = "" if counts is None else traffic_text(counts)
    asked += "" if changes is None else changes_text(changes)
    return network_text(file, network, plan, found) + asked
