"""How rails take their shapes: placing, settling, joining, slopes, notice of a signal part.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

Place = tuple[int, int, int]
"""A cell (x, y, z): x to the east, y upward, z to the south."""
Rail = tuple[str, Place, str]
"""A piece as it is placed: part, cell, facing."""

STEP = {"north": (0, -1), "east": (1, 0), "south": (0, 1), "west": (-1, 0)}
BACK = {"north": "south", "south": "north", "east": "west", "west": "east"}
NORTH_SOUTH = ("north", "south")
WEST_EAST = ("west", "east")
RAIL_PARTS = ("rail", "booster-rail", "detector-rail")

ENDS: dict[str, tuple[tuple[str, int], ...]] = {
    "north-south": (("north", 0), ("south", 0)),
    "rising-north": (("north", 1), ("south", 0)),
    "rising-south": (("north", 0), ("south", 1)),
    "east-west": (("west", 0), ("east", 0)),
    "rising-west": (("west", 1), ("east", 0)),
    "rising-east": (("west", 0), ("east", 1)),
    "south-east": (("east", 0), ("south", 0)),
    "south-west": (("west", 0), ("south", 0)),
    "north-east": (("east", 0), ("north", 0)),
    "north-west": (("west", 0), ("north", 0)),
}
"""The two ends of a shape, (direction, levels up), in the order in which placing visits them."""

CURVES = ("south-east", "south-west", "north-east", "north-west")
AT_REST_PREFERRED = CURVES
POWERED_PREFERRED = tuple(reversed(CURVES))


class Track:
    """The rails that stand in the world, with the shape that each has now."""

    def __init__(self) -> None:
        self.part: dict[Place, str] = {}
        self.shape: dict[Place, str] = {}

    def copy(self) -> Track:
        """The same rails, to go on with apart from these."""
        other = type(self)()
        other.part = dict(self.part)
        other.shape = dict(self.shape)
        return other

    # Words of the rules.

    def neighbour(self, at: Place, direction: str) -> Place | None:
        """The first rail in the next column: own level, one up, one down."""
        return self._first_rail(at, direction, at[1])

    def found_by_end(self, at: Place, direction: str, rise: int) -> Place | None:
        """The first rail in the column that the end points into, from the end's own level."""
        return self._first_rail(at, direction, at[1] + rise)

    def _first_rail(self, at: Place, direction: str, level: int) -> Place | None:
        dx, dz = STEP[direction]
        x, z = at[0] + dx, at[2] + dz
        for y in (level, level + 1, level - 1):
            if (x, y, z) in self.part:
                return (x, y, z)
        return None

    def live_links(self, at: Place) -> set[str]:
        """The directions of the ends that find a rail with an end back into this column."""
        links = set()
        for direction, rise in ENDS[self.shape[at]]:
            found = self.found_by_end(at, direction, rise)
            if found is not None and self._points(found, BACK[direction]):
                links.add(direction)
        return links

    def _points(self, at: Place, direction: str) -> bool:
        return any(direction == own for own, _ in ENDS[self.shape[at]])

    def has_room(self, at: Place, toward: str) -> bool:
        """Whether the rail has room for one in the column that lies ``toward`` it."""
        links = self.live_links(at)
        return toward in links or len(links) < 2

    def open_directions(self, at: Place) -> set[str]:
        """The directions whose neighbour exists and has room for this cell."""
        found = {direction: self.neighbour(at, direction) for direction in STEP}
        return {d for d, rail in found.items() if rail is not None and self.has_room(rail, BACK[d])}

    def neighbours(self, at: Place) -> int:
        """In how many directions there is a neighbour."""
        return sum(self.neighbour(at, direction) is not None for direction in STEP)

    # What happens.

    def place(self, part: str, at: Place, facing: str) -> None:
        """A builder who faces ``facing`` puts a rail into an empty cell; no signal anywhere."""
        self.part[at] = part
        self.shape[at] = "north-south" if facing in NORTH_SOUTH else "east-west"
        self.settle(at, powered=False)
        self.let_ends_join(at)

    def settle(self, at: Place, *, powered: bool) -> None:
        """The rail takes the shape that its open directions ask for."""
        opened = self.open_directions(at)
        if not opened:
            return
        if opened <= set(NORTH_SOUTH):
            self.shape[at] = "north-south"
        elif opened <= set(WEST_EAST):
            self.shape[at] = "east-west"
        elif self.part[at] == "rail":
            preferred = POWERED_PREFERRED if powered else AT_REST_PREFERRED
            self.shape[at] = next(curve for curve in preferred if set(curve.split("-")) <= opened)
        self.apply_slope(at)

    def apply_slope(self, at: Place) -> None:
        """A straight rail rises to a rail one up in the column of an end; south and west win."""
        if self.shape[at] == "north-south":
            rising_last_wins = NORTH_SOUTH
        elif self.shape[at] == "east-west":
            rising_last_wins = ("east", "west")
        else:
            return
        for direction in rising_last_wins:
            dx, dz = STEP[direction]
            if (at[0] + dx, at[1] + 1, at[2] + dz) in self.part:
                self.shape[at] = "rising-" + direction

    def let_ends_join(self, at: Place) -> None:
        """The rails that the ends find join this one, if they have room for it."""
        for direction, rise in ENDS[self.shape[at]]:
            found = self.found_by_end(at, direction, rise)
            if found is not None and self.has_room(found, BACK[direction]):
                self.join(found, BACK[direction])

    def join(self, at: Place, toward: str) -> None:
        """The rail bends so that it links ``toward`` as well."""
        links = self.live_links(at) | {toward}
        if links <= set(NORTH_SOUTH):
            self.shape[at] = "north-south"
        elif links <= set(WEST_EAST) or self.part[at] != "rail":
            self.shape[at] = "east-west"
        else:
            self.shape[at] = next(curve for curve in CURVES if set(curve.split("-")) == links)
        self.apply_slope(at)

    def notice(self, at: Place, *, powered: bool) -> None:
        """A signal part beside the rail has changed; the rail now has a signal or has none."""
        if self.part[at] != "rail" or self.neighbours(at) != 3:
            return
        before = self.shape[at]
        self.settle(at, powered=powered)
        if self.shape[at] != before:
            self.let_ends_join(at)


def build(pieces: list[Rail]) -> Track:
    """All pieces placed in order, without any signal; what is no rail is passed over."""
    track = Track()
    for part, at, facing in pieces:
        if part in RAIL_PARTS:
            track.place(part, at, facing)
    return track
