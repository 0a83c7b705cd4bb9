"""What holds for every test."""

from __future__ import annotations

import gc
import os

import pytest
from hypothesis import HealthCheck, settings

MANY_MORE = 100_000
"""Objects that came while nobody looked for garbage."""

# Tests need no screen; a developer who wants to watch names another platform.
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

# A slow or busy machine must not decide: nothing here holds the clock against an example.
UNTIMED = settings(deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.register_profile("push", UNTIMED, derandomize=True)
settings.register_profile("long", UNTIMED, derandomize=False)


def pytest_configure(config: pytest.Config) -> None:
    """A push draws the same examples every time, so it fails for what was pushed; long runs draw anew."""
    settings.load_profile("long" if config.getoption("markexpr") == "slow" else "push")


def pytest_runtest_logfinish() -> None:
    """A window has garbage looked for in its loop of events; where no more come, it is looked for here."""
    if not gc.isenabled() and gc.get_count()[0] > MANY_MORE:
        gc.collect()
