"""All that can change while a plan runs."""

from __future__ import annotations

from copy import copy, deepcopy
from dataclasses import dataclass, field

from tests.oracle.dry_run_carts import Cart
from tests.oracle.dry_run_items import Slots
from tests.oracle.dry_run_power import Signals
from tests.oracle.shapes import Place, Track


@dataclass
class State:
    """All that can change."""

    track: Track
    out: dict[Place, int]
    slots: dict[Place, Slots]
    signals: Signals = None
    pending: dict[Place, int] = field(default_factory=dict)
    changes: dict[Place, list[int]] = field(default_factory=dict)
    buttons: dict[Place, int] = field(default_factory=dict)
    looks: dict[Place, int] = field(default_factory=dict)
    acted: dict[Place, int] = field(default_factory=dict)
    crafts: dict[Place, int] = field(default_factory=dict)
    carts: list[Cart] = field(default_factory=list)
    arrivals: list[tuple] = field(default_factory=list)
    lost: list[tuple] = field(default_factory=list)

    def copied(self) -> State:
        """A state to go on with apart from this one; ``signals`` are made anew in every tick."""
        twin = copy(self)
        twin.track = self.track.copy()
        for name in self.everything():
            setattr(twin, name, deepcopy(getattr(self, name)))
        return twin

    def everything(self) -> dict[str, object]:
        """What two states are compared by; dust and power follow from it, shapes come on top."""
        return {name: value for name, value in vars(self).items() if name not in ("track", "signals")}

    def differs(self, other: State) -> bool:
        """Whether anything is not as there."""
        return self.everything() != other.everything() or self.track.shape != other.track.shape
