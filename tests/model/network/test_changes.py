"""What changes between two plans of a network, and names that stay as they can."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import permutations

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from model.network.changes import PlanChanges, ReaderChange, TripChange, plan_changes, with_names_of
from model.network.network import Network, ReaderPin
from model.network.result import NetworkPlan, Planned, TripPlan
from tests.model.network.crossing import PLAN


def plan(readers: Mapping[str, Planned], *trips: TripPlan) -> NetworkPlan:
    return NetworkPlan(0, 0, True, readers, trips)


def named(**names: str | None) -> NetworkPlan:
    """Readers A, B, … with their names, all with the default East, and a trip that takes all of them."""
    readers = {key: Planned("East", name) for key, name in names.items()}
    return plan(readers, TripPlan("Quay", "Fen", (), tuple(name for name in names.values() if name), 8))


def names_of(made: NetworkPlan) -> list[str | None]:
    return [planned.name for planned in made.readers.values()]


def test_nothing_changes_between_a_plan_and_itself() -> None:
    changes = plan_changes(PLAN, PLAN)
    assert changes == PlanChanges((), ())
    assert changes.label == "nothing changes"


def test_what_is_new_gone_and_otherwise_is_told() -> None:
    before = plan(
        {"A/n": Planned("East", "Salt"), "B/n": Planned("East", "Reed"), "C/n": Planned("East", None)},
        TripPlan("Quay", "Fen", (), ("Salt",), 8),
        TripPlan("Quay", "Mill", (), (), 8),
        TripPlan("Fen", "Mill", (), ("Eel",), 8),
    )
    after = plan(
        {"A/n": Planned("West", "Salt"), "C/n": Planned("East", None), "D/n": Planned("East", "Eel")},
        TripPlan("Quay", "Fen", (), ("Eel", "Salt"), 9),
        TripPlan("Quay", "Mill", (), (), 20),
        TripPlan("Fen", "Mill", length=None),
    )
    changes = plan_changes(before, after)
    assert changes.readers == (
        ReaderChange("A/n", Planned("East", "Salt"), Planned("West", "Salt")),
        ReaderChange("D/n", None, Planned("East", "Eel")),
        ReaderChange("B/n", Planned("East", "Reed"), None),
    )
    assert changes.trips == (
        TripChange("Quay", "Fen", ("Salt",), ("Eel", "Salt")),
        TripChange("Fen", "Mill", ("Eel",), None),
    )
    assert changes.label == "3 readers change, 2 trips take other waybills"


@pytest.mark.parametrize(
    ("readers", "trips", "label"),
    [
        (1, 0, "1 reader changes"),
        (0, 1, "1 trip takes other waybills"),
        (1, 1, "1 reader changes, 1 trip takes other waybills"),
    ],
)
def test_the_label_counts(readers: int, trips: int, label: str) -> None:
    made = PlanChanges(
        readers * (ReaderChange("A/n", None, Planned("East", None)),),
        trips * (TripChange("Quay", "Fen", None, ()),),
    )
    assert made.label == label


def test_the_order_of_taking_is_a_change() -> None:
    before, after = named(A="Salt", B="Reed"), named(B="Reed", A="Salt")
    assert plan_changes(before, after).readers == ()
    assert len(plan_changes(before, after).trips) == 1


def test_names_that_were_only_exchanged_stay_as_they_were() -> None:
    before, after = named(A="Salt", B="Reed", C="Salt"), named(A="Reed", B="Salt", C="Reed")
    kept = with_names_of(before, Network(), after)
    assert plan_changes(before, kept).label == "nothing changes"
    assert len(plan_changes(before, after).readers) == 3


def test_a_new_name_takes_none_that_is_kept() -> None:
    """The new reader D has the word Salt, which stays with A and C; it gets one that nobody has."""
    before = named(A="Salt", B="Reed", C="Salt")
    after = named(A="Reed", B="Eel", C="Reed", D="Salt")
    assert names_of(with_names_of(before, Network(), after)) == ["Salt", "Reed", "Salt", "Eel"]


def test_the_greater_part_of_a_name_that_falls_apart_keeps_it() -> None:
    before = named(A="Salt", B="Salt", C="Salt")
    after = named(A="Salt", B="Reed", C="Reed")
    assert names_of(with_names_of(before, Network(), after)) == ["Reed", "Salt", "Salt"]


def test_of_two_that_could_keep_a_name_it_stays_where_it_is() -> None:
    before, after = named(A="Salt", B="Salt"), named(A="Reed", B="Salt")
    assert names_of(with_names_of(before, Network(), after)) == ["Reed", "Salt"]


def test_a_name_that_nothing_is_known_of_keeps_its_word() -> None:
    """A keeps Salt, so X needs another word, and takes none that Y has."""
    before, after = named(A="Salt"), named(X="Salt", Y="Eel", A="Reed")
    assert names_of(with_names_of(before, Network(), after)) == ["Reed", "Eel", "Salt"]


def test_pinned_names_stay() -> None:
    before, after = named(A="Salt", B="Reed"), named(A="Reed", B="Salt")
    network = Network(pins=(ReaderPin("A", None, "Reed"),))
    assert names_of(with_names_of(before, network, after)) == ["Reed", "Salt"]


def test_a_reader_whose_default_changes_does_not_hold_a_name() -> None:
    """Its sign is written anew in any case; C alone decides."""
    before = plan({"A": Planned("East", "Salt"), "B": Planned("East", "Salt"), "C": Planned("East", "Reed")})
    after = plan({"A": Planned("West", "Eel"), "B": Planned("West", "Eel"), "C": Planned("East", "Eel")})
    assert names_of(with_names_of(before, Network(), after)) == ["Reed"] * 3


NAMES = st.sampled_from(["Salt", "Reed", "Eel", "Peat", None])
PLANS = st.lists(NAMES, min_size=1, max_size=7).map(
    lambda names: named(**{chr(65 + place): name for place, name in enumerate(names)})
)


@settings(max_examples=150, deadline=None)
@given(PLANS, PLANS, st.sets(st.sampled_from(["Salt", "Reed", "Eel"]), max_size=2))
def test_no_other_names_keep_more_readers(before: NetworkPlan, after: NetworkPlan, pinned: set[str]) -> None:
    """Against all ways to hand out the words that there are: no two names fall together, none keeps more."""
    network = Network(pins=tuple(ReaderPin(f"R/{name}", None, name) for name in sorted(pinned)))
    kept = with_names_of(before, network, after)
    pairs = set(zip(names_of(after), names_of(kept), strict=True))
    assert len(pairs) == len({new for new, _ in pairs}) == len({was for _, was in pairs})
    assert all(new == was for new, was in pairs if new in pinned or new is None)
    assert all(was not in pinned or new == was for new, was in pairs)
    renamed = dict(pairs)
    assert kept.trips[0].waybills == tuple(renamed[name] for name in after.trips[0].waybills)
    assert kept == msgspec.structs.replace(after, readers=kept.readers, trips=kept.trips)

    def changed(names: Mapping[str | None, str | None]) -> int:
        both = ((before.readers.get(key), planned) for key, planned in after.readers.items())
        return sum(was is None or was.name != names.get(now.name, now.name) for was, now in both)

    free = [name for name in ("Salt", "Reed", "Eel", "Peat") if name not in pinned]
    fewest = min(changed(dict(zip(free, words, strict=True))) for words in permutations(free))
    assert changed(renamed) == fewest
