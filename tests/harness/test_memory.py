"""The measure of memory itself: it must see what is left behind."""

from __future__ import annotations

import pytest

from tests.harness.memory import grows_little


def test_what_stays_behind_is_seen() -> None:
    """The control that must fail: a hundred events that keep 1 MB each."""
    kept: list[bytearray] = []
    with pytest.raises(AssertionError, match="events left"):
        grows_little(lambda events: kept.extend(bytearray(b"x" * 1_048_576) for _ in range(events)), 1, 100)


def test_what_is_dropped_again_is_no_growth() -> None:
    grows_little(lambda events: [bytearray(b"x" * 1_024) for _ in range(events)].clear(), 2_000, 2_000)
