"""The user's hands on the map: turns Qt's events into those of the tool in use.

As in the plan view: Space, the middle button and two fingers move the map and never reach a tool. Enter acts
where the keyboard's cursor is: tools that drag begin with one Enter and end with the next.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QKeyEvent, QMouseEvent

from app.canvas.edge_pan import EdgePan
from app.canvas.keys import ARROWS, modifiers_of, takes_back
from app.network.leaping import next_spot
from app.network.tools.select import SelectTool
from app.network.tools.table import TOOLS
from app.network.tools.tool import At, MapTool
from app.tools.events import Modifiers
from app.translation import tr
from model.grid import VECTORS, Heading
from model.network.network import Spot

if TYPE_CHECKING:
    from app.network.map_view import MapView

REACH: Final = 6.0
"""px beside a line that count as on it."""


class MapHands:
    """Holds the tool in use, and knows what the pointer and the keys are doing."""

    def __init__(self, view: MapView) -> None:
        self.tool: MapTool = SelectTool(view.host)
        self._view = view
        self._space = False
        self._grips_with = Qt.MouseButton.NoButton
        """What holds the map while it is dragged; another button let go meanwhile is the tool's."""
        self._is_pressing = False
        self._held = Modifiers.NONE
        """What was held down with the pointer when it moved last."""
        self._edge_pan = EdgePan(view.navigator, self._drag_on)

    def use(self, name: str) -> None:
        """Take up a tool, the one in use too, which drops its gesture. Raises KeyError."""
        before = self.tool.name
        self.interrupt()
        self.tool = TOOLS[name](self._view.host)
        self._view.show_ghost(None)
        self._show_pointer()
        if name != before:
            self._view.tool_changed.emit(name)

    def interrupt(self) -> None:
        """End the gesture without a change."""
        self._end_press()
        self.tool.cancel()

    @property
    def is_busy(self) -> bool:
        """Whether a gesture is under way, and be it a click before its end."""
        return self._is_pressing or self.tool.is_busy

    def take_back(self) -> None:
        """Undo the newest step; while a gesture is on, that alone."""
        if self.is_busy:
            self._drop()
        else:
            self._view.document.undo()

    def escape(self) -> None:
        """One step back: the gesture, what is lit, the choice, the tool."""
        view = self._view
        if self.is_busy:
            self._drop()
        elif view.lit.title:
            view.light_ended.emit()
        elif view.selection:
            view.choose(frozenset())
        elif not isinstance(self.tool, SelectTool):
            self.use(SelectTool.name)

    def press(self, event: QMouseEvent) -> None:
        """A button went down."""
        left = event.button() is Qt.MouseButton.LeftButton
        if self._view.navigator.is_panning:
            return
        if event.button() is Qt.MouseButton.MiddleButton or (self._space and left):
            self._grips_with = event.button()
            self._view.navigator.grip(event.position())
            self._view.setCursor(Qt.CursorShape.ClosedHandCursor)
        elif left and not self._is_pressing:
            self._is_pressing = True
            self._view.say("")
            self.tool.press(self._at(event))

    def move(self, event: QMouseEvent) -> None:
        """The pointer moved."""
        if self._view.navigator.is_panning:
            self._view.navigator.drag(event.position())
            return
        at = self._at(event)
        self._view.point_at(at, by_key=False)
        if self._is_pressing:
            self._held = modifiers_of(event.modifiers())
            self.tool.drag(at)
            self._edge_pan.follow(event.position())
        elif not self.tool.is_busy:
            self.tool.hover(at)

    def release(self, event: QMouseEvent) -> None:
        """A button went up."""
        if self._view.navigator.is_panning and event.button() is self._grips_with:
            self._view.navigator.let_go()
            self._show_pointer()
        elif event.button() is Qt.MouseButton.LeftButton and self._is_pressing:
            self._end_press()
            self.tool.release(self._at(event))

    def open(self, event: QMouseEvent) -> None:
        """A double click."""
        if event.button() is Qt.MouseButton.LeftButton and not self._space:
            self._end_press()
            self.tool.open(self._at(event))

    def key_down(self, event: QKeyEvent) -> bool:
        """A key went down; whether it meant anything here."""
        key, held = Qt.Key(event.key()), modifiers_of(event.modifiers())
        if key is Qt.Key.Key_Space and not held:
            self._space = True
            self._show_pointer()
        elif key is Qt.Key.Key_Escape and not held:
            self.escape()
        elif self.is_busy and takes_back(event):
            self.take_back()
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and not held & ~Modifiers.SHIFT:
            self._enter(held)
        elif key in ARROWS and held == Modifiers.CTRL:
            self._view.nudge(*VECTORS[ARROWS[key]])
        elif key in ARROWS and held == Modifiers.SHIFT:
            self._leap(ARROWS[key])
        elif key in ARROWS and not held:
            self._step(ARROWS[key])
        else:
            return False
        return True

    def key_up(self, event: QKeyEvent) -> bool:
        """A key went up; whether it meant anything here."""
        if event.key() != Qt.Key.Key_Space or event.isAutoRepeat():
            return False
        self._space = False
        self._show_pointer()
        return True

    def forget_keys(self) -> None:
        """The map has the keys no more: it will not be told when Space goes up."""
        self._space = False
        self._show_pointer()

    def pointer_left(self) -> None:
        """What hovers goes with the pointer."""
        if not self.tool.is_busy:
            self._view.show_ghost(None)

    def _drop(self) -> None:
        self.interrupt()
        self._view.show_ghost(None)

    def _step(self, heading: Heading) -> None:
        dx, dy = VECTORS[heading]
        x, y = self._view.cursor_spot
        self._go_to((x + dx, y + dy))

    def _leap(self, heading: Heading) -> None:
        """To the next station or junction that way."""
        spots = self._view.document.picture.spots.values()
        spot = next_spot(spots, self._view.cursor_spot, heading)
        if spot is None:
            self._view.say(tr("No station or junction stands further that way."))
        else:
            self._go_to(spot)

    def _go_to(self, spot: Spot) -> None:
        at = self._at_spot(spot, Modifiers.NONE)
        self._view.point_at(at, by_key=True)
        if self.tool.is_busy:
            self.tool.drag(at)
        else:
            self.tool.hover(at)

    def _enter(self, held: Modifiers) -> None:
        """Act at the cursor as a press, or as the release of a drag by key."""
        at = self._at_spot(self._view.cursor_spot, held)
        self._view.point_at(at, by_key=True)
        if self.tool.is_busy:
            self.tool.drag(at)
            self.tool.release(at)
            return
        self._view.say("")
        self.tool.press(at)
        if not self.tool.waits_for_drag:
            self.tool.release(at)

    def _end_press(self) -> None:
        self._is_pressing = False
        self._edge_pan.stop()

    def _drag_on(self, pixel: QPointF) -> None:
        """The map moved below the pointer."""
        at = self.place_under(pixel, self._held)
        self._view.point_at(at, by_key=False)
        self.tool.drag(at)

    def _at(self, event: QMouseEvent) -> At:
        return self.place_under(event.position(), modifiers_of(event.modifiers()))

    def _at_spot(self, spot: Spot, held: Modifiers) -> At:
        return At(spot[0], spot[1], 0.5, held)

    def place_under(self, pixel: QPointF, held: Modifiers = Modifiers.NONE) -> At:
        """The pointer there, with this held."""
        x, y = self._view.navigator.view.place(pixel.x(), pixel.y())
        return At(x, y, REACH / self._view.navigator.view.scale, held)

    def _show_pointer(self) -> None:
        if self._space:
            self._view.setCursor(Qt.CursorShape.OpenHandCursor)
        elif isinstance(self.tool, SelectTool):
            self._view.setCursor(Qt.CursorShape.ArrowCursor)
        else:
            self._view.setCursor(Qt.CursorShape.CrossCursor)
