"""The map view: the line map of the open network, with the user's hands on it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QEvent, QPointF, QSize, Qt, Signal
from PySide6.QtGui import (
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QNativeGestureEvent,
    QPaintEvent,
    QResizeEvent,
    QShowEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QWidget

from app import theme as themes
from app.canvas.geometry import FULL_SIZE, Area
from app.canvas.symbols.network import INSIDE_FROM
from app.canvas.whole_pixels import painter_on_whole_pixels
from app.network.document import NetworkDocument
from app.network.ghost import Ghost
from app.network.hands import MapHands
from app.network.hints import paint_over
from app.network.items import Item, followed
from app.network.labelling import Labelling
from app.network.lit import NOTHING_LIT, Lit
from app.network.navigation import MapNavigator
from app.network.painting import Shown, paint_map
from app.network.passages import Through, passages
from app.network.tools.tool import At
from app.panels.focus_frame import FocusFrame
from app.theme import Theme
from app.translation import tr
from model.grid import Cell
from model.network.network import NetworkChange, Spot

if TYPE_CHECKING:
    from app.network.host import ViewHost

MARGIN: Final = 1
FITTED_WITH_NAMES: Final = 200
"""Nodes up to which the names are placed to see what room they take."""


class MapView(QWidget):
    """Shows the map and what is lit on it; hands pointer and keys to the tool in use."""

    tool_changed = Signal(str)
    selection_changed = Signal()
    here_changed = Signal(object)
    """The item under the pointer or the keyboard's cursor, or ``None``."""
    light_ended = Signal()
    """Esc asks for nothing to be lit any more."""
    status = Signal(str)

    def __init__(self, document: NetworkDocument, host: ViewHost, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setAccessibleName(tr("Map of the network"))
        self.document = document
        self.theme: Theme = themes.current()
        self.navigator = MapNavigator(self)
        self.host = host
        host.view = self
        self.lit: Lit = NOTHING_LIT
        self.selection: frozenset[Item] = frozenset()
        self.cursor_spot: Spot = (0.0, 0.0)
        self._cursor_shows = False
        self._hovered: Item | None = None
        self._ghost: Ghost | None = None
        self._band: tuple[Spot, Spot] | None = None
        self._markers: dict[Item, tuple[str, int]] = {}
        self._passages: dict[Item, list[Through]] | None = None
        self._labelling = Labelling()
        self._was_shown = False
        self.hands = MapHands(self)
        FocusFrame(self)
        self.navigator.moved.connect(self.update)
        document.picture_updated.connect(self._take_picture)
        document.plan_updated.connect(self._take_plan)
        document.changed.connect(self._follow)
        document.reset.connect(self._open)
        document.placed_anew.connect(self.fit_all)

    # What the view shows

    @property
    def tool(self) -> str:
        """The name of the tool in use."""
        return self.hands.tool.name

    def use(self, tool_name: str) -> None:
        """Take up a tool. Raises KeyError for a name that is none."""
        self.hands.use(tool_name)

    def choose(self, items: frozenset[Item]) -> None:
        """Make these the chosen things."""
        if items != self.selection:
            self.selection = items
            self.selection_changed.emit()
            self.update()

    def select_all(self) -> None:
        """Choose every station and junction."""
        self.choose(frozenset(self.document.picture.spots))

    def light(self, lit: Lit) -> None:
        """Light a way, or nothing."""
        self.lit = lit
        self.update()

    def show_ghost(self, ghost: Ghost | None) -> None:
        """Draw what a gesture would make."""
        if ghost != self._ghost:
            self._ghost = ghost
            self.update()

    def show_band(self, corners: tuple[Spot, Spot] | None) -> None:
        """Draw a band around what is being chosen."""
        self._band = corners
        self.update()

    def show_markers(self, markers: dict[Item, tuple[str, int]]) -> None:
        """Mark findings: of each thing the gravest severity and how many."""
        self._markers = markers
        self.update()

    def set_theme(self, theme: Theme) -> None:
        """Draw in other colours."""
        self.theme = theme
        self.update()

    def say(self, text: str) -> None:
        """A sentence for the status bar; an empty one clears it."""
        self.status.emit(text)

    @property
    def cursor_is_by_key(self) -> bool:
        """Whether the keyboard moved the cursor last."""
        return self._cursor_shows

    def point_at(self, at: At, by_key: bool) -> None:
        """The pointer or the keyboard's cursor is there; only the keyboard's is drawn."""
        hovered = self.document.picture.item_at(at.x, at.y, at.reach)
        self.cursor_spot = at.crossing
        if by_key:
            x, y = at.crossing
            self.navigator.follow(Cell(int(x), 0, int(y)))
        if (hovered, by_key) != (self._hovered, self._cursor_shows) or by_key:
            self._hovered, self._cursor_shows = hovered, by_key
            self.here_changed.emit(hovered)
            self.update()

    def nudge(self, dx: int, dy: int) -> None:
        """Move the chosen nodes by a square."""
        spots = self.document.picture.spots
        chosen = [item for item in self.selection if item.is_node]
        if chosen:
            self.host.move({item: (spots[item][0] + dx, spots[item][1] + dy) for item in chosen})

    # What part of it is in sight

    def fit_all(self) -> None:
        """Show the whole network."""
        picture = self.document.picture
        if len(picture.spots) > FITTED_WITH_NAMES:
            self.navigator.fit(picture.extent)
        else:
            self.navigator.fit_box(picture.extent, lambda scale: self._labelling.box(picture, scale))

    def fit_selection(self) -> None:
        """Show all that is chosen."""
        if self.selection:
            self.navigator.fit(self._area(self.selection))

    def zoom_100(self) -> None:
        """48 px a square."""
        self.navigator.zoom_to(FULL_SIZE)

    def zoom_in(self) -> None:
        """One step larger."""
        self.navigator.zoom(1)

    def zoom_out(self) -> None:
        """One step smaller."""
        self.navigator.zoom(-1)

    def show_items(self, items: Iterable[Item]) -> None:
        """Bring things into sight and choose them; the keyboard goes on from there."""
        found = frozenset(items)
        if found:
            self._leave_cursor_at(found)
            self.navigator.bring_into_sight(self._area(found))
            self.choose(found)

    def _leave_cursor_at(self, items: Iterable[Item]) -> None:
        spots = [self.document.picture.spots[item] for item in sorted(items) if item.is_node]
        if spots:
            x, y = spots[0]
            self.cursor_spot = (float(round(x)), float(round(y)))

    def bring_into_sight(self, items: Iterable[Item]) -> None:
        """Move the map until things are in sight."""
        self.navigator.bring_into_sight(self._area(items))

    def _area(self, items: Iterable[Item]) -> Area:
        picture = self.document.picture
        spots = []
        for item in items:
            spots += [picture.spots[item]] if item.is_node else list(picture.routes.get(item.place, ()))
        if not spots:
            return picture.extent
        xs, ys = [x for x, _ in spots], [y for _, y in spots]
        return Area(int(min(xs)), int(min(ys)), int(max(xs)), int(max(ys))).grown(MARGIN)

    # Following the document

    def _take_picture(self) -> None:
        self._labelling.forget()
        self._take_plan()

    def _take_plan(self) -> None:
        document = self.document
        self._passages = None
        self._labelling.take(document.picture, document.plan)
        self.update()

    def _follow(self, change: NetworkChange, _touched: object) -> None:
        self.navigator.forget_fit()
        self.hands.interrupt()
        self._hovered = None
        self.choose(followed(self.selection, change.before, change.after))

    def _open(self) -> None:
        self.hands.interrupt()
        self._hovered = None
        self.lit = NOTHING_LIT
        self.choose(frozenset())
        self.fit_all()

    # Qt

    def sizeHint(self) -> QSize:
        """As much as there is."""
        return QSize(900, 640)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint what is in sight."""
        painter = painter_on_whole_pixels(self, self.theme.paper)
        shown = self.shown()
        paint_map(painter, shown)
        paint_over(painter, shown)
        painter.end()

    def shown(self) -> Shown:
        """All that the next picture depends on."""
        view = self.navigator.drawn
        return Shown(
            size=self.rect(),
            view=view,
            theme=self.theme,
            picture=self.document.picture,
            passages=self._passages_at(view.scale),
            labels=self._labelling.labels(view),
            lit=self.lit,
            selection=self.selection,
            hovered=self._hovered,
            ghost=self._ghost,
            band=self._band,
            cursor=self.cursor_spot if self._cursor_shows and self.hasFocus() else None,
            markers=self._markers,
        )

    def _passages_at(self, scale: int) -> Mapping[Item, list[Through]]:
        """The ways through junctions, worked out when they are first large enough to be seen."""
        if scale < INSIDE_FROM:
            return {}
        if self._passages is None:
            self._passages = passages(self.document.picture, self.document.plan)
        return self._passages

    def showEvent(self, event: QShowEvent) -> None:
        """Only now the size is known to which the map is fitted."""
        super().showEvent(event)
        if not event.spontaneous() and not self._was_shown:
            self._was_shown = True
            self.fit_all()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """What was fitted stays fitted."""
        super().resizeEvent(event)
        self.navigator.take_size()

    def event(self, event: QEvent) -> bool:
        """Takes pinches; keeps Tab for the window."""
        if isinstance(event, QNativeGestureEvent):
            return self.navigator.pinch(event)
        return super().event(event)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zooms or pans."""
        self.navigator.wheel(event)
        event.accept()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begins a pan or a gesture of the tool."""
        self.hands.press(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Goes on with it."""
        self.hands.move(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Ends it."""
        self.hands.release(event)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Asks for what can be said of a thing."""
        self.hands.open(event)

    def leaveEvent(self, event: QEvent) -> None:
        """What hovers goes with the pointer."""
        self.hands.pointer_left()
        self._hovered = None
        self.update()
        super().leaveEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Hands the key to the tool; what nobody wants goes on to the window."""
        if not self.hands.key_down(event):
            super().keyPressEvent(event)

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        """Lets go of the map when Space goes up."""
        if not self.hands.key_up(event):
            super().keyReleaseEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """A gesture does not outlive the window's being in front."""
        if event.reason() is Qt.FocusReason.ActiveWindowFocusReason:
            self.hands.interrupt()
        self.hands.forget_keys()
        super().focusOutEvent(event)
        self.update()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The cursor shows again."""
        super().focusInEvent(event)
        self.update()

    def pixel_of(self, spot: Spot) -> QPointF:
        """Where a place lies on the widget."""
        view = self.navigator.view
        return QPointF(view.origin_x + spot[0] * view.scale, view.origin_y + spot[1] * view.scale)
