"""The panel at the right: findings, materials and test runs above; switches, routes and readers below."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import QSplitter, QTabBar, QTabWidget, QVBoxLayout, QWidget

from app.panels.look import font, panel
from app.translation import tr

WIDTH: Final = 348
MOST: Final = 640
"""As wide as it comes, and as wide as it can be drawn, in px."""
TAB: Final = 34
BESIDE, BESIDE_LEAST = 30, 18
"""px beside the words of a tab, where there is room, and where there are many tabs."""
SHARES: Final = (416, 384)
"""Of the height, above and below."""
SHARES_WITH_EXTRA: Final = (330, 250, 220)
"""The same under a panel that comes and goes."""


def _bold_width(text: str) -> int:
    return QFontMetrics(font(12, True)).horizontalAdvance(text)


class _TabBar(QTabBar):
    """Tabs wide enough for their words in bold, so that choosing one moves none."""

    def tabSizeHint(self, index: int) -> QSize:
        words = [_bold_width(self.tabText(at)) for at in range(self.count())]
        beside = max(BESIDE_LEAST, min(BESIDE, (WIDTH - sum(words)) // len(words)))
        return QSize(words[index] + beside, TAB)


class Tabs(QTabWidget):
    """Panels behind tabs that carry counts."""

    asked_for = Signal()
    """One of them was asked for by key or menu."""

    def __init__(self, name: str, panels: dict[str, QWidget], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        bar = _TabBar(self)
        bar.setAccessibleName(name)
        bar.setExpanding(False)
        bar.setDrawBase(False)
        bar.setElideMode(Qt.TextElideMode.ElideRight)
        bar.setUsesScrollButtons(False)
        self.setTabBar(bar)
        # Else Tab would find the whole besides its bar, be sent back to the bar, and never leave the panel.
        self.setFocusProxy(None)  # type: ignore[arg-type]  # the stubs forget that none is allowed
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._titles = list(panels)
        self.panels = list(panels.values())
        for title, widget in panels.items():
            self.addTab(widget, tr(title))
        self.currentChanged.connect(lambda _index: self.updateGeometry())

    def minimumSizeHint(self) -> QSize:
        """What the panel in front needs; the others wait until they are asked for."""
        page = self.currentWidget()
        least = 0 if page is None else page.minimumSizeHint().height()
        return QSize(super().minimumSizeHint().width(), TAB + least)

    @property
    def least_width(self) -> int:
        """Px in which all titles can be read, each with a figure."""
        return sum(_bold_width(f"{tr(title)}  0") + BESIDE_LEAST for title in self._titles)

    def show_count(self, title: str, count: int | None) -> None:
        """Put a figure behind a tab's title, or none while it is not known."""
        tab, said = self._titles.index(title), tr(title)
        shown = said if count is None else f"{said}  {count}"
        if shown != self.tabText(tab):
            # Asked to do so itself, Qt's panel would paint all that is in it again.
            self.tabBar().setTabText(tab, shown)

    def bring_forward(self, title: str) -> None:
        """Bring a panel to the front; the focus stays where it is."""
        self.setCurrentIndex(self._titles.index(title))

    def show_panel(self, title: str) -> None:
        """Bring a panel to the front and put the focus into it."""
        self.asked_for.emit()
        self.bring_forward(title)
        widget = self.currentWidget()
        inner = next(
            (w for w in widget.findChildren(QWidget) if w.focusPolicy() & Qt.FocusPolicy.TabFocus), widget
        )
        inner.setFocus(Qt.FocusReason.ShortcutFocusReason)


class SidePanel(QWidget):
    """Two groups of tabs with a line between them that can be moved."""

    moved = Signal()
    """The user has moved it."""

    def __init__(
        self, upper: Tabs, lower: Tabs, shares: tuple[int, int] = SHARES, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        panel(self)
        self.setMinimumWidth(min(MOST, max(WIDTH, upper.least_width, lower.least_width)))
        self.setMaximumWidth(MOST)
        self.upper_tabs, self.lower_tabs = upper, lower
        self._extra: QWidget | None = None
        self._shares = list(shares)
        self._splitter = splitter = QSplitter(Qt.Orientation.Vertical, self)
        splitter.setChildrenCollapsible(False)
        splitter.setHandleWidth(1)
        for tabs in (upper, lower):
            splitter.addWidget(tabs)
        splitter.setSizes(shares)
        splitter.splitterMoved.connect(lambda _place, _index: self.moved.emit())
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(splitter)

    @property
    def shares(self) -> tuple[int, int]:
        """Heights of the two groups, where no panel stands above them."""
        upper, lower = self._shares if self._has_extra else self._splitter.sizes()[-2:]
        return upper, lower

    def share(self, shares: tuple[int, int]) -> None:
        """Set these heights, at once or as soon as no panel stands above them."""
        self._shares = list(shares)
        if not self._has_extra:
            self._splitter.setSizes([0, *shares] if self._extra is not None else shares)

    @property
    def _has_extra(self) -> bool:
        return self._extra is not None and not self._extra.isHidden()

    def add_on_top(self, extra: QWidget) -> None:
        """Put a panel above the others that comes and goes."""
        self._extra = extra
        extra.hide()
        self._splitter.insertWidget(0, extra)

    def show_extra(self, shown: bool) -> None:
        """Show that panel, or hide it and leave the others as high as they were before."""
        if self._extra is None or shown is not self._extra.isHidden():
            return
        if shown:
            _, *self._shares = self._splitter.sizes()
        self._extra.setVisible(shown)
        self._splitter.setSizes(SHARES_WITH_EXTRA if shown else [0, *self._shares])
