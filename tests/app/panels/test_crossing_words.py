"""What the routes panel says of routes that cross."""

from __future__ import annotations

from pytestqt.qtbot import QtBot

from app.panels.routes_model import CALLED, IDLE
from app.window import MainWindow
from tests.app.windows import example, settle


def test_the_chosen_route_names_those_that_it_crosses(window: MainWindow, qtbot: QtBot) -> None:
    """Read off the drawing: the way down to Mill meets all other ways but the one from Mill to Quay."""
    window.files.open_path(example("saltern-junction"))
    settle(window)
    routes = window.panels.routes
    routes.table.setCurrentIndex(routes.model.index(0, CALLED))
    assert routes.crossing.text().splitlines() == [
        "Quay → Mill crosses Quay → Fen, Fen → Mill, Fen → Quay and Mill → Fen.",
        "It may run together with Mill → Quay.",
    ]
    routes.table.setCurrentIndex(routes.model.index(0, IDLE))
    assert routes.crossing.text().splitlines()[0] == "Quay → Fen crosses Quay → Mill and Mill → Fen."
    assert routes.crossing.text().splitlines()[1] == (
        "It may run together with Fen → Mill and Mill → Quay; or with Fen → Quay."
    ), "Fen → Quay crosses Mill → Quay, so not all three run at once"
