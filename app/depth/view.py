"""The widget that shows a plan in depth, and follows the plan view beside it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from typing import Final

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import (
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPixmap,
    QPolygonF,
    QResizeEvent,
    QShowEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QWidget

from app import theme as themes
from app.announcing import announce
from app.canvas.geometry import Area
from app.canvas.patience import Patience
from app.canvas.symbols.lettering import draw_centred
from app.canvas.view import PlanView
from app.canvas.whole_pixels import painter_on_whole_pixels
from app.depth.chunks import Chunks, size_at
from app.depth.hands import Hands
from app.depth.keys import KEYS, pressed
from app.depth.picture import Frame, label_width, paint_depth, paint_north
from app.depth.rendering import Rendering
from app.depth.sight import Sight
from app.depth.stack import Extent
from app.depth.which import WORDS, Which, levels_shown
from app.depth.words import gap_words, level_words, picture_words, seen_words
from app.translation import tr
from model.grid import VECTORS, Cell
from model.plan import Change

LABEL: Final = 12
"""Em of the labels, in px."""
MARGIN: Final = 32
"""px left free on all sides of what is fitted, besides the labels on the left."""
TICK: Final = 7
"""px that the cursor's ticks are long, at least."""
PATIENCE: Final = 0.05
"""Seconds that one picture may take to make lines; what is left comes with the next."""
MOST_FORGOTTEN: Final = 2_000
"""From so many changed cells on all lines are made anew."""


class DepthView(QWidget):
    """Shows the levels pulled apart. It changes nothing in the plan."""

    changed = Signal()
    """Another view, gap or choice of levels."""
    hovered = Signal(object)
    """The cell under the pointer, or ``None``."""
    cell_asked = Signal(object)
    """The cell that was clicked."""
    level_asked = Signal(int)
    """How many levels up the user wants to draw."""

    def __init__(self, plan_view: PlanView, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setMinimumSize(320, 240)
        self.setAccessibleName(tr("The plan in depth"))
        self.plan_view = plan_view
        self.sight = Sight()
        self.which = Which.ALL
        self.shows_ways: bool = True
        """Whether the ways of carts that the plan view shows are shown here, too."""
        self._chunks = Chunks(plan_view.scene)
        self._pieces: Counter[int] = Counter()
        self._picture: QPixmap | None = None
        self._hands = Hands(self)
        self._more = QTimer(self, singleShot=True, interval=0)
        self._more.timeout.connect(self._spoil)
        self._connect()

    def _connect(self) -> None:
        view, document = self.plan_view, self.plan_view.document
        document.changed.connect(self._take_change)
        document.reset.connect(self._take_reset)
        document.details_changed.connect(self._spoil)
        for signal in (document.junction_updated, view.previews.changed, view.dry_run.changed):
            signal.connect(self._forget_all)
        view.dry_run.repaint.connect(lambda cells, _carts: self._forget(cells))
        view.level_changed.connect(lambda _level: self.refresh())
        view.selection_changed.connect(self.refresh)
        document.levels.changed.connect(self.refresh)
        view.cursor_moved.connect(lambda _cell: self.update())

    @property
    def frame(self) -> Frame:
        """Where everything lies on the widget."""
        sight, theme = self.sight, themes.current()
        camera = sight.camera
        size = size_at(camera.c)
        return Frame(sight.view, sight.stack, sight.area, size, camera.left, camera.top, theme, LABEL)

    @property
    def is_unfinished(self) -> bool:
        """Whether a part of the picture is still to be made."""
        return self._picture is None or self._more.isActive()

    def turn(self, quarters: int) -> None:
        """Turns the plan by quarters clockwise, its middle staying where it is."""
        self.sight.turn(quarters, self._room())
        self._tell()
        announce(self, seen_words(self.sight.view))

    def pull(self, steps: int) -> None:
        """Pulls the levels so many steps further apart, or brings them closer."""
        self.sight.pull(steps, self.plan_view.level, self._room())
        self._tell()
        announce(self, gap_words(self.sight.gap))

    def fit(self) -> None:
        """Shows all of it, the levels as far apart as can still be read."""
        self.sight.fit(self._room())
        self._tell()

    def zoom(self, steps: int, at: QPointF | None = None) -> None:
        """So many steps nearer, what is at a pixel staying there; without one, what is in the middle."""
        at = QPointF(self.rect().center()) if at is None else at
        self.sight.zoom(steps, at.x(), at.y())
        self._spoil()

    def pan(self, dx: float, dy: float) -> None:
        """Moves the picture by so many px."""
        self.sight.pan(dx, dy)
        self._spoil()

    def show_levels(self, which: Which) -> None:
        """Shows all levels or only some."""
        self.which = which
        self.refresh()
        self.fit()
        announce(self, tr(WORDS[which]))

    def show_next_levels(self) -> None:
        """Steps on to the next choice of levels."""
        self.show_levels(self.which.next)

    def show_ways(self, shown: bool) -> None:
        """Shows the ways of carts as the plan view does, or leaves them out."""
        self.shows_ways = shown
        self._spoil()
        self.changed.emit()
        announce(self, tr("Ways of carts shown") if shown else tr("Ways of carts left out"))

    def show_or_leave_out_ways(self) -> None:
        """The one after the other."""
        self.show_ways(not self.shows_ways)

    def ask_level(self, up: int) -> None:
        """Asks to draw on a level so many higher."""
        self.level_asked.emit(up)

    def hover(self, pixel: QPointF) -> None:
        """Tells what is under the pointer."""
        self.hovered.emit(self.cell_at(pixel))

    def ask_cell(self, pixel: QPointF) -> None:
        """Asks for what is under the pointer, if there is anything."""
        cell = self.cell_at(pixel)
        if cell is not None:
            self.cell_asked.emit(cell)

    def cell_at(self, pixel: QPointF) -> Cell | None:
        """What is on top under a pixel."""
        return self.sight.cell_at(pixel.x(), pixel.y(), self.plan_view.document.plan.pieces)

    def take_plan(self) -> None:
        """Shows another plan, or comes into sight again after it was not followed."""
        self._pieces = Counter(piece.at.y for piece in self.plan_view.document.plan.pieces)
        self._chunks.clear()
        self.refresh()
        self.fit()

    def refresh(self) -> None:
        """Takes over which levels there are to show; out of sight there is nothing to do."""
        if not self.isVisible():
            return
        view = self.plan_view
        index = view.scene.index
        chosen = (cell.y for cell in view.selection)
        hidden = view.document.levels.hidden
        levels = levels_shown(self.which, index.levels(), view.level, chosen, hidden)
        is_other = levels != self.sight.stack.levels
        self.sight.take(levels, index.extent() or Area(0, 0, 0, 0), view.level)
        if is_other and self.sight.is_fitted:
            self.sight.fit(self._room())
        self._tell()

    def _tell(self) -> None:
        sight = self.sight
        said = picture_words(sight.view, sight.stack, self._pieces, self.plan_view.level)
        self.setAccessibleDescription(said)
        self._spoil()
        self.changed.emit()

    def _room(self) -> Extent:
        """The px in which all is fitted: the labels stand on the left."""
        titles = [level_words(level) for level in self.sight.stack.levels]
        left = MARGIN + label_width(titles, LABEL)
        return Extent(left, MARGIN, self.width() - MARGIN, self.height() - MARGIN)

    # Following

    def _take_reset(self) -> None:
        if self.isVisible():
            self.take_plan()

    def _take_change(self, change: Change, reshaped: frozenset[Cell]) -> None:
        if not self.isVisible():
            return
        self._pieces.subtract(entry.piece.at.y for entry in change.taken)
        self._pieces.update(entry.piece.at.y for entry in change.placed)
        self._forget(change.cells | reshaped)
        self.refresh()

    def _forget(self, cells: Iterable[Cell]) -> None:
        known = list(cells)
        if len(known) > MOST_FORGOTTEN:
            self._chunks.clear()
        else:
            self._chunks.forget(known)
        self._spoil()

    def _forget_all(self) -> None:
        self._chunks.clear()
        self._spoil()

    def _spoil(self) -> None:
        """The picture is made anew when it is next seen."""
        self._picture = None
        self.update()

    # Painting

    def _render(self) -> QPixmap:
        ratio, frame = self.devicePixelRatioF(), self.frame
        picture = QPixmap(self.size() * ratio)
        picture.setDevicePixelRatio(ratio)
        picture.fill(frame.theme.paper)
        self._chunks.use(frame.size, frame.theme)
        room, patience = QRectF(self.rect()), Patience(PATIENCE)
        rendering = Rendering(
            self.plan_view, self._chunks, frame, room, self._pieces, patience, shows_ways=self.shows_ways
        )
        painter = QPainter(picture)
        paint_depth(painter, frame, rendering.levels())
        if not frame.stack.levels:
            middle = QPointF(self.rect().center())
            draw_centred(painter, middle, self.accessibleDescription(), LABEL, frame.theme.ink2)
        paint_north(painter, QPointF(self.width() - 40, 48), 16, 1.5, frame.view, frame.theme)
        painter.end()
        if not rendering.is_complete:
            self._more.start()
        return picture

    def _paint_cursor(self, painter: QPainter) -> None:
        """The cell of the cursor in the plan view."""
        cell, frame = self.plan_view.cursor, self.frame
        if cell.y not in self.sight.stack.levels:
            return
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(frame.theme.ink, 2, j=Qt.PenJoinStyle.MiterJoin))
        plane = frame.plane(cell.y, cell.x + 0.5, cell.z + 0.5)
        half, tick = frame.size.c / 2, max(TICK, frame.size.c / 4)
        painter.drawPolygon(plane.map(QPolygonF(QRectF(-half, -half, 2 * half, 2 * half))))
        for dx, dz in VECTORS:
            side, end = QPointF(dx * half, dz * half), QPointF(dx * (half + tick), dz * (half + tick))
            painter.drawLine(plane.map(side), plane.map(end))

    def _paint_focus(self, painter: QPainter) -> None:
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
        painter.setPen(QPen(themes.current().ink, 2))
        painter.drawRect(self.rect().adjusted(1, 1, -1, -1))

    # Qt

    def sizeHint(self) -> QSize:
        return QSize(760, 640)

    def paintEvent(self, event: QPaintEvent) -> None:
        if self._picture is None:
            self._picture = self._render()
        painter = painter_on_whole_pixels(self, themes.current().paper)
        painter.drawPixmap(0, 0, self._picture)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        self._paint_cursor(painter)
        if self.hasFocus():
            self._paint_focus(painter)
        painter.end()

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        if not event.spontaneous():
            self.take_plan()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if self.sight.is_fitted:
            self.fit()
        self._spoil()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in (QEvent.Type.StyleChange, QEvent.Type.PaletteChange):
            self._spoil()

    def wheelEvent(self, event: QWheelEvent) -> None:
        self._hands.wheel(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self._hands.press(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        self._hands.move(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        self._hands.release(event)

    def leaveEvent(self, event: QEvent) -> None:
        self.hovered.emit(None)
        super().leaveEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        act = KEYS.get(pressed(event))
        if act is None:
            super().keyPressEvent(event)
        else:
            act(self)
