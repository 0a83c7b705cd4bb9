"""The user's hands on the plan view: turns Qt's events into those of the tool in use.

Space, the middle button and two fingers move the plan and never reach a tool. Enter acts where the
keyboard's cursor is: tools that drag begin with one Enter and end with the next.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QKeyEvent, QMouseEvent

from app.canvas.edge_pan import EdgePan
from app.canvas.host import ViewHost
from app.canvas.keys import ARROWS, KEYS, buttons_of, modifiers_of, takes_back
from app.canvas.rulers import LEFT, TOP
from app.tools.events import Buttons, Modifiers, PointerEvent
from app.tools.paste import PasteTool
from app.tools.select import SelectTool
from app.tools.table import TOOLS
from app.tools.tool import Tool
from model.pieces import Piece

if TYPE_CHECKING:
    from app.canvas.view import PlanView

MIDDLE = (0.5, 0.5)


class Hands:
    """Holds the tool in use, and knows what the pointer and the keys are doing."""

    def __init__(self, view: PlanView, host: ViewHost) -> None:
        self.host = host
        self.tool: Tool = SelectTool(host)
        self._view = view
        self._space = False
        self._grips_with = Qt.MouseButton.NoButton
        """What holds the plan while it is dragged; another button let go meanwhile is the tool's."""
        self._is_pressing = False
        self._fraction = MIDDLE
        self._held = Modifiers.NONE
        """What was held down with the pointer when it moved last."""
        self._edge_pan = EdgePan(view.navigator, self._drag_on)

    def use(self, name: str) -> None:
        """Takes up a tool, the one in use too, which drops its gesture. Raises KeyError."""
        self._take_up(TOOLS[name](self.host))

    def carry(self, pieces: tuple[Piece, ...]) -> None:
        """Carries pieces at the pointer until they are put down."""
        self._take_up(PasteTool(self.host, pieces, self._view.cursor))

    def interrupt(self) -> None:
        """Ends the gesture without a change."""
        self._end_press()
        self.tool.interrupt()
        self._put_away_paste()

    def take_back(self) -> None:
        """Undoes the newest step; while a gesture is on, that alone."""
        if self.tool.is_busy:
            self.interrupt()
        else:
            self._view.document.undo()

    def escape(self) -> None:
        """One step back: the gesture, preview or dry run, a search, a comparison, the choice, the tool."""
        view = self._view
        if self.tool.cancel():
            self._end_press()
            self._put_away_paste()
        elif view.previews.is_on or view.dry_run.is_on:
            view.clear_preview()
        elif view.surveying.search.is_running:
            view.surveying.stop()
        elif view.rewiring.search.is_running:
            view.rewiring.stop()
        elif view.comparing.is_on:
            view.comparing.end()
        elif view.selection:
            view.selection = frozenset()
        elif not isinstance(self.tool, SelectTool):
            self.use(SelectTool.name)
        else:
            view.unwound.emit()

    def point_again(self) -> None:
        """Tells the tool where the pointer is, after the level or what is in hand changed."""
        event = self._at_cursor(Modifiers.NONE)
        if self.tool.is_busy:
            self.tool.drag(event)
        else:
            self.tool.hover(event)

    def pointer_left(self) -> None:
        """The pointer left the view: what hovers there goes."""
        if not self.tool.is_busy:
            self._view.show_ghost(None)

    def press(self, event: QMouseEvent) -> None:
        """A button went down."""
        at = event.position()
        if self._view.navigator.is_panning:
            return
        if event.button() is Qt.MouseButton.MiddleButton or (self._space and _is_left(event)):
            self._grips_with = event.button()
            self._view.navigator.grip(at)
            self._view.setCursor(Qt.CursorShape.ClosedHandCursor)
        elif _is_left(event) and at.x() >= LEFT and at.y() >= TOP and not self._is_pressing:
            self._point(at)
            self._is_pressing = True
            self.host.say("")
            self.tool.press(self._event(event))

    def move(self, event: QMouseEvent) -> None:
        """The pointer moved."""
        if self._view.navigator.is_panning:
            self._view.navigator.drag(event.position())
            return
        self._point(event.position())
        if self._is_pressing:
            self._held = modifiers_of(event.modifiers())
            self.tool.drag(self._event(event))
            self._edge_pan.follow(event.position())
        elif not self.tool.is_busy or isinstance(self.tool, PasteTool):
            self.tool.hover(self._event(event))

    def release(self, event: QMouseEvent) -> None:
        """A button went up."""
        if self._view.navigator.is_panning and event.button() is self._grips_with:
            self._view.navigator.let_go()
            self._show_pointer()
        elif _is_left(event) and self._is_pressing:
            self._end_press()
            self._point(event.position())
            self.tool.release(self._event(event))
            self._put_away_paste()

    def key_down(self, event: QKeyEvent) -> bool:
        """A key went down; whether it meant anything here."""
        key, held = Qt.Key(event.key()), modifiers_of(event.modifiers())
        if key is Qt.Key.Key_Space and not held:
            self._space = True
            self._show_pointer()
        elif key is Qt.Key.Key_Escape and not held:
            self.escape()
        elif self.tool.is_busy and takes_back(event):
            self.take_back()
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and not held & ~Modifiers.SHIFT:
            self._enter(held)
        elif key in (Qt.Key.Key_PageUp, Qt.Key.Key_PageDown) and not held:
            self._view.level += 1 if key is Qt.Key.Key_PageUp else -1
        elif key in KEYS and self.tool.key(KEYS[key], held):
            pass
        elif key in ARROWS and not held & ~Modifiers.CTRL:
            self._view.put_cursor(self._view.cursor.step(ARROWS[key]), by_key=True)
            self._fraction = MIDDLE
            self._drag_by_key(held)
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
        """The view has the keys no more: it will not be told when Space goes up."""
        self._space = False
        self._show_pointer()

    def _end_press(self) -> None:
        self._is_pressing = False
        self._edge_pan.stop()

    def _drag_on(self, at: QPointF) -> None:
        """The view moved below the pointer."""
        self._point(at)
        self.tool.drag(self._at_cursor(self._held))

    def _take_up(self, tool: Tool) -> None:
        before = self.tool.name
        self._end_press()
        self.tool.leave()
        self.tool = tool
        tool.enter()
        self._show_pointer()
        if tool.name != before:
            self._view.tool_changed.emit(tool.name)

    def _put_away_paste(self) -> None:
        """What was carried is put down or dropped: back to choosing."""
        if isinstance(self.tool, PasteTool) and not self.tool.is_busy:
            self.use(SelectTool.name)

    def _enter(self, held: Modifiers) -> None:
        """Acts at the cursor as a press, or as the release of a drag by key."""
        self._view.put_cursor(self._view.cursor, by_key=True)
        event = self._at_cursor(held)
        if self.tool.is_busy:
            self.tool.release(event)
            self._put_away_paste()
            return
        self.host.say("")
        self.tool.press(event)
        if not self.tool.waits_for_drag and not (self.tool.drags_by_shift and held & Modifiers.SHIFT):
            self.tool.release(event)

    def _drag_by_key(self, held: Modifiers) -> None:
        event = self._at_cursor(held)
        if self.tool.is_busy:
            self.tool.drag(event)
        else:
            self.tool.hover(event)

    def _point(self, at: QPointF) -> None:
        cell = self._view.navigator.view.cell_at(at.x(), at.y(), self._view.level)
        self._fraction = self._view.navigator.view.fraction_at(at.x(), at.y())
        self._view.put_cursor(cell, by_key=False)

    def _event(self, event: QMouseEvent) -> PointerEvent:
        buttons = buttons_of(event.buttons())
        return PointerEvent(self._view.cursor, self._fraction, buttons, modifiers_of(event.modifiers()))

    def _at_cursor(self, held: Modifiers) -> PointerEvent:
        buttons = Buttons.LEFT if self.tool.is_busy else Buttons.NONE
        return PointerEvent(self._view.cursor, self._fraction, buttons, held)

    def _show_pointer(self) -> None:
        if self._space:
            self._view.setCursor(Qt.CursorShape.OpenHandCursor)
        elif isinstance(self.tool, SelectTool | PasteTool):
            self._view.setCursor(Qt.CursorShape.ArrowCursor)
        else:
            self._view.setCursor(Qt.CursorShape.CrossCursor)


def _is_left(event: QMouseEvent) -> bool:
    return event.button() is Qt.MouseButton.LeftButton
