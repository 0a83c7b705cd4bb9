"""The traffic of a network on the command line: what to simulate, and what came of it."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING, Any, Final, TypeVar

import click

from app.subcommands.numbers import Within
from app.subcommands.progress import Progress
from app.subcommands.streams import columns, plain
from model.edits.words import counted
from model.network.network import Network
from model.network.traffic_values import DAY, HOLD, PASSAGE, QueueCount, TrafficSettings

if TYPE_CHECKING:
    from model.network.result import NetworkPlan
    from model.network.traffic_values import ReaderTraffic, Traffic, TripTraffic

MOST_HOURS: Final = 10_000
MOST_SECONDS: Final = 86_400
"""For which a reader holds, or a passage takes."""
Command = TypeVar("Command", bound=Callable[..., Any])
OPTIONS: Final = (
    click.option("--traffic", is_flag=True, help="Simulate carts, and tell where they wait."),
    click.option(
        "--hours",
        type=Within(0, MOST_HOURS, min_open=True),
        default=DAY,
        show_default=True,
        help="How long to simulate.",
    ),
    click.option("--seed", type=int, default=0, show_default=True, help="Another one sends other carts."),
    click.option("--evenly", is_flag=True, help="Send the carts of a trip at equal intervals."),
    click.option(
        "--hold",
        multiple=True,
        metavar="[WHERE=]SECONDS",
        help="How long a reader holds after a called cart; WHERE is a junction, or Mill/East. Repeat it."
        f"  [default: {HOLD:g}]",
    ),
    click.option(
        "--passage",
        type=Within(0, MOST_SECONDS),
        default=PASSAGE,
        show_default=True,
        help="Seconds from a cart at a reader until it is past the switches.",
    ),
)


def traffic_options(command: Command) -> Command:
    """The options of the simulation."""
    for option in reversed(OPTIONS):
        command = option(command)
    return command


def settings_from(
    network: Network, hours: float, seed: int, evenly: bool, hold: Iterable[str], passage: float
) -> TrafficSettings:
    """What the options say. Raises BadParameter."""
    places = {junction.name for junction in network.junctions} | {key for key, _ in network.readers()}
    everywhere, holds = HOLD, dict[str, float]()
    for said in hold:
        where, equals, number = said.rpartition("=")
        seconds = _seconds(number)
        if not equals:
            everywhere = seconds
        elif where in places:
            holds[where] = seconds
        else:
            raise click.BadParameter(f"there is no junction or reader {where!r}", param_hint="--hold")
    return TrafficSettings(hours, seed, evenly, everywhere, passage, holds)


def _seconds(number: str) -> float:
    try:
        seconds = float(number)
    except ValueError:
        seconds = -1.0
    if not 0 <= seconds <= MOST_SECONDS:
        wanted = f"a number of seconds from 0 to {MOST_SECONDS:,}"
        raise click.BadParameter(f"{number!r} is not {wanted}", param_hint="--hold")
    return seconds


def run_traffic(network: Network, plan: NetworkPlan, settings: TrafficSettings) -> Traffic:
    """What was counted, telling of how far it is meanwhile."""
    from model.network.traffic import simulate
    from model.network.traffic_journeys import journeys
    from model.network.traffic_values import Traffic

    with Progress() as progress:
        for step in simulate(journeys(network, plan), settings):
            if isinstance(step, Traffic):
                return step
            progress.tell(f"traffic: {step.done / 3600:,.1f} of {settings.hours:,g} hours")
    raise AssertionError("the simulation ended without a result")


def traffic_json(traffic: Traffic) -> dict[str, Any]:
    """Seconds, and carts."""
    settings = traffic.settings
    return {
        "hours": settings.hours,
        "seed": settings.seed,
        "departed": traffic.departed,
        "arrived": traffic.arrived,
        "readers": {
            each.reader: _queue(each.queue)
            | {"called": each.called, "utilisation": each.utilisation, "load": each.load}
            for each in traffic.readers
        },
        "junctions": {each.junction: _queue(each.queue) for each in traffic.junctions},
        "trips": [
            {
                "from": trip.start,
                "to": trip.end,
                "departed": trip.departed,
                "arrived": trip.arrived,
                "mean_seconds": trip.mean_seconds,
                "longest_seconds": trip.longest_seconds,
                "free_seconds": trip.free_seconds,
            }
            for trip in traffic.trips
        ],
    }


def _queue(queue: QueueCount) -> dict[str, float]:
    return {
        "arrivals": queue.arrivals,
        "mean_queue": queue.mean_length,
        "longest_queue": queue.longest,
        "mean_wait": queue.mean_wait,
    }


def traffic_text(traffic: Traffic) -> str:
    """The tables, and a line that sums up; where readers are overloaded, one about each."""
    settings = traffic.settings
    sections = {
        "Queues at junctions": [[each.junction, *_waits(each.queue)] for each in traffic.junctions],
        "Queues at readers": [_reader(each) for each in traffic.readers],
        "Times of trips": [_trip(trip) for trip in traffic.trips],
    }
    tables = "".join(f"{heading}\n{columns(rows)}" for heading, rows in sections.items() if rows)
    too_much = "".join(
        f"{plain(each.reader)} cannot take all that comes: its queue grows for ever\n"
        for each in traffic.overloaded
    )
    carts = f"{counted(traffic.departed, 'cart')} set out, {traffic.arrived:,} arrived"
    hours = "1 hour" if settings.hours == 1 else f"{settings.hours:,g} hours"
    return f"{tables}{too_much}traffic of {hours}: {carts}\n"


def _waits(queue: QueueCount) -> list[str]:
    return [
        counted(queue.arrivals, "cart"),
        f"wait {queue.mean_wait:,.1f} s on average",
        f"queue {queue.mean_length:,.2f} on average, {queue.longest:,} at most",
    ]


def _reader(reader: ReaderTraffic) -> list[str]:
    return [reader.reader, *_waits(reader.queue), f"{reader.utilisation:.1%} in use"]


def _trip(trip: TripTraffic) -> list[str]:
    name, often = f"{trip.start} → {trip.end}", counted(trip.departed, "cart")
    if trip.mean_seconds is None or trip.longest_seconds is None:
        return [name, often, "none arrived", ""]
    mean, longest, free = (
        f"{seconds:,.1f} s" for seconds in (trip.mean_seconds, trip.longest_seconds, trip.free_seconds)
    )
    return [name, often, f"{mean} on average, {longest} at most", f"{free} without waiting"]
