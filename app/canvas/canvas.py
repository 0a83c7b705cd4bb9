"""The canvas: the widget that paints a plan on a level, with all that is marked on it."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6.QtCore import QEvent, QPointF, QRect, QSize, Qt, QTimer, Signal
from PySide6.QtGui import (
    QNativeGestureEvent,
    QPainter,
    QPaintEvent,
    QRegion,
    QResizeEvent,
    QShowEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QWidget

from app import theme as themes
from app.canvas.arms import shown_tags, tag_under, widest_beside
from app.canvas.comparison import NO_COMPARISON, ComparisonPicture
from app.canvas.dry_running import DryRunning
from app.canvas.geometry import FULL_SIZE, Area
from app.canvas.ghosts import NO_GHOST, GhostPicture, picture_of
from app.canvas.live_carts import PlacedCart
from app.canvas.looks import NO_MARKS, marks_of
from app.canvas.markers import marked_cells
from app.canvas.motion import CartMotion
from app.canvas.navigation import BESIDE, Navigator
from app.canvas.painting import Shown, paint_view
from app.canvas.patience import FRAME_SECONDS, Patience
from app.canvas.previews import Previews
from app.canvas.scene import Manners, Scene
from app.canvas.ways import ShownWay, shown_ways
from app.canvas.whole_pixels import painter_on_whole_pixels
from app.document import Document
from app.motion import is_reduced
from app.theme import Theme
from app.tools.host import Ghost, Tag
from app.window_first import window_first
from model.grid import Y_HIGHEST, Y_LOWEST, Cell
from model.rules import Finding
from model.rules.local import Difference

FIRST_LEVEL = 64
"""The level that an empty plan shows."""


class Canvas(QWidget):
    """Shows a level of the document's plan. It knows no tool and changes nothing."""

    level_changed = Signal(int)
    selection_changed = Signal()
    cursor_moved = Signal(object)
    """The cell under the pointer, or that of the keyboard's cursor."""
    ghost_changed = Signal(object)
    """What a gesture would make now, or ``None``."""
    preview_text_changed = Signal(str)
    status = Signal(str)
    """A sentence for the status bar; an empty one clears it."""

    def __init__(self, document: Document, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.document = document
        self.theme: Theme = themes.current()
        self._level = FIRST_LEVEL
        self._solo = False
        self._selection: frozenset[Cell] = frozenset()
        self._cursor = Cell(0, FIRST_LEVEL, 0)
        self._cursor_shows = False
        self._was_shown = False
        self._ghost = NO_GHOST
        self._survey = NO_GHOST
        self.comparison = NO_COMPARISON
        """What differs from another plan, as it is marked now."""
        self._outline = NO_GHOST
        self._band: tuple[Cell, Cell] | None = None
        self._ways: list[ShownWay] = []
        self._chosen_finding: Finding | None = None
        self.scene = Scene(document.layout, document.index)
        self.navigator = Navigator(self)
        self.previews = Previews(document, self)
        self.motion = CartMotion(self)
        self.dry_run = DryRunning(document, self.scene, self)
        self._exposed = QRect()
        self._paint_rest = QTimer(self, singleShot=True, interval=0)
        self._connect()

    def _connect(self) -> None:
        self.document.details_changed.connect(self.update)
        self.document.changed.connect(lambda *_: self.navigator.forget_fit())
        self.document.levels.changed.connect(self.update)
        self.document.work_out_beside(marks_of)
        self.document.junction_updated.connect(self._take_junction)
        self.document.findings_changed.connect(self._follow_findings)
        self._paint_rest.timeout.connect(self.update)
        self.navigator.moved.connect(self.update)
        self.motion.moved.connect(self.update)
        self.previews.changed.connect(self._show_preview)
        self.previews.cart_sent.connect(self._drive)
        self.previews.status.connect(self.status)
        self.dry_run.changed.connect(self.update)
        self.dry_run.repaint.connect(self._repaint)
        self.dry_run.status.connect(self.status)
        self.dry_run.runner.probes_changed.connect(self.update)

    @property
    def level(self) -> int:
        """The level that is drawn on."""
        return self._level

    @level.setter
    def level(self, level: int) -> None:
        level = max(Y_LOWEST, min(Y_HIGHEST, level))
        if level == self._level:
            return
        self._level = level
        self._cursor = self._cursor._replace(y=level)
        self.level_changed.emit(level)
        self.cursor_moved.emit(self._cursor)
        self.update()

    @property
    def solo(self) -> bool:
        """Whether the neighbour levels are left out."""
        return self._solo

    @solo.setter
    def solo(self, solo: bool) -> None:
        self._solo = solo
        self.update()

    @property
    def selection(self) -> frozenset[Cell]:
        """The chosen cells, on any level."""
        return self._selection

    @selection.setter
    def selection(self, cells: frozenset[Cell]) -> None:
        if cells != self._selection:
            self._selection = cells
            self.selection_changed.emit()
            self.update()

    def choose(self, cells: Iterable[Cell]) -> None:
        """Makes these the chosen cells."""
        self.selection = frozenset(cells)

    @property
    def cursor(self) -> Cell:  # type: ignore[override]  # Qt's is the shape of the pointer
        """The cell under the pointer, or that of the keyboard's cursor, whichever moved last."""
        return self._cursor

    @property
    def cursor_is_by_key(self) -> bool:
        """Whether the keyboard moved the cursor last."""
        return self._cursor_shows

    def put_cursor(self, cell: Cell, by_key: bool) -> None:
        """Moves the cursor on its level; only the keyboard's is drawn."""
        if by_key:
            self.navigator.follow(cell)
        if (cell, by_key) != (self._cursor, self._cursor_shows):
            self._cursor, self._cursor_shows = cell, by_key
            self.cursor_moved.emit(cell)
            self.update()

    def set_theme(self, theme: Theme) -> None:
        """Draws in other colours."""
        self.theme = theme
        self.update()

    def show_ghost(self, ghost: Ghost | None) -> None:
        """Draws what a gesture would make."""
        self._ghost = picture_of(ghost, self.document.layout, self.document.levels.locked)
        self.ghost_changed.emit(ghost)
        self.update()

    def show_outline(self, ghost: Ghost | None) -> None:
        """Draws quietly what a gesture could make that nobody has begun."""
        picture = picture_of(ghost, self.document.layout)
        pieces = self.document.plan.pieces
        covered = frozenset(cell for cell in picture.looks if cell in pieces)
        self._outline = picture if picture.lies_over else picture.without(covered)
        self.update()

    def keep_foot(self, foot: int) -> None:
        """Keeps so many px at the foot free of what is fitted, and of the key of the ways."""
        self.navigator.foot = foot
        self.update()

    def show_survey(self, survey: GhostPicture) -> None:
        """Draws the rails over the plan as they stand in the world."""
        self._survey = survey
        self.update()

    def show_comparison(self, comparison: ComparisonPicture) -> None:
        """Marks what differs from another plan."""
        self.comparison = comparison
        self.update()

    def show_band(self, corners: tuple[Cell, Cell] | None) -> None:
        """Draws a band around what is being chosen."""
        self._band = corners
        self.update()

    def tag_at(self, x: float, z: float) -> Tag | None:
        """The arm's tag over a point, in cells."""
        left, top = self.navigator.view.corner(x, z)
        tags = shown_tags(self.document.plan.arms, self._level, self.navigator.view)
        return tag_under(tags, QPointF(left, top))

    def fit_all(self) -> None:
        """Shows all pieces; an empty plan at 100 % about x = z = 0."""
        extent = self.scene.index.extent()
        beside = max(BESIDE, round(widest_beside(self.document.plan.arms)) + 8)
        self.navigator.fit(Area(0, 0, 0, 0) if extent is None else extent, beside)

    def fit_selection(self) -> None:
        """Shows all that is chosen."""
        if self._selection:
            self.navigator.fit(_bounds(self._selection))

    def zoom_100(self) -> None:
        """48 px a cell."""
        self.navigator.zoom_to(FULL_SIZE)

    def zoom_in(self) -> None:
        """One step larger."""
        self.navigator.zoom(1)

    def zoom_out(self) -> None:
        """One step smaller."""
        self.navigator.zoom(-1)

    def go_to(self, cell: Cell) -> None:
        """Shows a cell and its level, with the cursor on it."""
        self.level = cell.y
        self.navigator.bring_into_sight(Area(cell.x, cell.z, cell.x, cell.z))
        self.put_cursor(cell, by_key=True)

    def show_cells(self, cells: Iterable[Cell]) -> None:
        """Switches to the level of the first cell, brings the cells there into sight, and chooses all."""
        found = list(cells)
        if not found:
            return
        if all(cell.y != self._level for cell in found):
            self.level = found[0].y
        self.navigator.bring_into_sight(_bounds(cell for cell in found if cell.y == self._level))
        self.selection = frozenset(found)

    def lead_to(self, cells: Iterable[Cell]) -> None:
        """Shows cells that a list told of; the keyboard goes on from the first of them on the level."""
        found = list(cells)
        self.show_cells(found)
        first = next((cell for cell in found if cell.y == self._level), None)
        if first is not None:
            self.put_cursor(first, by_key=False)

    def show_finding(self, chosen: Finding | None) -> None:
        """Draws narrow leaders to the cells of the chosen finding."""
        self._chosen_finding = chosen
        self.update()

    def _follow_findings(self, difference: Difference | None) -> None:
        if difference is not None:
            self.scene.follow_markers(marked_cells(difference))
        self.update()

    def _take_junction(self) -> None:
        if not self.document.junction_is_old:
            self.scene.take_marks(self.document.shown(marks_of) or NO_MARKS)
            self.update()

    def _show_preview(self) -> None:
        shown = self.previews.shown
        self.scene.show_preview(shown)
        self._ways = shown_ways(shown.runs, self.scene.is_plain)
        if not shown.runs:
            self.motion.stop()
        self.preview_text_changed.emit(shown.title)
        self.update()

    def _repaint(self, cells: Iterable[Cell], carts: Iterable[PlacedCart]) -> None:
        """Paints anew only what a dry run changed, where it is in sight."""
        view, region = self.navigator.drawn, QRegion()
        side = view.scale + 2
        for cell in cells:
            if abs(cell.y - self._level) <= 1:
                left, top = view.corner(cell.x, cell.z)
                region += QRect(left - 1, top - 1, side, side)
        for cart in carts:
            if cart.cell.y == self._level:
                left, top = view.corner(cart.cell.x + cart.x, cart.cell.z + cart.z)
                region += QRect(left - 1, top - 1, side, side)
        self.update(region & self.rect())

    def _drive(self) -> None:
        self.motion.start(self.previews.shown.runs[-1], is_reduced(self))

    # Qt

    def sizeHint(self) -> QSize:
        """As much as there is."""
        return QSize(900, 640)

    def paintEvent(self, event: QPaintEvent) -> None:  # all in sight is painted
        """Paints what is in sight."""
        self._exposed = event.rect()
        painter = painter_on_whole_pixels(self, self.theme.paper)
        with window_first():
            patience = Patience(FRAME_SECONDS) if self._is_on_screen(painter) else Patience()
            paint_view(painter, self._shown(patience))
        painter.end()
        if not self.scene.is_whole:
            self._paint_rest.start()

    def _is_on_screen(self, painter: QPainter) -> bool:
        """Whether a frame is painted that another one follows, and no picture for somebody who takes it."""
        screen = self.window().backingStore()
        return screen is not None and painter.paintEngine().paintDevice() is screen.paintDevice()

    def _shows(self, neighbour: int) -> bool:
        return not self._solo and neighbour not in self.document.levels.hidden

    def _shown(self, patience: Patience) -> Shown:
        self.scene.show_markers(self.document.found.markers)
        return Shown(
            patience=patience,
            size=self.rect(),
            scene=self.scene,
            view=self.navigator.drawn,
            seen=self.navigator.drawn_area,
            level=self._level,
            manners=Manners(
                self.theme,
                self._shows(self._level - 1),
                self._shows(self._level + 1),
                self.devicePixelRatioF(),
            ),
            arms=self.document.plan.arms,
            ghost=self._ghost,
            comparison=self.comparison,
            survey=self._survey.without(self._ghost.looks.keys()),
            outline=self._outline.without(self._ghost.looks.keys()),
            foot=self.navigator.foot,
            band=self._band,
            selection=self._selection,
            cursor=self._cursor,
            cursor_shows=self._cursor_shows and self.hasFocus(),
            preview=self.previews.shown,
            ways=self._ways,
            cart=self.motion.run,
            cart_distance=self.motion.distance,
            exposed=self._exposed_area(),
            live_carts=self.dry_run.carts,
            probes=self.dry_run.runner.watched,
            # The figures of a dry run stand where the markers would.
            has_markers=not self.dry_run.is_on,
            chosen_finding=self._chosen_finding,
            is_empty=not (len(self.document.plan.pieces) or self._ghost.looks or self._outline.looks),
        )

    def _exposed_area(self) -> Area:
        exposed = self._exposed
        return self.navigator.drawn.area(
            exposed.left(), exposed.top(), exposed.right() + 1, exposed.bottom() + 1
        )

    def showEvent(self, event: QShowEvent) -> None:
        """Only now the size is known to which the plan is fitted."""
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


def _bounds(cells: Iterable[Cell]) -> Area:
    known = list(cells)
    xs, zs = [cell.x for cell in known], [cell.z for cell in known]
    return Area(min(xs), min(zs), max(xs), max(zs))
