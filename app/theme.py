"""The colours of the editor and of the sheet, and the window's look built from them.

Every colour is a token of ``resources/palette.json``; nothing else in the program names a colour.
Hues are those of the Okabe–Ito palette (Okabe & Ito 2008).
"""

from __future__ import annotations

from dataclasses import dataclass, fields
from enum import StrEnum
from functools import cache
from importlib.resources import files

import msgspec
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QGuiApplication, QPalette


@dataclass(frozen=True, eq=False)
class Theme:
    """One set of tokens. Two themes are the same only when they are the same object."""

    name: str
    paper: QColor
    panel: QColor
    raised: QColor
    grid: QColor
    grid4: QColor
    """Each fourth line of the grid."""
    edge: QColor
    edge2: QColor
    ink: QColor
    ink2: QColor
    ink3: QColor
    dim: QColor
    fill: QColor
    live: QColor
    on_live: QColor
    idle: QColor
    called: QColor
    error: QColor
    on_error: QColor
    warning: QColor
    on_warning: QColor
    pickrow: QColor
    pickbar: QColor
    pick: QColor | None
    """``None`` on paper, where the chosen has brackets only."""
    wash: float
    """How much of a way's hue lies in its band, 0 to 1."""


class Scheme(StrEnum):
    """What the user chose in the settings."""

    SYSTEM = "system"
    LIGHT = "light"
    DARK = "dark"


@cache
def _palettes() -> dict[str, dict[str, str | float | None]]:
    data = files("resources").joinpath("palette.json").read_bytes()
    return msgspec.json.decode(data, type=dict[str, dict[str, str | float | None]])


@cache
def theme(name: str) -> Theme:
    """The theme ``light``, ``dark`` or ``print``. Raises KeyError for another name."""
    tokens = {
        token: QColor(value) if isinstance(value, str) else value
        for token, value in _palettes()[name].items()
    }
    return Theme(name=name, **tokens)  # type: ignore[arg-type]


class _Choice:
    """The scheme in force; one for the program, as there is one window."""

    scheme: Scheme = Scheme.SYSTEM


def choose(scheme: Scheme) -> None:
    """Follow the system's scheme from now on, or keep to light or dark."""
    _Choice.scheme = scheme


def current() -> Theme:
    """The theme of the window: what was chosen, else that of the system, else light."""
    if _Choice.scheme is not Scheme.SYSTEM:
        return theme(_Choice.scheme)
    dark = QGuiApplication.styleHints().colorScheme() is Qt.ColorScheme.Dark
    return theme("dark" if dark else "light")


def window_palette(of: Theme) -> QPalette:
    """The palette for the window's widgets."""
    role = QPalette.ColorRole
    palette = QPalette()
    for roles, colour in (
        ((role.Window, role.AlternateBase), of.panel),
        ((role.Base,), of.paper),
        ((role.Button, role.ToolTipBase, role.Light, role.Midlight), of.raised),
        ((role.WindowText, role.Text, role.ButtonText, role.ToolTipText, role.BrightText), of.ink),
        ((role.Link, role.LinkVisited), of.ink),
        ((role.Mid, role.Dark, role.Shadow), of.edge2),
        ((role.Highlight,), of.pickrow),
        ((role.HighlightedText, role.Accent), of.ink),
        ((role.PlaceholderText,), of.ink2),
    ):
        for one in roles:
            palette.setColor(one, colour)
    for one in (role.WindowText, role.Text, role.ButtonText, role.HighlightedText):
        palette.setColor(QPalette.ColorGroup.Disabled, one, of.ink3)
    return palette


def window_style(of: Theme) -> str:
    """The one style sheet of the window, with the theme's colours filled in."""
    sheet = files("resources").joinpath("window.qss").read_text("utf-8")
    for token in sorted((field.name for field in fields(Theme)), key=len, reverse=True):
        colour = getattr(of, token)
        if isinstance(colour, QColor):
            sheet = sheet.replace(f"@{token}", colour.name())
    return sheet
