"""The measure of memory itself: it must see what is left behind."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tests.harness.memory import grows_little


@pytest.mark.parametrize(
    "made",
    [lambda: bytearray(b"x" * 1_048_576), lambda: [(number,) for number in range(10_000)]],
    ids=["one large", "many small"],
)
def test_what_stays_behind_is_seen(made: Callable[[], object]) -> None:
    """The control that must fail: a hundred events that keep a megabyte, or ten thousand small objects."""
    kept: list[object] = []
    with pytest.raises(AssertionError, match="events left"):
        grows_little(lambda events: kept.extend(made() for _ in range(events)), 1, 100)


def test_what_is_dropped_again_is_no_growth() -> None:
    grows_little(lambda events: [bytearray(b"x" * 1_024) for _ in range(events)].clear(), 2_000, 2_000)
