"""The signs of what differs between two plans are told apart without their hue."""

from __future__ import annotations

from itertools import combinations

import numpy as np
import pytest
from PySide6.QtGui import QImage, QPainter

from app.canvas.symbols.differences import draw_difference_sign
from app.theme import theme
from model.comparing import Kind
from tests.app.symbols.pictures import Pixels, grey

pytestmark = pytest.mark.usefixtures("qapp")


def sign(kind: Kind, px: int, name: str) -> Pixels:
    of = theme(name)
    image = QImage(px + 4, px + 4, QImage.Format.Format_ARGB32)
    image.fill(of.paper)
    painter = QPainter(image)
    draw_difference_sign(painter, px / 2 + 2, px / 2 + 2, kind, of, px)
    painter.end()
    return grey(image)


@pytest.mark.parametrize("name", ["light", "dark"])
@pytest.mark.parametrize("px", [9, 13, 16])
def test_any_two_differ_in_black_and_white(name: str, px: int) -> None:
    """From the smallest on the plan view to those of the list; 8 pixels is the project's own measure."""
    for one, other in combinations(Kind, 2):
        cut = (sign(one, px, name) > 176) != (sign(other, px, name) > 176)
        assert np.count_nonzero(cut) >= 8, (one, other)


def test_none_leaves_its_patch() -> None:
    for kind in Kind:
        drawn = sign(kind, 13, "light")
        drawn[2:-2, 2:-2] = 255
        assert (drawn == 255).all(), kind
