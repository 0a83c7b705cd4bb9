"""Detector rails: a cart that comes puts one on; while it is on it looks again every 20 ticks.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from model.dry_run.nodes import Detector
from model.dry_run.signals import Signals
from model.dry_run.traffic import Traffic
from model.dry_run.wheel import Wheel
from model.signals.timing import LOOK
from model.track.rails import pack


class Detectors:
    """The detector rails that are on, and when they look."""

    def __init__(self, signals: Signals, traffic: Traffic) -> None:
        self._signals = signals
        self._traffic = traffic
        outputs = signals.circuit.outputs.values()
        self._by_key = {pack(node.cell): node for node in outputs if isinstance(node, Detector)}
        self.reset()

    def reset(self) -> None:
        """All are off."""
        self._looks: Wheel[Detector] = Wheel()

    def look(self, now: int) -> None:
        """Those whose time it is go off where no cart is on them; those that a cart came to go on."""
        for detector in self._looks.pop(now):
            if self._is_free(detector):
                self._signals.set(detector, 0)
            else:
                self._looks.add(now + LOOK, detector)
        for key in self._traffic.entered:
            node = self._by_key.get(key)
            if node is not None and not node.value:
                self._signals.set(node, 15)
                self._looks.add(now + LOOK, node)

    def will_go_off(self) -> bool:
        """Whether one is on with no cart on it."""
        return any(self._is_free(detector) for _, detector in self._looks)

    def _is_free(self, detector: Detector) -> bool:
        return self._traffic.cart_in(pack(detector.cell)) is None
