"""Names in tooltips are shown as they are: Qt takes what looks like markup for markup, and loads files."""

from __future__ import annotations

import pytest
from PySide6.QtGui import Qt, QTextDocument
from PySide6.QtWidgets import QWidget

from app.panels.words import plain_tip
from app.window import MainWindow
from model.plan import Plan, Route, Waiver
from tests.app.windows import settle, straight_plan

HOSTILE = '<img src="secret.png">&lt;b&gt;'


def read(tip: str) -> str:
    """What a tooltip shows."""
    if not Qt.mightBeRichText(tip):
        return tip
    document = QTextDocument()
    document.setHtml(tip)
    return document.toPlainText()


@pytest.mark.parametrize("words", [HOSTILE, "a & b", "1 < 2", f"first line\n{HOSTILE}", "Quay: throws S1"])
def test_a_tooltip_reads_as_it_was_written(words: str) -> None:
    assert read(plain_tip(words)) == words


def test_what_looks_like_markup_would_be_taken_for_it() -> None:
    """The control that must fail."""
    assert read(HOSTILE) != HOSTILE


def test_no_name_in_the_window_is_markup(window: MainWindow) -> None:
    plan = straight_plan()
    arms = tuple(type(arm)(f"{arm.name} {HOSTILE}"[:80], arm.enter, arm.leave) for arm in plan.arms)
    routes = (Route(arms[0].name, arms[0].name, arms[1].name),)
    waivers = (Waiver("loose-end", (), (), HOSTILE),)
    window.document.load(
        Plan(plan.pieces, plan.details.replace(arms=arms, routes=routes, waivers=waivers)), None
    )
    settle(window)
    window.panels.status.say(HOSTILE)
    window.menus["Preview"].aboutToShow.emit()
    tips = [widget.toolTip() for widget in window.findChildren(QWidget)]
    tips += [
        action.toolTip()
        for menu in window.menus["Preview"].findChildren(type(window.menus["File"]))
        for action in menu.actions()
    ]
    model = window.panels.findings.model
    tips += [str(model.index(row).data(Qt.ItemDataRole.ToolTipRole)) for row in range(model.rowCount())]
    hostile = [tip for tip in tips if "secret" in tip]
    assert len(hostile) >= 4, tips
    assert [tip for tip in hostile if HOSTILE not in read(tip)] == []
