"""The palette: contrast by the formula of WCAG 2.2, hues by Okabe & Ito, colour vision by Machado 2009.

Sources: WCAG 2.2, relative luminance and contrast ratio (w3.org/TR/WCAG22), thresholds 1.4.3 and 1.4.11.
Okabe & Ito 2008, Color Universal Design. Machado, Oliveira & Fernandes 2009, IEEE TVCG 15(6), the tabulated
matrices for linear RGB; CIE 1976 L*a*b* with the D65 white.
"""

from __future__ import annotations

import json
from itertools import combinations
from pathlib import Path

import numpy as np
import numpy.typing as npt
import pytest
from PySide6.QtGui import QColor

from app import theme as themes
from app.theme import Scheme, Theme, theme, window_palette, window_style

Vector = npt.NDArray[np.float64]

OKABE_ITO = {"#e69f00", "#56b4e9", "#009e73", "#f0e442", "#0072b2", "#d55e00", "#cc79a7", "#000000"}
TEXT, MARK = 4.5, 3.0

TABLES = json.loads((Path(__file__).parent / "data" / "machado-2009.json").read_text())
KINDS = ("protanopia", "deuteranopia", "tritanopia")
MACHADO = {kind: TABLES[kind]["100"] for kind in KINDS}
SEVERITIES = {f"{kind} {severity}": matrix for kind in KINDS for severity, matrix in TABLES[kind].items()}
"""All that are tabulated: each kind from a tenth to the whole."""


def linear(colour: QColor) -> Vector:
    """Red, green, blue as light, 0 to 1."""
    value = np.array([colour.red(), colour.green(), colour.blue()]) / 255
    return np.where(value <= 0.04045, value / 12.92, ((value + 0.055) / 1.055) ** 2.4)


def luminance(colour: QColor) -> float:
    return float(linear(colour) @ [0.2126, 0.7152, 0.0722])


def ratio(a: QColor, b: QColor) -> float:
    high, low = sorted((luminance(a), luminance(b)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def coded(light: Vector) -> QColor:
    clipped = np.clip(light, 0, 1)
    value = np.where(clipped <= 0.0031308, clipped * 12.92, 1.055 * clipped ** (1 / 2.4) - 0.055)
    return QColor(*(round(float(v) * 255) for v in value))


def seen(colour: QColor, deficiency: str) -> QColor:
    return coded(np.array((SEVERITIES | MACHADO)[deficiency]) @ linear(colour))


def lab(colour: QColor) -> Vector:
    to_xyz = np.array(
        [
            [0.4124564, 0.3575761, 0.1804375],
            [0.2126729, 0.7151522, 0.0721750],
            [0.0193339, 0.1191920, 0.9503041],
        ]
    )
    scaled = to_xyz @ linear(colour) / [0.95047, 1.0, 1.08883]
    f = np.where(scaled > (6 / 29) ** 3, np.cbrt(scaled), scaled * (29 / 6) ** 2 / 3 + 4 / 29)
    return np.array([116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])])


def distance(a: QColor, b: QColor) -> float:
    """CIE 1976 colour difference."""
    return float(np.linalg.norm(lab(a) - lab(b)))


@pytest.mark.parametrize(
    ("colour", "expected"),
    [
        ("#000000", 21.00),
        ("#767676", 4.54),
        ("#777777", 4.48),
        ("#595959", 7.00),
        ("#949494", 3.03),
        ("#ff0000", 4.00),
        ("#0000ff", 8.59),
        ("#00ff00", 1.37),
        ("#ffff00", 1.07),
    ],
)
def test_formula_gives_the_published_ratios_on_white(colour: str, expected: float) -> None:
    assert ratio(QColor(colour), QColor("#ffffff")) == pytest.approx(expected, abs=0.006)


@pytest.mark.parametrize(
    ("colour", "deficiency", "expected"),
    [
        ("#ff0000", "protanopia", (109, 95, 0)),
        ("#ff0000", "deuteranopia", (163, 144, 0)),
        ("#d55e00", "protanopia", (129, 113, 0)),
        ("#009e73", "protanopia", (154, 146, 113)),
    ],
)
def test_simulation_gives_the_published_colours(
    colour: str, deficiency: str, expected: tuple[int, int, int]
) -> None:
    got = seen(QColor(colour), deficiency)
    assert (got.red(), got.green(), got.blue()) == pytest.approx(expected, abs=1)


def test_matrices_keep_greys() -> None:
    assert len(SEVERITIES) == 30
    for matrix in SEVERITIES.values():
        assert np.allclose(np.array(matrix).sum(axis=1), 1, atol=2e-6)


ON_PAPER = {
    "light": {
        "edge2": 3.59,
        "ink": 16.91,
        "ink2": 7.17,
        "ink3": 3.87,
        "dim": 3.25,
        "live": 5.19,
        "idle": 3.42,
        "called": 3.06,
        "error": 3.87,
        "warning": 2.25,
        "pick": 1.32,
    },
    "dark": {
        "edge2": 4.53,
        "ink": 15.19,
        "ink2": 8.35,
        "ink3": 4.98,
        "dim": 3.83,
        "live": 7.71,
        "idle": 5.20,
        "called": 5.82,
        "error": 4.60,
        "warning": 7.90,
        "pick": 13.46,
    },
    "print": {"ink": 21.0, "ink2": 21.0, "ink3": 7.46, "dim": 3.36, "live": 21.0},
}
"""The ratios to ``paper`` that the drawings were made with; every value computed by the formula above."""

ALWAYS_OUTLINED = {"warning", "pick"}
"""Too pale on white alone: drawn with an outline or brackets in ink only."""


@pytest.mark.parametrize(("name", "token"), [(n, t) for n, tokens in ON_PAPER.items() for t in tokens])
def test_tokens_on_paper(name: str, token: str) -> None:
    of = theme(name)
    got = ratio(getattr(of, token), of.paper)
    assert got == pytest.approx(ON_PAPER[name][token], abs=0.006)
    if token not in ALWAYS_OUTLINED:
        assert got >= (TEXT if token in ("ink", "ink2", "live") else MARK)


@pytest.mark.parametrize("name", ["light", "dark"])
def test_text_and_marks_on_other_grounds(name: str) -> None:
    of = theme(name)
    for text in (of.ink, of.ink2, of.live):
        for ground in (of.panel, of.raised):
            assert ratio(text, ground) >= TEXT
    for mark in (of.idle, of.error, of.edge2, of.ink3):
        assert ratio(mark, of.panel) >= MARK
    for text in (of.ink, of.ink2):
        assert ratio(text, of.pickrow) >= TEXT
    assert ratio(of.pickbar, of.pickrow) >= MARK
    assert ratio(of.on_live, of.live) >= TEXT
    assert ratio(of.on_error, of.error) >= MARK
    assert ratio(of.on_warning, of.warning) >= MARK
    assert ratio(of.paper, of.ink) >= TEXT


@pytest.mark.parametrize("name", ["light", "dark", "print"])
def test_ink_on_the_wash_of_a_way(name: str) -> None:
    of = theme(name)
    for hue in (of.idle, of.called):
        assert ratio(of.ink, mixed(hue, of.paper, of.wash)) >= 10.1


def mixed(over: QColor, under: QColor, share: float) -> QColor:
    """A translucent colour over another, as the painter mixes them."""
    parts = zip(
        (over.red(), over.green(), over.blue()), (under.red(), under.green(), under.blue()), strict=True
    )
    return QColor(*(round(share * a + (1 - share) * b) for a, b in parts))


def hues(of: Theme) -> dict[str, QColor]:
    return {token: getattr(of, token) for token in ("live", "idle", "called", "error", "warning", "pick")}


@pytest.mark.parametrize("name", ["light", "dark"])
def test_hues_are_okabe_ito(name: str) -> None:
    assert {hue.name() for hue in hues(theme(name)).values()} <= OKABE_ITO


def test_a_weaker_deficiency_changes_less() -> None:
    """The severer, the further from no change at all."""
    for kind in KINDS:
        far = [np.abs(np.array(TABLES[kind][str(s)]) - np.eye(3)).max() for s in range(10, 101, 10)]
        assert far == sorted(far)


@pytest.mark.parametrize("deficiency", SEVERITIES)
@pytest.mark.parametrize("name", ["light", "dark"])
def test_hues_stay_apart_in_simulated_colour_vision(name: str, deficiency: str) -> None:
    """15 is the project's own bound; dash, outline and fill carry what is close."""
    for (a, one), (b, other) in combinations(hues(theme(name)).items(), 2):
        assert distance(seen(one, deficiency), seen(other, deficiency)) >= 15, (a, b)


def test_two_hues_that_some_eyes_see_as_one_are_caught() -> None:
    """The control that must fail: a red and a green of one lightness, to whoever sees no green."""
    red, green = QColor("#c05a5a"), QColor("#7f7f3a")
    assert distance(red, green) >= 15
    assert min(distance(seen(red, kind), seen(green, kind)) for kind in KINDS) < 15


def test_print_has_no_hue() -> None:
    colours = [getattr(theme("print"), field) for field in ON_PAPER["light"] if field != "pick"]
    assert all(colour.hsvSaturation() == 0 for colour in colours)
    assert theme("print").pick is None


@pytest.mark.parametrize("name", ["light", "dark"])
def test_window_is_built_from_the_tokens_alone(name: str, qapp: object) -> None:
    of = theme(name)
    style = window_style(of)
    assert "@" not in style.split("*/", 1)[1]
    tokens = {value.name() for value in vars(of).values() if isinstance(value, QColor)}
    named = {style[i : i + 7] for i, char in enumerate(style) if char == "#"}
    assert named
    assert named <= tokens
    assert window_palette(of).window().color() == of.panel


def test_chosen_scheme_wins_over_the_system(qapp: object, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(themes._Choice, "scheme", Scheme.SYSTEM)
    for scheme in (Scheme.DARK, Scheme.LIGHT):
        themes.choose(scheme)
        assert themes.current().name == scheme
