"""The collector of garbage, paused and running again."""

from __future__ import annotations

import gc

import pytest

from model.collector import collector_paused


def test_the_collector_runs_again_afterwards_whatever_happens() -> None:
    with collector_paused():
        assert not gc.isenabled()
        with collector_paused():
            assert not gc.isenabled()
        assert not gc.isenabled(), "the inner pause must not end the outer one"
    assert gc.isenabled()
    with pytest.raises(ValueError, match="x"), collector_paused():
        raise ValueError("x")
    assert gc.isenabled()
