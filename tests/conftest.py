"""What holds for every test."""

from __future__ import annotations

import os

import pytest
from hypothesis import settings

# Tests need no screen; a developer who wants to watch names another platform.
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

settings.register_profile("push", derandomize=True)
settings.register_profile("long", derandomize=False)


def pytest_configure(config: pytest.Config) -> None:
    """A push draws the same examples every time, so it fails for what was pushed; long runs draw anew."""
    settings.load_profile("long" if config.getoption("markexpr") == "slow" else "push")
