"""What comes at another place in the order of placing."""

from __future__ import annotations

from bisect import bisect_left

from model.grid import Cell
from model.pieces import Pieces


def placed_elsewhere(before: Pieces, after: Pieces) -> tuple[Cell, ...]:
    """The fewest cells that must come earlier or later for the two orders to agree, in the later order.

    Only cells that hold a piece in both plans count. Those that stay are a longest increasing subsequence of
    the earlier places, found by laying out piles (patience sorting; Fredman 1975, from memory).
    """
    place = {piece.at: number for number, piece in enumerate(before)}
    cells = [piece.at for piece in after if piece.at in place]
    stays = _longest_increasing([place[cell] for cell in cells])
    return tuple(cell for number, cell in enumerate(cells) if number not in stays)


def _longest_increasing(places: list[int]) -> frozenset[int]:
    """Which entries make up a longest increasing subsequence; no two entries are equal."""
    tops: list[int] = []
    top_entries: list[int] = []
    below: list[int | None] = []
    for entry, place in enumerate(places):
        pile = bisect_left(tops, place)
        below.append(top_entries[pile - 1] if pile else None)
        tops[pile : pile + 1] = [place]
        top_entries[pile : pile + 1] = [entry]
    found = set()
    last = top_entries[-1] if top_entries else None
    while last is not None:
        found.add(last)
        last = below[last]
    return frozenset(found)
