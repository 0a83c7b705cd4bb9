"""What a power cycle does to a rail, and the state of a setting."""

from __future__ import annotations

from collections.abc import Collection

from tests.oracle.shapes import Place, Track


def power_cycle(as_built: Track, at: Place) -> tuple[str, str]:
    """(resting, powered): the rail's shapes after on and off, and after on again."""
    track = as_built.copy()
    track.notice(at, powered=True)
    track.notice(at, powered=False)
    resting = track.shape[at]
    track.notice(at, powered=True)
    return resting, track.shape[at]


def switches(as_built: Track) -> list[Place]:
    """The rails that one power cycle shows in two shapes, in the order of placing."""
    cycles = {at: power_cycle(as_built, at) for at in as_built.part}
    return [at for at, (resting, powered) in cycles.items() if resting != powered]


def state(
    as_built: Track, wired: Collection[Place], powered: Collection[Place], *, backward: bool = False
) -> Track:
    """The rails when exactly the ``powered`` ones of the ``wired`` ones have a signal.

    First every wired one is powered and released, then the powered ones are powered, all in the
    order of placing; ``backward`` takes both in the reverse order.
    """
    track = as_built.copy()
    order = [at for at in as_built.part if at in wired]
    if backward:
        order.reverse()
    for at in order:
        track.notice(at, powered=True)
        track.notice(at, powered=False)
    for at in order:
        if at in powered:
            track.notice(at, powered=True)
    return track


def is_stable(as_built: Track, wired: Collection[Place], powered: Collection[Place]) -> bool:
    """Whether every rail comes to the same shape in either order of the power changes."""
    forward = state(as_built, wired, powered)
    return forward.shape == state(as_built, wired, powered, backward=True).shape
