"""The view in depth beside the plan view: it follows, and is worked by mouse and keys."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QPushButton

from app import theme as themes
from app.canvas.view import PlanView
from app.depth.chunks import Chunks, size_at
from app.depth.view import DepthView
from app.depth.which import Which
from app.depth.window import DepthWindow
from app.document import Document
from app.window import MainWindow
from model.edits import erase, lay_track
from model.files.plan_file import parse_plan
from model.grid import Cell
from model.parts import Part
from model.pieces import new_piece
from model.plan import plan_of
from tests.app.windows import example

LEFT, NONE = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier


@pytest.fixture
def document(qapp: QApplication) -> Iterator[Document]:
    made = Document()
    yield made
    made.close()


@pytest.fixture
def plan_view(document: Document, qtbot) -> PlanView:
    """A plan view with an example of three levels, out of sight."""
    made = PlanView(document)
    qtbot.addWidget(made)
    path = example("saltern-junction")
    document.load(parse_plan(path.read_bytes(), path.name), None)
    settle(document)
    return made


@pytest.fixture
def shown(plan_view: PlanView, qtbot) -> DepthWindow:
    """The view in depth beside it."""
    made = DepthWindow(plan_view)
    qtbot.addWidget(made)
    made.show()
    qtbot.waitExposed(made)
    return made


def settle(document: Document) -> None:
    """Let the background finish, and what it found arrive."""
    document.wait()
    for _ in range(3):
        QApplication.processEvents()


def picture(view: DepthView) -> QImage:
    """All that is seen, whole; without the focus, which is not part of the picture."""
    view.clearFocus()
    image = view.grab().toImage()
    while view.is_unfinished:
        QApplication.processEvents()
        image = view.grab().toImage()
    return image


def pixel(view: DepthView, cell: Cell) -> QPoint:
    """The middle of a cell."""
    return view.frame.on(cell.y, cell.x + 0.5, cell.z + 0.5).toPoint()


def test_it_stands_beside_the_plan_and_leads_to_its_cells(window: MainWindow, qtbot) -> None:
    path = example("saltern-junction")
    window.document.load(parse_plan(path.read_bytes(), path.name), None)
    window.bound["in_depth"].trigger()
    shown = window.in_depth.shown
    assert shown is not None
    qtbot.waitExposed(shown)
    assert not shown.isModal()
    assert window.document.name in shown.windowTitle()
    block = next(p.at for p in window.document.plan.pieces if p.at.y == 63)
    QTest.mouseClick(shown.view, LEFT, NONE, pixel(shown.view, block))
    assert (window.view.level, window.view.cursor, window.view.selection) == (63, block, {block})
    QTest.keyClick(shown.view, Qt.Key.Key_Up)
    assert window.view.level == 64
    QTest.keyClick(shown.view, Qt.Key.Key_Escape)
    assert not shown.isVisible()
    window.bound["in_depth"].trigger()
    assert window.in_depth.shown is shown
    assert shown.isVisible()


def test_levels_hidden_on_the_plan_stay_hidden(document: Document, shown: DepthWindow) -> None:
    before = picture(shown.view)
    document.levels.toggle_hidden(63)
    assert shown.view.sight.stack.levels == (64, 65)
    assert "Level 63" not in shown.view.accessibleDescription()
    assert picture(shown.view) != before
    document.levels.toggle_hidden(63)
    assert shown.view.sight.stack.levels == (63, 64, 65)


def test_the_ways_of_carts_are_shown_as_on_the_plan_where_that_is_chosen(
    plan_view: PlanView, shown: DepthWindow
) -> None:
    plan_view.run_cart("Quay", False)
    settle(plan_view.document)
    with_way = picture(shown.view)
    assert shown.ways.isChecked()
    QTest.mouseClick(shown.ways, LEFT)
    without = picture(shown.view)
    assert without != with_way
    QTest.keyClick(shown.view, Qt.Key.Key_W)
    assert shown.ways.isChecked()
    assert picture(shown.view) == with_way
    plan_view.clear_preview()
    QTest.keyClick(shown.view, Qt.Key.Key_W)
    nothing_shown = picture(shown.view)
    QTest.keyClick(shown.view, Qt.Key.Key_W)
    assert picture(shown.view) == nothing_shown, "no way is shown on the plan either"


def test_it_says_in_words_what_it_shows(plan_view: PlanView, shown: DepthWindow) -> None:
    said = shown.view.accessibleDescription()
    assert said.startswith("Seen from the south-east. Levels ")
    assert said.endswith("Level 65: 2 pieces. Level 64: 64 pieces, drawn on. Level 63: 62 pieces.")
    assert all(button.accessibleName() for button in shown.findChildren(QPushButton))
    plan_view.level = 63
    assert "Level 63: 62 pieces, drawn on." in shown.view.accessibleDescription()


@pytest.mark.parametrize(
    "edit",
    [
        lambda plan: lay_track(plan, [Cell(x, 64, 8) for x in range(-5, 4)]),
        lambda plan: lay_track(plan, [Cell(x, 70, 3) for x in range(3)]),
        lambda plan: erase(plan, [Cell(-3, 64, 2), Cell(-3, 63, 2), Cell(0, 64, 0)]),
        lambda plan: erase(plan, [piece.at for piece in plan.pieces if piece.at.y == 63]),
    ],
    ids=["track", "level", "holes", "blocks"],
)
def test_it_follows_edits_to_the_picture_of_a_fresh_view(
    document: Document, shown: DepthWindow, edit: Callable
) -> None:
    view = shown.view
    before = picture(view)
    document.apply(edit(document.plan))
    settle(document)
    view.fit()
    after = picture(view)
    assert after != before
    view.take_plan()
    assert picture(view) == after, "all lines made anew"


def test_a_click_asks_for_a_cell_and_a_drag_moves_the_picture(shown: DepthWindow) -> None:
    view, asked, cell = shown.view, [], Cell(0, 64, 0)
    view.cell_asked.connect(asked.append)
    start, way = pixel(view, cell), QPoint(80, 30)
    QTest.mousePress(view, LEFT, NONE, start)
    QTest.mouseMove(view, start + way)
    QTest.mouseRelease(view, LEFT, NONE, start + way)
    assert asked == []
    assert pixel(view, cell) == start + way
    QTest.mouseClick(view, LEFT, NONE, start + way)
    assert asked == [cell]


def test_all_by_keys(shown: DepthWindow) -> None:
    view = shown.view
    first, gap, c = picture(view), view.sight.gap, view.sight.camera.c
    QTest.keyClick(view, Qt.Key.Key_Left)
    assert view.sight.view.seen_from == "north-east"
    assert picture(view) != first
    QTest.keyClick(view, Qt.Key.Key_Right)
    assert picture(view) == first
    QTest.keyClick(view, Qt.Key.Key_Plus)
    assert view.sight.gap > gap
    QTest.keyClick(view, Qt.Key.Key_Minus)
    QTest.keyClick(view, Qt.Key.Key_Minus)
    assert view.sight.gap < gap
    QTest.keyClick(view, Qt.Key.Key_Plus, Qt.KeyboardModifier.ControlModifier)
    assert view.sight.camera.c > c
    QTest.keyClick(view, Qt.Key.Key_0)
    assert picture(view) == first
    QTest.keyClick(view, Qt.Key.Key_O)
    QTest.keyClick(view, Qt.Key.Key_O)
    assert view.which is Which.OWN
    assert shown.levels.currentIndex() == Which.OWN
    assert view.sight.stack.levels == (64,)


def test_what_is_chosen_is_ringed_and_its_levels_alone_can_be_shown(
    plan_view: PlanView, shown: DepthWindow
) -> None:
    before = picture(shown.view)
    plan_view.choose([Cell(0, 64, 0), Cell(1, 64, 0)])
    assert picture(shown.view) != before
    shown.view.show_levels(Which.CHOSEN)
    assert shown.view.sight.stack.levels == (64,)
    plan_view.choose([])
    assert shown.view.sight.stack.levels == ()
    assert "nothing stands there" in shown.view.accessibleDescription()


def test_it_shows_what_a_dry_run_turns_on(plan_view: PlanView, shown: DepthWindow) -> None:
    before = picture(shown.view)
    plan_view.start_dry_run()
    assert picture(shown.view) != before, "the torches are lit"
    plan_view.clear_preview()
    assert picture(shown.view) == before


def test_from_far_out_each_piece_is_still_there(plan_view: PlanView, shown: DepthWindow) -> None:
    view = shown.view
    view.zoom(-20)
    tiny = picture(view)
    assert view.sight.camera.c < 1
    plan = plan_view.document.plan
    plan_view.document.apply(erase(plan, [piece.at for piece in plan.pieces if piece.at.y == 63]))
    assert picture(view) != tiny


def test_pieces_at_the_edges_of_the_world_are_shown_without_what_lies_between(
    document: Document, shown: DepthWindow
) -> None:
    """All that lies between in pictures of dots would not go into any memory."""
    corners = [Cell(x, y, x) for y in (-1024, 1023) for x in (-10_000_000, 10_000_000)]
    document.load(plan_of([new_piece(Part.RAIL, cell) for cell in corners]), None)
    settle(document)
    view = shown.view
    whole = view.plan_view.scene.index.extent()
    chunks = Chunks(view.plan_view.scene)
    chunks.use(size_at(1), themes.theme("light"))
    assert whole is not None
    assert sum(len(list(chunks.dots(whole, level))) for level in (-1024, 1023)) == len(corners)
    for cell in corners:
        view.plan_view.selection = frozenset({cell})
        view.show_levels(Which.CHOSEN)
        assert view.sight.stack.levels == (cell.y,)
        assert not view.grab().isNull()


def test_an_empty_plan_shows_no_level(document: Document, shown: DepthWindow) -> None:
    document.new()
    assert shown.view.sight.stack.levels == ()
    assert shown.view.cell_at(QPointF(100, 100)) is None
    assert not picture(shown.view).isNull()


def test_levels_as_in_the_world_are_one_cell_apart(shown: DepthWindow) -> None:
    while shown.closer.isEnabled():
        shown.closer.click()
    assert shown.view.sight.gap == 1
    assert "Levels 1 cell apart." in shown.looks.text()
    assert "Levels 1 cell apart." in shown.view.accessibleDescription()
