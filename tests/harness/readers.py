"""Every reader of foreign bytes, and what each must keep to whatever it is given.

It reads, or refuses with a message that names the file, a place in it and what was expected. What it has read
keeps every invariant, and comes out the same when it is written and read again.
"""

from __future__ import annotations

import json
import time
from collections.abc import Callable, Sequence
from contextlib import suppress
from functools import cache
from pathlib import Path
from typing import Any, Final, NamedTuple

from model.commissioning import Commissioning, Observed, diagnose
from model.dry_run import EventRefused, Script, run
from model.files.errors import PlanFileError
from model.files.network_file import network_bytes, parse_network
from model.files.observed_file import parse_observed
from model.files.plan_file import parse_plan, plan_bytes
from model.files.script_file import parse_script
from model.network.network import Network
from model.parts import TRAITS
from model.pieces import Piece
from model.plan import Plan, plan_of
from model.routing.junction import Junction
from tests.model.files import documents, network_documents

ROOT: Final = Path(__file__).parents[2]
EXAMPLES: Final = ROOT / "resources" / "examples"
OBSERVED: Final = ROOT / "tests" / "data" / "commissioning" / "saltern.observed.json"
NAME: Final = "spoilt.json"
"""What the readers are told that the bytes came from."""
LONGEST_SECONDS: Final = 2.0
"""Of processor time, so that a busy machine proves nothing."""
TICKS: Final = 40
"""A script that is read is run for so long: what it says must not trip the run either."""


class Reader(NamedTuple):
    """One way for foreign bytes to come in."""

    good: bytes
    """Bytes that it reads, with every key that there is; the tests spoil them."""
    read: Callable[[bytes], Any]
    """Raises PlanFileError."""
    check: Callable[[Any], None]
    """Fails where what was read breaks a promise."""
    called: str = NAME
    """What its messages call the place where the bytes came from."""


def reads(reader: Reader, data: bytes) -> bool:
    """Whether the bytes are read; fails where reading breaks any promise."""
    start = time.process_time()
    try:
        value = reader.read(data)
    except PlanFileError as error:
        refusal = error
    else:
        reader.check(value)
        assert time.process_time() - start < LONGEST_SECONDS
        return True
    assert time.process_time() - start < LONGEST_SECONDS
    assert refusal.place
    assert refusal.expected
    assert str(refusal) == f"{reader.called}: {refusal.place}: expected {refusal.expected}"
    return False


def keeps_promises(plan: Plan) -> None:
    """A plan that was read: every invariant, and a fixed point of writing."""
    cells = [piece.at for piece in plan.pieces]
    assert len(set(cells)) == len(cells) == len(plan.pieces)
    for piece in plan.pieces:
        traits = TRAITS[piece.part]
        assert piece.facing in traits.facings
        assert sum(-(-held.count // 64) for held in piece.holds) <= traits.slots
        assert all(type(number) is int for number in piece.at)
    assert all(arm.enter or arm.leave for arm in plan.arms)
    starts = [route.start for route in plan.routes]
    assert len(set(starts)) == len(starts)
    written = plan_bytes(plan)
    again = parse_plan(written, "again")
    assert again == plan
    assert plan_bytes(again) == written


def _network_keeps_promises(network: Network) -> None:
    written = network_bytes(network)
    again = parse_network(written, "again")
    assert again == network
    assert network_bytes(again) == written
    assert all(link.length > 0 for link in network.links)
    assert all(trip.per_week >= 0 for trip in network.trips)


@cache
def _saltern() -> Commissioning:
    return Commissioning(Junction(_plan("saltern-junction")))


@cache
def _plan(name: str) -> Plan:
    return parse_plan((EXAMPLES / f"{name}.plan.json").read_bytes(), name)


def _script_can_be_run(script: Script) -> None:
    """What names things that the plan does not have is refused by the run, in words of its own."""
    assert all(timed.tick >= 0 for timed in script.events)
    with suppress(EventRefused):
        run(_plan("fen-ring"), script, TICKS)


def _can_be_explained(runs: Sequence[Observed]) -> None:
    """Whatever is said to have been seen, looking for faults comes to an end."""
    assert all(_saltern().can_send(each.run) for each in runs)
    assert diagnose(_saltern(), runs[:1]) is not None


def _from_clipboard(data: bytes) -> tuple[Piece, ...]:
    from PySide6.QtCore import QMimeData  # the other readers know no Qt

    from app.canvas.clipboard import MIME, document_in, pieces_in

    mime = QMimeData()
    mime.setData(MIME, data)
    document = document_in(mime)
    assert document is not None
    return pieces_in(document)


def _script() -> dict[str, Any]:
    plan = _plan("fen-ring")
    start = next(arm.name for arm in plan.arms if arm.enter)
    at = next(iter(plan.pieces)).at
    return {
        "probes": [list(at)],
        "events": [
            {"tick": 0, "do": "send", "arm": start, "carts": 2, "gap": 2, "waybills": {"Salt": 1}},
            {"tick": 1, "do": "send", "arm": start, "carts": 2, "waybills": [{}, {"Salt": 2}]},
            {"tick": 5, "do": "lever", "at": [0, 64, 5], "on": True},
            {"tick": 6, "do": "button", "at": [0, 64, 5]},
            {"tick": 9, "do": "fill", "at": [4, 63, 0], "holds": [{"item": "waybill:Salt", "count": 22}]},
        ],
    }


READERS: Final[dict[str, Reader]] = {
    "plan": Reader(
        plan_bytes(documents.read(documents.FULL)), lambda data: parse_plan(data, NAME), keeps_promises
    ),
    "network": Reader(
        network_bytes(network_documents.read(network_documents.FULL)),
        lambda data: parse_network(data, NAME),
        _network_keeps_promises,
    ),
    "script": Reader(
        json.dumps(_script()).encode(),
        lambda data: parse_script(data, NAME, _plan("fen-ring")),
        _script_can_be_run,
    ),
    "observation": Reader(
        OBSERVED.read_bytes(),
        lambda data: parse_observed(data, NAME, _saltern()),
        _can_be_explained,
    ),
    "clipboard": Reader(
        plan_bytes(documents.read(documents.FULL)),
        _from_clipboard,
        lambda pieces: keeps_promises(plan_of(pieces)),
        "clipboard",
    ),
}
"""By what they read."""
