"""Numbers on the command line."""

from __future__ import annotations

import math
from typing import Any

import click


class Within(click.FloatRange):
    """A number within bounds. No bound keeps ``nan`` out, which is no number."""

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> float:
        number: float = super().convert(value, param, ctx)
        if math.isnan(number):
            self.fail(f"{value!r} is not a number", param, ctx)
        return number
