"""How the relevant rails lie as built, told by what they are linked to."""

from __future__ import annotations

from model.clauses import Clauses
from model.grid import Heading
from model.ordering.ground import Ground
from model.ordering.linking import Linking
from model.ordering.lying import Ends, Shapes, ends_as_built, shapes_of_ends
from model.track.rails import BIT, MASK


class AsBuilt:
    """The ends and shapes of rails before any signal comes."""

    def __init__(self, clauses: Clauses, ground: Ground, linking: Linking) -> None:
        self._clauses = clauses
        self._ground = ground
        self._linking = linking
        self._ends: dict[int, Ends] = {
            key: ends_as_built(clauses, linking.reaches(key), linking.lies_north_south[key])
            for key in ground.relevant
        }
        self.shapes = {key: self.shapes_of(key, ends) for key, ends in self._ends.items()}
        """The shapes of relevant rails."""

    def ends(self, key: int) -> Ends:
        """The ends of a rail, also of one on a plain run, which lies alike in every order."""
        if key in self._ends:
            return self._ends[key]
        mask = MASK[self._ground.layout.rails[key]]
        true = self._clauses.true
        return {heading: true if mask & BIT[heading] else -true for heading in Heading}

    def shapes_of(self, key: int, ends: Ends) -> Shapes:
        """The shapes that a relevant rail may have with these ends."""
        return shapes_of_ends(self._clauses, self._ground, key, ends, self._linking.links(key))
