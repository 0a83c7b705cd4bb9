"""Names that are written from right to left among English words, and names that try to turn those words.

The order on the screen is that in which Qt lays the characters out: where each begins, from left to right.
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtGui import QTextLayout, QTextOption
from PySide6.QtWidgets import QApplication

from app.translation import from_to, isolate, tr

GATE, BARN = "שער", "גורן"
"""Hebrew for gate and barn."""
TURNING = "Quay\u202e"
"""With a right-to-left override (Unicode Standard Annex 9) that nothing ends."""


@pytest.fixture
def on_screen(qapp: QApplication) -> Iterator[None]:
    isolate(isolates=True)
    yield
    isolate(isolates=False)


def seen_at(text: str, part: str) -> float:
    """Where the first character of a part stands, in px from the left."""
    layout = QTextLayout(text)
    option = QTextOption()
    option.setWrapMode(QTextOption.WrapMode.NoWrap)
    layout.setTextOption(option)
    layout.beginLayout()
    line = layout.createLine()
    line.setLineWidth(10_000)
    layout.endLayout()
    x = line.cursorToX(text.index(part))
    return float(x[0] if isinstance(x, tuple) else x)


@pytest.mark.parametrize(("start", "end"), [(GATE, BARN), (GATE, "Quay"), ("Quay", GATE)])
@pytest.mark.parametrize("text", ["{way}", "A cart on {way} goes {start}."])
@pytest.mark.usefixtures("on_screen")
def test_a_way_is_read_from_its_start_to_its_end(start: str, end: str, text: str) -> None:
    said = tr(text, way=from_to(start, end), start="round")
    assert seen_at(said, start) < seen_at(said, "→") < seen_at(said, end)


@pytest.mark.usefixtures("on_screen")
def test_a_name_turns_no_words_after_it() -> None:
    said = tr("{name} was at {places}; it is here now.", name=TURNING, places="0 64 0")
    assert seen_at(said, "Quay") < seen_at(said, "was at") < seen_at(said, "here now")


@pytest.mark.usefixtures("on_screen")
def test_other_names_stay_as_they_are() -> None:
    assert from_to("Quay", "Tithe Bärn") == "Quay → Tithe Bärn"


def test_data_hold_names_as_they_are() -> None:
    """Nothing is put around them where no editor runs: the controls, which are read the wrong way round."""
    assert tr("{way}", way=from_to(GATE, BARN)) == f"{GATE} → {BARN}"
    assert seen_at(f"{GATE} → {BARN}", GATE) > seen_at(f"{GATE} → {BARN}", BARN)
    turned = f"{TURNING} was at 0 64 0"
    assert seen_at(turned, "was at") > seen_at(turned, "64")
