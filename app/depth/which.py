"""Which levels are shown in depth. No Qt here."""

from __future__ import annotations

from collections.abc import Container, Iterable
from enum import IntEnum

from app.translation import QT_TR_NOOP


class Which(IntEnum):
    """The choices, in the order in which a key steps through them."""

    ALL = 0
    NEAR = 1
    OWN = 2
    CHOSEN = 3

    @property
    def next(self) -> Which:
        """The choice after this one; the first after the last."""
        return Which((self + 1) % len(Which))


WORDS = {
    Which.ALL: QT_TR_NOOP("All levels"),
    Which.NEAR: QT_TR_NOOP("Own level and next ones"),
    Which.OWN: QT_TR_NOOP("Own level only"),
    Which.CHOSEN: QT_TR_NOOP("Levels of what is chosen"),
}


def levels_shown(
    which: Which, filled: Iterable[int], own: int, chosen: Iterable[int], hidden: Container[int] = ()
) -> tuple[int, ...]:
    """The levels to show of those on which something stands, the lowest first.

    ``hidden``: those that are left out on the plan, too, where they are not drawn on.
    """
    filled = [level for level in filled if level == own or level not in hidden]
    if which is Which.CHOSEN:
        wanted = frozenset(chosen)
        return tuple(level for level in sorted(filled) if level in wanted)
    reach = {Which.NEAR: 1, Which.OWN: 0}.get(which)
    return tuple(level for level in sorted(filled) if reach is None or abs(level - own) <= reach)
