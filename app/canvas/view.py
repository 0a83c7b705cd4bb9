"""The plan view: the canvas with the user's hands on it."""

from __future__ import annotations

from collections.abc import Generator, Iterator
from contextlib import contextmanager
from typing import Final

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from app.background import CancelledError, at_once
from app.canvas import clipboard
from app.canvas.canvas import FIRST_LEVEL, Canvas
from app.canvas.carries import GoesTo
from app.canvas.chips import CHIP, EDGE
from app.canvas.comparison import NO_COMPARISON, ComparisonPicture
from app.canvas.dry_running import PREVIEWED
from app.canvas.ghosts import NO_GHOST, survey_picture
from app.canvas.hands import Hands
from app.canvas.host import ViewHost
from app.canvas.name_entry import NameEntry
from app.canvas.picture import picture_of_pieces, squares_of_pieces
from app.canvas.rewiring import Rewiring
from app.canvas.rulers import TOP
from app.canvas.run_bar import RunBar
from app.canvas.survey_bar import SurveyBar
from app.canvas.surveying import Surveying
from app.comparing.comparing import Comparing
from app.document import BESIDE_FROM, Document
from app.panels.focus_frame import FocusFrame
from app.tools.cart import CartTool
from app.tools.hand import Hand
from app.tools.host import ArmQuestion
from app.tools.module_hand import ModuleHand
from app.tools.select import SelectTool
from app.tools.survey import SurveyTool
from app.translation import QT_TR_NOOP, tr
from model.edits import copy_pieces, erase
from model.files.plan_file import PlanFileError
from model.grid import VECTORS, Cell, Heading, Turn
from model.parts import RAILS
from model.pieces import Piece
from model.plan import Change

NO_PIECES: Final = QT_TR_NOOP("Nothing to paste: the clipboard holds no pieces.")
MUCH_TEXT: Final = 200_000
"""Bytes on the clipboard from which on they are read beside the window."""


class PlanView(Canvas):
    """Hands pointer and keys to the tool in use, and follows the document."""

    tool_changed = Signal(str)
    hand_changed = Signal()
    module_changed = Signal()
    unwound = Signal()
    """Esc, with nothing left here to take back."""

    def __init__(self, document: Document, parent: QWidget | None = None) -> None:
        super().__init__(document, parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setAccessibleName(tr("Plan view"))
        self._hand = Hand()
        self._module_hand = ModuleHand()
        self.name_entry = NameEntry(self)
        self.surveying = Surveying(document, self)
        self.rewiring = Rewiring(document, self)
        self.comparing = Comparing(document, self)
        self.survey_bar = SurveyBar(self.surveying, self)
        self.run_bar = RunBar(self.dry_run, self)
        self.navigator.head = self._under_chips
        self.hands = Hands(self, ViewHost(self))
        FocusFrame(self)
        self.name_entry.dropped.connect(self.hands.escape)
        self.level_changed.connect(self.hands.point_again)
        self.surveying.status.connect(self.status)
        self.rewiring.status.connect(self.status)
        for change in (self.tool_changed, self.previews.changed, self.surveying.changed):
            change.connect(self._show_survey)
        self.dry_run.changed.connect(self._show_survey)
        for change in (
            self.comparing.changed,
            self.previews.changed,
            self.dry_run.changed,
            self.tool_changed,
        ):
            change.connect(self._show_comparison)
        self.tool_changed.connect(lambda tool: self.run_bar.show_train(tool == CartTool.name))
        self.run_bar.cells_chosen.connect(self.show_cells)
        document.changed.connect(self._follow)
        document.reset.connect(self._open)
        self._open()

    @property
    def tool(self) -> str:
        """The name of the tool in use."""
        return self.hands.tool.name

    def use(self, tool_name: str) -> None:
        """Takes up a tool. Raises KeyError for a name that is none."""
        self.hands.use(tool_name)

    @property
    def hand(self) -> Hand:
        """What is in hand."""
        return self._hand

    @hand.setter
    def hand(self, hand: Hand) -> None:
        if hand != self._hand:
            self._hand = hand
            self.hand_changed.emit()
            self.hands.point_again()

    def take_in_hand(self, hand: Hand) -> None:
        """Puts a part in hand."""
        self.hand = hand

    @property
    def module_hand(self) -> ModuleHand:
        """The module in hand."""
        return self._module_hand

    @module_hand.setter
    def module_hand(self, hand: ModuleHand) -> None:
        if hand != self._module_hand:
            self._module_hand = hand
            self.module_changed.emit()
            self.hands.point_again()

    def ask_arm(self, question: ArmQuestion) -> None:
        """Asks for an arm's name beside the end of its track."""
        left, top = self.navigator.view.corner(question.cell.x, question.cell.z)
        scale = self.navigator.view.scale
        dx, dz = VECTORS[question.outward]
        self.name_entry.ask(question, left + dx * scale + 8, top + scale + 30 + max(0, dz) * scale)

    # Previews

    def preview_switches(self, powered: frozenset[Cell]) -> None:
        """Shows just these switches powered."""
        self.dry_run.runner.stop(tr(PREVIEWED))
        self.previews.throw(powered)

    def preview_reader(self, arm_name: str | None) -> None:
        """Shows what the reader of an arm throws; ``None`` ends the preview."""
        if arm_name is None:
            self.clear_preview()
        else:
            self.dry_run.runner.stop(tr(PREVIEWED))
            self.previews.hold(arm_name)

    def run_cart(self, arm_name: str, waybill: bool) -> None:
        """Sends a test cart in by an arm; in a dry run, the train."""
        if self.dry_run.is_on:
            self.dry_run.send(arm_name, waybill)
        else:
            self.previews.run_cart(arm_name, waybill)

    def send_cart(self, cell: Cell, heading: Heading, waybill: bool) -> None:
        """Sends a test cart off from a rail; in a dry run, the train."""
        if self.dry_run.is_on:
            self.dry_run.drop(cell, heading, waybill)
        else:
            self.previews.send_cart(cell, heading, waybill)

    def clear_preview(self) -> None:
        """Ends every preview, the dry run too."""
        self.previews.clear()
        self.dry_run.runner.stop()

    def start_dry_run(self) -> None:
        """Begins a dry run of the plan as it is now, or goes on with the one that is on."""
        self.hands.interrupt()
        self.previews.clear()
        self.dry_run.start()

    # Editing what is chosen

    def select_all(self) -> None:
        """Chooses every piece of the level."""
        extent = self.scene.index.extent(self.level)
        if extent is not None:
            pieces = self.scene.index.pieces_in(extent, self.level)
            self.selection = frozenset(piece.at for piece in pieces)

    def delete(self) -> None:
        """Erases what is chosen."""
        self.hands.interrupt()
        self.document.apply(erase(self.document.plan, self.selection))

    def copy(self) -> bool:
        """Puts what is chosen on the clipboard. Whether anything was."""
        plan, cells, scene, theme = self.document.plan, self.selection, self.scene, self.theme
        is_much = len(cells) >= BESIDE_FROM

        def work() -> Generator[None, None, clipboard.Copied | None]:
            yield
            pieces = copy_pieces(plan, cells)
            if not pieces:
                return None
            picture = squares_of_pieces(pieces, theme) if is_much else picture_of_pieces(scene, pieces, theme)
            return clipboard.copied(pieces, picture)

        try:
            copied = (self.document.beside if is_much else at_once)(tr("Copying the pieces…"), work)
        except CancelledError:
            self.status.emit(tr("Cancelled: nothing was copied."))
            return False
        if copied is None:
            self.status.emit(tr("Nothing to copy: no piece is chosen."))
            return False
        clipboard.put(copied)
        self.status.emit(tr("Copied {pieces}.", pieces=tr("%n piece(s)", "", copied.count)))
        return True

    def cut(self) -> None:
        """Puts what is chosen on the clipboard and erases it."""
        # First, as erasing ends a gesture: what a band holds by then would be kept, and other pieces erased.
        self.hands.interrupt()
        if self.copy():
            self.delete()

    def paste(self) -> None:
        """Carries the pieces of the clipboard at the pointer until a click puts them down."""
        document = clipboard.document_now()
        if document is None:
            self.status.emit(tr(NO_PIECES))
            return

        def work() -> Generator[None, None, tuple[Piece, ...]]:
            yield
            return clipboard.pieces_in(document)

        do = self.document.beside if len(document) >= MUCH_TEXT else at_once
        try:
            pieces = do(tr("Reading the clipboard…"), work)
        except PlanFileError as error:
            self.status.emit(str(error))
            return
        except CancelledError:
            self.status.emit(tr("Cancelled: nothing is pasted."))
            return
        if pieces:
            self.hands.carry(pieces)
            self.setFocus()
        else:
            self.status.emit(tr(NO_PIECES))

    def turn_selection(self, turn: Turn) -> None:
        """Turns what is chosen about its middle."""
        if self.selection:
            SelectTool(self.hands.host).turn(turn)

    @contextmanager
    def carry_choice(self, goes_to: GoesTo) -> Iterator[None]:
        """What is chosen, and the survey, follow an edit that takes every cell of the plan to another."""
        plan, chosen = self.document.plan, self.selection
        with self.surveying.carries.making(goes_to):
            yield
        if self.document.plan is not plan:
            self.selection = frozenset(map(goes_to, chosen))

    # Surveying

    def _show_survey(self) -> None:
        """The survey shows while it is made or searched for, unless a preview shows other shapes."""
        is_made = self.tool == SurveyTool.name or self.surveying.search.is_running
        shows = is_made and not self.previews.is_on and not self.dry_run.is_on
        self.survey_bar.setVisible(shows)
        differing, impossible = self.surveying.differing, self.surveying.impossible
        picture = survey_picture(differing, impossible, self.document.layout)
        self.show_survey(picture if shows else NO_GHOST)

    def _show_comparison(self) -> None:
        """What differs shows unless a preview or the survey shows other shapes, or the dry run goes on."""
        comparing = self.comparing
        is_elsewhere = self.previews.is_on or self.dry_run.is_on or self.survey_bar.isVisible()
        if not comparing.is_on or is_elsewhere:
            self.show_comparison(NO_COMPARISON)
            return
        picture = ComparisonPicture(comparing.title, comparing.differences, comparing.other)
        self.show_comparison(picture)

    # Following the document

    def _follow(self, change: Change, reshaped: frozenset[Cell]) -> None:
        self.hands.interrupt()
        self.previews.clear()
        self.scene.follow(change, reshaped)
        pieces = self.document.plan.pieces
        gone = frozenset(cell for cell in self.selection & change.cells if cell not in pieces)
        self.selection -= gone
        self.hands.point_again()
        self.update()

    def _open(self) -> None:
        self.hands.interrupt()
        self.previews.clear()
        self.scene.open(self.document.layout, self.document.index)
        self.selection = frozenset()
        self.show_finding(None)
        rail = next((piece.at.y for piece in self.document.plan.pieces if piece.part in RAILS), FIRST_LEVEL)
        self.level = rail
        self.fit_all()
        self._take_junction()

    def _under_chips(self) -> int:
        """How far down the chips reach that stand over the plan, in px."""
        chips = [chip for chip in (self.survey_bar, self.run_bar) if chip.isVisible()]
        painted = EDGE + CHIP if self.previews.shown.title or self.comparison.title else 0
        return max([painted, *(chip.geometry().bottom() - TOP for chip in chips)])

    # Qt

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begins a pan or a gesture of the tool."""
        self.hands.press(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Goes on with it."""
        self.hands.move(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Ends it."""
        self.hands.release(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The chip keeps inside."""
        self.survey_bar.place()
        self.run_bar.place()
        super().resizeEvent(event)

    def leaveEvent(self, event: QEvent) -> None:
        """What hovers goes with the pointer."""
        self.hands.pointer_left()
        super().leaveEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Hands the key to the tool; what nobody wants goes on to the window."""
        if not self.hands.key_down(event):
            super().keyPressEvent(event)

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        """Lets go of the plan when Space goes up."""
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
