"""The examples that come with the program, each as a line picture."""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Final

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton

from app import theme as themes
from app.commands.files import PLANS
from app.network.files import NETWORKS
from app.network.mini_map import map_path, network_words
from app.panels.look import font
from app.panels.mini_plan import NOTHING, MiniPlan, in_lines, mini_plan, paint_mini_plan
from app.panels.rows import paint_text
from app.translation import QT_TR_NOOP, tr
from model.files.errors import PlanFileError
from model.files.plan_file import read_plan
from model.grid import Turn
from model.network.network import Network
from model.plan import Plan
from model.track.layout import Layout

UNREAD: Final = QT_TR_NOOP("cannot be read")


def example_paths() -> list[Path]:
    """The plans of the invented tramway that come with the program."""
    return sorted(Path(str(files("resources").joinpath("examples"))).glob("*.plan.json"))


def network_paths() -> list[Path]:
    """The networks of the invented tramway that come with the program."""
    return sorted(Path(str(files("resources").joinpath("examples"))).glob(f"*{NETWORKS.ending}"))


class ExampleCard(QAbstractButton):
    """An example as a line picture."""

    def __init__(self, path: Path) -> None:
        super().__init__()
        self.path = path
        self.setFixedHeight(128)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        found = _example(path)
        self._title, self._plan, self._kind = _card_of(found) if found else (path.name, NOTHING, tr(UNREAD))
        self.setAccessibleName(tr("Example: {title}, {kind}", title=self._title, kind=self._kind))
        self.setToolTip(tr("Open {title} as your own; the example stays as it is", title=self._title))

    def paintEvent(self, event: QPaintEvent) -> None:
        theme = themes.current()
        painter = QPainter(self)
        box = self.rect().adjusted(0, 0, -1, -1)
        painter.fillRect(box, theme.raised)
        painter.setPen(theme.ink if self.hasFocus() or self.underMouse() else theme.edge)
        painter.drawRect(box)
        paint_mini_plan(painter, self._plan, Turn(), QRectF(box.adjusted(12, 12, -12, -48)), theme.ink)
        words = self.rect().adjusted(11, 84, -8, 0)
        words.setHeight(18)
        paint_text(painter, words, self._title, font(12, True), theme.ink)
        paint_text(painter, words.translated(0, 18), self._kind, font(11), theme.ink2)

    def sizeHint(self) -> QSize:
        return QSize(150, 128)


@cache
def _example(path: Path) -> Plan | Network | None:
    try:
        return read_plan(path) if PLANS.is_for(path) else NETWORKS.read(path, None)
    except (PlanFileError, OSError):
        return None


def _card_of(found: Plan | Network) -> tuple[str, MiniPlan, str]:
    """Title, lines and words of an example."""
    if isinstance(found, Network):
        return found.title, in_lines(map_path(found)), network_words(found)
    words = tr("{arms} arms, {routes} routes", arms=len(found.arms), routes=len(found.routes))
    return found.details.title, mini_plan(Layout(found)), words
