"""A small network worked out by hand: three stations, two junctions, and a plan of it.

Quay — Gate — Mill, with a branch at Gate by way of Halt to Fen; Halt also sends carts back to Gate.

    Quay ─64─► Gate/Town   (Pans, or Salt: Fields)
               Gate/Pans   ─40─► Mill
               Gate/Fields ─80─► Halt/Gate   (Ring, or Reed: Fen)
                                 Halt/Fen  ─16─► Fen
                                 Halt/Ring ─24─► Halt/Round (one way: Gate) ─8─► Gate/Fields (Pans only)
"""

from __future__ import annotations

from typing import Final

from model.network.network import JunctionSpec, Link, Network, ReaderSpec, Station, Trip
from model.network.result import NetworkPlan, Planned, TripPlan

NETWORK: Final = Network(
    title="Crossing",
    stations=tuple(map(Station, ("Quay", "Mill", "Fen"))),
    junctions=(
        JunctionSpec(
            "Gate", readers=(ReaderSpec("Town", ("Pans", "Fields")), ReaderSpec("Fields", ("Pans",)))
        ),
        JunctionSpec("Halt", readers=(ReaderSpec("Gate", ("Fen", "Ring")), ReaderSpec("Round", ("Gate",)))),
    ),
    links=(
        Link("Quay", "Gate/Town", 64),
        Link("Gate/Pans", "Mill", 40),
        Link("Gate/Fields", "Halt/Gate", 80),
        Link("Halt/Fen", "Fen", 16),
        Link("Halt/Ring", "Halt/Round", 24),
        Link("Halt/Gate", "Gate/Fields", 8),
    ),
    trips=(Trip("Quay", "Mill", 70), Trip("Quay", "Fen", 35), Trip("Fen", "Quay", 10)),
)
PLAN: Final = NetworkPlan(
    waybills_per_week=70,
    names_bound=2,
    proved=True,
    readers={"Gate/Town": Planned("Pans", "Salt"), "Halt/Gate": Planned("Ring", "Reed")},
    trips=(
        TripPlan("Quay", "Mill", ("Gate/Town",), (), 104, (0, 1)),
        TripPlan("Quay", "Fen", ("Gate/Town", "Halt/Gate"), ("Salt", "Reed"), 160, (0, 2, 3)),
        TripPlan("Fen", "Quay", length=None),
    ),
)
