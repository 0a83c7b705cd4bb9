"""Dust after a change of what feeds it: only the dust that changes, and that beside it, is looked at.

First, from the strongest down, dust that nothing feeds any longer goes out; then, again from the strongest
down, what is left flows over it. Each dust so changes at most twice, whatever loops the wiring makes.
"""

from __future__ import annotations

from collections.abc import Iterable

from model.dry_run.nodes import Dust
from model.signals.containers import STRONGEST

_Shelves = list[list[Dust]]


def flow(changed: Iterable[Dust]) -> dict[Dust, int]:
    """Gives dust its strength again where ``changed`` has other feeds; returns what each that changed had."""
    before: dict[Dust, int] = {}
    wet = list(changed)
    _dry_up(wet, before)
    _flow_over([*before, *wet], before)
    return {dust: had for dust, had in before.items() if dust.value != had}


def _dry_up(changed: Iterable[Dust], before: dict[Dust, int]) -> None:
    shelves = _shelves()
    for dust in changed:
        shelves[dust.value].append(dust)
    for strength in range(STRONGEST, 0, -1):
        for dust in shelves[strength]:
            if dust.value != strength or _is_kept(dust):
                continue
            before.setdefault(dust, strength)
            dust.value = 0
            shelves[strength - 1].extend(other for other in dust.gives if other.value == strength - 1)


def _is_kept(dust: Dust) -> bool:
    """Whether something still gives it its strength; what is stronger has been looked at before."""
    strength = dust.value
    return any(feed.value >= strength for feed in dust.feeds) or any(
        other.value > strength for other in dust.takes
    )


def _flow_over(dry: Iterable[Dust], before: dict[Dust, int]) -> None:
    shelves = _shelves()
    for dust in dry:
        shelves[_fed(dust)].append(dust)
    for strength in range(STRONGEST, 0, -1):
        for dust in shelves[strength]:
            if dust.value >= strength:
                continue
            before.setdefault(dust, dust.value)
            dust.value = strength
            shelves[strength - 1].extend(other for other in dust.gives if other.value < strength - 1)


def _fed(dust: Dust) -> int:
    fed = max((feed.value for feed in dust.feeds), default=0)
    taken = max((other.value for other in dust.takes), default=0)
    return max(fed, taken - 1)


def _shelves() -> _Shelves:
    return [[] for _ in range(STRONGEST + 1)]
