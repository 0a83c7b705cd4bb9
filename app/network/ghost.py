"""What a gesture on the map would make."""

from __future__ import annotations

from dataclasses import dataclass

from model.network.network import Spot


@dataclass(frozen=True)
class Ghost:
    """What a gesture would make: lines, and nodes at places."""

    lines: tuple[tuple[Spot, ...], ...] = ()
    stations: tuple[Spot, ...] = ()
    junctions: tuple[Spot, ...] = ()
    refused: tuple[Spot, ...] = ()
    """Where something cannot be."""
