"""The dry run: signals, items and carts together, tick by tick."""

from model.dry_run.dry_run import DryRun, Unsure
from model.dry_run.findings import RunFinding, Trouble
from model.dry_run.outcomes import Arrival, CartState, Lost, Why
from model.dry_run.running import Probes, Result, Watched, run
from model.dry_run.script import (
    EMPTY,
    TICK_LIMIT,
    Drop,
    Event,
    EventRefused,
    Fill,
    Lever,
    Load,
    Press,
    Script,
    Send,
    Timed,
)
from model.dry_run.watch import Watch

__all__ = [
    "EMPTY",
    "TICK_LIMIT",
    "Arrival",
    "CartState",
    "Drop",
    "DryRun",
    "Event",
    "EventRefused",
    "Fill",
    "Lever",
    "Load",
    "Lost",
    "Press",
    "Probes",
    "Result",
    "RunFinding",
    "Script",
    "Send",
    "Timed",
    "Trouble",
    "Unsure",
    "Watch",
    "Watched",
    "Why",
    "run",
]
