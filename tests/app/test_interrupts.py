"""Ctrl-C while libraries load that make something else of it, or do not survive it."""

from __future__ import annotations

import os
import signal
from collections.abc import Iterator

import pytest

from app.interrupts import interrupt_held_back, interruptible


@pytest.fixture(autouse=True)
def as_python_has_it() -> Iterator[None]:
    """Whatever the runner of the tests does at a Ctrl-C."""
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    yield
    signal.signal(signal.SIGINT, before)


def ctrl_c() -> None:
    os.kill(os.getpid(), signal.SIGINT)


def loads_badly() -> int:
    """As extension modules do that import another one while they load."""
    try:
        ctrl_c()
    except KeyboardInterrupt:
        raise ImportError("numpy._core.multiarray failed to import") from None
    return 0


def test_what_a_library_makes_of_ctrl_c_is_one() -> None:
    with pytest.raises(KeyboardInterrupt):
        interruptible(loads_badly)


def test_what_a_library_raises_by_itself_is_none() -> None:
    def fails() -> int:
        raise ImportError("no such module")

    with pytest.raises(ImportError, match="no such module"):
        interruptible(fails)
    assert interruptible(lambda: 3) == 3


def test_ctrl_c_waits_until_a_library_is_loaded() -> None:
    done: list[str] = []

    def load() -> None:
        with interrupt_held_back():
            ctrl_c()
            done.append("loaded")

    with pytest.raises(KeyboardInterrupt):
        load()
    assert done == ["loaded"]
    with pytest.raises(KeyboardInterrupt):
        ctrl_c()


def test_who_is_to_pass_over_ctrl_c_does() -> None:
    """As a shell asks of what it runs in the background."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)

    def asked() -> int:
        ctrl_c()
        with interrupt_held_back():
            ctrl_c()
        return 0

    assert interruptible(asked) == 0
