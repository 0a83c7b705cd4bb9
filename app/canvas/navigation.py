"""Which part of the plan is in sight: zooming at a pixel, panning, fitting, and the gestures for these."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QEasingCurve, QObject, QPointF, QRect, Qt, QVariantAnimation, Signal
from PySide6.QtGui import QInputDevice, QNativeGestureEvent, QWheelEvent
from PySide6.QtWidgets import QWidget

from app.canvas.geometry import (
    FULL_SIZE,
    ZOOM_STEPS,
    Area,
    Viewport,
    fitting_step,
    next_step,
)
from app.canvas.rulers import LEFT, TOP
from app.motion import is_reduced
from model.grid import Cell

NOTCH: Final = 120
"""Eighths of a degree that one notch of a wheel turns."""
PINCH_STEP: Final = 0.25
"""How far two fingers spread, as a part, for one zoom step."""
BESIDE: Final = 90
"""px left free on the left and right of what is fitted, for the tags of arms."""
ABOVE: Final = 40
"""px left free above and below."""
GLIDE: Final = 220
"""ms that the plan takes to move to what is fitted or gone to, slower towards the end."""


class Navigator(QObject):
    """Holds the viewport of a widget, and moves it."""

    moved = Signal()

    def __init__(self, widget: QWidget) -> None:
        super().__init__(widget)
        self._widget = widget
        self.view = Viewport(FULL_SIZE, LEFT + 5 * FULL_SIZE, TOP + 5 * FULL_SIZE)
        self.foot = 0
        """px at the foot of the widget that something stands over."""
        self.head: Callable[[], int] = lambda: 0
        """px at the top of the room that something stands over now."""
        self._turned = 0
        self._pinched = 0.0
        self._grip: QPointF | None = None
        self._fitted = self.view
        self._fit_again: Callable[[], None] | None = None
        self._glided_from = self.view
        self._glide = QVariantAnimation(self)
        self._glide.setDuration(GLIDE)
        self._glide.setEasingCurve(QEasingCurve.Type.OutCubic)
        self._glide.setStartValue(0.0)
        self._glide.setEndValue(1.0)
        self._glide.valueChanged.connect(self.moved)

    @property
    def drawn(self) -> Viewport:
        """The viewport as it is drawn: on the way to ``view`` while the plan glides there."""
        if self._glide.state() is not QVariantAnimation.State.Running:
            return self.view
        left = 1.0 - float(self._glide.currentValue())
        return self.view.panned(
            round(left * (self._glided_from.origin_x - self.view.origin_x)),
            round(left * (self._glided_from.origin_y - self.view.origin_y)),
        )

    @property
    def zoomed_by(self) -> float:
        """How large all is shown; 1 is full size."""
        return self.view.scale / FULL_SIZE

    @property
    def room(self) -> QRect:
        """The widget's rectangle without the rulers."""
        return self._widget.rect().adjusted(LEFT, TOP, 0, 0)

    @property
    def _free(self) -> QRect:
        """The room for what is fitted or gone to."""
        return self.room.adjusted(0, self.head(), 0, -self.foot)

    @property
    def seen(self) -> Area:
        """The cells in sight, in part or whole."""
        return _seen_in(self.view, self.room)

    @property
    def drawn_area(self) -> Area:
        """The cells in sight of ``drawn``."""
        return _seen_in(self.drawn, self.room)

    @property
    def is_panning(self) -> bool:
        """Whether the plan is held and dragged."""
        return self._grip is not None

    def show(self, view: Viewport) -> None:
        """Takes another viewport at once."""
        if view != self.view:
            self._glide.stop()
            self.view = view
            self.moved.emit()

    def glide(self, view: Viewport) -> None:
        """Takes another viewport, gliding there where it is near and the system asks for no less motion."""
        before = self.drawn
        self.show(view)
        if self._may_glide(before):
            self._glided_from = before
            self._glide.start()

    def _may_glide(self, before: Viewport) -> bool:
        near = (
            abs(before.origin_x - self.view.origin_x) <= self._widget.width()
            and abs(before.origin_y - self.view.origin_y) <= self._widget.height()
        )
        return (
            near
            and before.scale == self.view.scale
            and self._widget.isVisible()
            and not is_reduced(self._widget)
        )

    def zoom(self, steps: int, at: QPointF | None = None) -> None:
        """So many steps in (or out) with the cell under a pixel kept; without one, the middle's."""
        at = QPointF(self.room.center()) if at is None else at
        self.show(self.view.zoomed(next_step(self.view.scale, steps), at.x(), at.y()))

    def zoom_to(self, scale: int) -> None:
        """A zoom step, with the cell in the middle kept."""
        self.zoom(ZOOM_STEPS.index(scale) - ZOOM_STEPS.index(self.view.scale))

    def fit(self, area: Area, beside: int = BESIDE) -> None:
        """Shows an area whole and in the middle, no larger than 100 %, with so many px free beside it."""
        scale = fitting_step(area, self._free.width() - 2 * beside, self._free.height() - 2 * ABOVE)
        self._centre(Viewport(scale), area)
        self.keep_fitted(lambda: self.fit(area, beside))

    def keep_fitted(self, fit_again: Callable[[], None]) -> None:
        """What was just fitted is fitted again when the widget is resized, until the view is moved."""
        self._fitted, self._fit_again = self.view, fit_again

    def forget_fit(self) -> None:
        """What was fitted is not what it was: the view stays where it is."""
        self._fit_again = None

    def take_size(self) -> None:
        """The widget was resized."""
        if self._fit_again is not None and self.view == self._fitted:
            self._fit_again()
            # All moves with the edges of the widget; nothing glides besides.
            self._glide.stop()

    def bring_into_sight(self, area: Area) -> None:
        """Centres an area, unless it is all in sight; zooms out only where it has no room."""
        seen = _seen_in(self.view, self._free)
        whole = Area(seen.west + 1, seen.north + 1, seen.east - 1, seen.south - 1)
        if whole.holds(area.west, area.north) and whole.holds(area.east, area.south):
            return
        scale = fitting_step(area, self._free.width(), self._free.height(), self.view.scale)
        self._centre(Viewport(scale), area)

    def follow(self, cell: Cell) -> None:
        """Moves just far enough to keep a cell in sight, with a cell of margin."""
        room, scale = self._free, self.view.scale
        left, top = self.view.corner(cell.x, cell.z)
        dx = _needed(left - scale, left + 2 * scale, room.left(), room.left() + room.width())
        dy = _needed(top - scale, top + 2 * scale, room.top(), room.top() + room.height())
        self.show(self.view.panned(dx, dy))

    def grip(self, at: QPointF) -> None:
        """Takes hold of the plan."""
        self._grip = at

    def drag(self, to: QPointF) -> None:
        """Moves the plan with the pointer."""
        if self._grip is not None:
            step = to - self._grip
            whole = QPointF(round(step.x()), round(step.y()))
            self._grip += whole
            self.show(self.view.panned(round(whole.x()), round(whole.y())))

    def let_go(self) -> None:
        """Ends the drag."""
        self._grip = None

    def wheel(self, event: QWheelEvent) -> None:
        """A wheel zooms at the pointer; two fingers on a pad pan, with Ctrl they zoom."""
        ctrl = bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)
        pad = event.device().type() is QInputDevice.DeviceType.TouchPad or not event.pixelDelta().isNull()
        if pad and not ctrl:
            step = event.pixelDelta() if not event.pixelDelta().isNull() else event.angleDelta() / 4
            self.show(self.view.panned(step.x(), step.y()))
            return
        if event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
            turned = event.angleDelta().y() or event.angleDelta().x()
            self.show(self.view.panned(turned // 2, 0))
            return
        self._turned += event.angleDelta().y()
        steps = int(self._turned / NOTCH)
        self._turned -= steps * NOTCH
        if steps:
            self.zoom(steps, event.position())

    def pinch(self, event: QNativeGestureEvent) -> bool:
        """Two fingers spread or pinch: zooms at the pointer, step by step."""
        if event.gestureType() is Qt.NativeGestureType.BeginNativeGesture:
            self._pinched = 0.0
            return True
        if event.gestureType() is not Qt.NativeGestureType.ZoomNativeGesture:
            return False
        self._pinched += event.value()
        steps = int(self._pinched / PINCH_STEP)
        self._pinched -= steps * PINCH_STEP
        if steps:
            self.zoom(steps, event.position())
        return True

    def _centre(self, view: Viewport, area: Area) -> None:
        x, z = area.west + area.width / 2, area.north + area.height / 2
        middle = QPointF(self._free.center())
        self.glide(view.centred(x, z, middle.x(), middle.y()))


def _seen_in(view: Viewport, room: QRect) -> Area:
    return view.area(room.left(), room.top(), room.left() + room.width(), room.top() + room.height())


def _needed(low: int, high: int, least: int, most: int) -> int:
    """How far something from ``low`` to ``high`` must move to lie between ``least`` and ``most``."""
    if low < least:
        return least - low
    return min(0, most - high)
