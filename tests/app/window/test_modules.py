"""The modules beside the plan view: taking one in hand, setting it, putting it down, and its page."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtGui import QImage, QPainter
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit, QListWidgetItem

from app import theme as themes
from app.panels.choice_box import ChoiceBox
from app.panels.modules_list import NAME_ROLE
from app.panels.modules_panel import PAGE
from app.panels.modules_signs import paint_sign
from app.panels.modules_words import PARAMETER_TIPS, level_words, port_words
from app.panels.tray import MODULES_ROLE
from app.tools.module_hand import ModuleHand
from app.window import MainWindow
from model.files.plan_file import read_plan
from model.grid import ALL_TURNS, Cell, Facing, Turn
from model.parts import Part
from model.pieces import Held
from model.plan import plan_of
from model.wiring.modules.modules import Port, module_names, module_parameters
from tests.app.windows import example, settle, track


def tray_row(window: MainWindow) -> QListWidgetItem:
    tray = window.panels.tray
    (row,) = [tray.item(n) for n in range(tray.count()) if tray.item(n).data(MODULES_ROLE)]
    return row


def open_modules(window: MainWindow) -> None:
    tray = window.panels.tray
    QTest.mouseClick(
        tray.viewport(), Qt.MouseButton.LeftButton, pos=tray.visualItemRect(tray_row(window)).center()
    )


def choose(window: MainWindow, name: str) -> None:
    rows = window.panels.modules.list
    (item,) = [rows.item(n) for n in range(rows.count()) if rows.item(n).data(NAME_ROLE) == name]
    QTest.mouseClick(rows.viewport(), Qt.MouseButton.LeftButton, pos=rows.visualItemRect(item).center())


def middle_of(window: MainWindow, x: int, z: int) -> QPoint:
    view = window.view.navigator.view
    left, top = view.corner(x, z)
    return QPoint(left + view.scale // 2, top + view.scale // 2)


def test_the_tray_opens_the_modules_and_esc_brings_the_parts_back(window: MainWindow) -> None:
    open_modules(window)
    assert window.view.tool == "module"
    assert window.panels.modules.isVisible()
    assert not window.panels.tray.isVisible()
    window.view.setFocus()
    QTest.keyClick(window.view, Qt.Key.Key_Escape)
    assert window.view.tool == "select"
    assert window.panels.tray.isVisible()
    assert not window.panels.modules.isVisible()


def test_the_button_brings_the_parts_back_too(window: MainWindow) -> None:
    window.bound["tool_module"].trigger()
    assert window.panels.modules.isVisible()
    window.panels.modules.back.click()
    assert window.view.tool == "select"
    assert window.panels.tray.hasFocus()


def test_walking_over_the_row_does_not_open_it_but_enter_does(window: MainWindow) -> None:
    tray = window.panels.tray
    tray.setFocus()
    tray.setCurrentItem(tray_row(window))
    assert window.view.tool != "module"
    QTest.keyClick(tray, Qt.Key.Key_Return)
    assert window.view.tool == "module"
    assert window.panels.modules.list.hasFocus()


def test_a_module_is_chosen_turned_put_down_and_taken_back(window: MainWindow) -> None:
    open_modules(window)
    choose(window, "latch")
    assert window.view.hasFocus()
    QTest.keyClick(window.view, Qt.Key.Key_R)
    assert "set: in, going south" in window.panels.modules.ports.text()
    cell = window.view.cursor
    QTest.mouseClick(window.view, Qt.MouseButton.LeftButton, pos=middle_of(window, cell.x, cell.z))
    assert window.document.undo_stack.undoText() == "Place module latch"
    assert len(window.document.plan.pieces) == len(ModuleHand("latch").module(cell).pieces)
    window.bound["undo"].trigger()
    assert len(window.document.plan.pieces) == 0
    settle(window)


def test_the_waybill_and_the_ring_are_set_in_the_panel(window: MainWindow) -> None:
    window.document.load(plan_of(track(*((x, 0) for x in range(-7, 6)))), None)
    open_modules(window)
    choose(window, "reader")
    fields = window.panels.modules.settings.fields
    waybill, ring = fields["waybill"], fields["ring"]
    assert isinstance(waybill, QLineEdit)
    assert isinstance(ring, ChoiceBox)
    waybill.setFocus()
    waybill.selectAll()
    QTest.keyClicks(waybill, "Tithe Barn")
    ring.setCurrentIndex(1)
    assert dict(window.view.module_hand.parameters) == {"waybill": "Tithe Barn", "ring": ring.itemText(1)}
    QTest.mouseClick(window.view, Qt.MouseButton.LeftButton, pos=middle_of(window, 0, 0))
    hopper = window.document.plan.pieces.get(Cell(0, 63, 0))
    assert hopper is not None
    assert hopper.holds == (Held("waybill:Tithe Barn", 22),)
    settle(window)


def test_what_can_be_no_name_is_not_taken_while_it_is_typed(window: MainWindow) -> None:
    open_modules(window)
    choose(window, "reader")
    waybill = window.panels.modules.settings.fields["waybill"]
    assert isinstance(waybill, QLineEdit)
    waybill.clear()
    QTest.keyClicks(waybill, "Fen")
    QTest.keyClicks(waybill, ",")
    assert window.view.module_hand.parameters["waybill"] == "Fen"
    assert waybill.text() == "Fen,"
    assert window.panels.status.here.text() == "A name takes no comma and no slash."
    QTest.keyClick(waybill, Qt.Key.Key_Backspace)
    assert window.panels.status.here.text() != "A name takes no comma and no slash."
    QTest.keyClicks(waybill, "/")
    QTest.keyClick(waybill, Qt.Key.Key_Return)
    assert waybill.text() == "Fen", "what stands there is what will be put down"
    assert window.view.hasFocus()


def test_enter_leads_from_the_list_to_the_plan(window: MainWindow) -> None:
    open_modules(window)
    rows = window.panels.modules.list
    rows.setFocus()
    before = window.view.module_hand.name
    QTest.keyClick(rows, Qt.Key.Key_Up)
    assert window.view.module_hand.name != before
    assert rows.hasFocus()
    QTest.keyClick(rows, Qt.Key.Key_Return)
    assert window.view.hasFocus()


def test_whatever_can_be_set_says_what_it_is(window: MainWindow) -> None:
    open_modules(window)
    settings = window.panels.modules.settings
    for name in module_names():
        choose(window, name)
        assert list(settings.fields) == [parameter.name for parameter in module_parameters(name)]
        assert all(field.toolTip() == PARAMETER_TIPS[key] for key, field in settings.fields.items())


@pytest.mark.parametrize(("width", "height"), [(1440, 900), (1279, 720), (1100, 700), (1024, 640)])
def test_beside_the_modules_nothing_is_cut_or_covered(window: MainWindow, width: int, height: int) -> None:
    window.document.load(read_plan(example("saltern-junction")), None)
    window.resize(width, height)
    window.bound["tool_module"].trigger()
    settle(window)
    panels = window.panels
    assert (window.width(), window.height()) == (width, height)
    assert panels.modules.width() == 204
    assert panels.orientations.is_folded is (width < 1279)
    assert window.view.width() > 300
    if panels.orientations.is_folded:
        assert all(count.width() >= count.sizeHint().width() for count in panels.orientations.counts)
    parts = [panels.modules, panels.levels, window.view, panels.orientations, window.side, panels.status]
    places = [part.rect().translated(part.mapTo(window, QPoint(0, 0))) for part in parts]
    for one, place in enumerate(places):
        assert window.rect().contains(place)
        assert not any(place.intersects(other) for other in places[one + 1 :])


def test_the_picture_says_its_ports(window: MainWindow) -> None:
    window.bound["tool_module"].trigger()
    choose(window, "merge-target")
    said = window.panels.modules.picture.accessibleName()
    assert said.startswith("Merge at a block. Ports: 1  one: in, going east;")
    assert said.endswith("4  line: out, going east.")


@pytest.mark.parametrize("turn", ALL_TURNS[::3], ids=lambda turn: str(turn.number))
def test_every_picture_has_all_levels_and_fits(window: MainWindow, turn: Turn) -> None:
    panel = window.panels.modules
    seen: set[bytes] = set()
    for name in module_names():
        hand = ModuleHand(name).turned(turn)
        panel.show_hand(hand)
        module = hand.module(Cell(0, 0, 0))
        levels = {cell.y for cell in module.cells} | {port.at.y for port in module.ports}
        picture = panel.picture
        assert picture.width() <= PAGE
        assert picture.height() % len(levels) == 0
        image = picture.grab().toImage()
        seen.add(bytes(image.constBits()))  # bits that are the image's: it must outlive the look
        assert panel.facts.text().startswith(f"Delay {module.delay} ticks, ")
    assert len(seen) == len(module_names())


def test_no_two_modules_have_the_same_sign(qapp: QApplication) -> None:
    pictures: set[bytes] = set()
    for name in module_names():
        image = QImage(QSize(24, 24), QImage.Format.Format_RGB32)
        image.fill(themes.current().paper)
        painter = QPainter(image)
        paint_sign(painter, QRect(0, 0, 24, 24), name, themes.current())
        painter.end()
        pictures.add(bytes(image.constBits()))
    assert len(pictures) == len(module_names())


def test_words() -> None:
    assert [level_words(rise) for rise in (2, 0, -1)] == ["2 above", "level shown", "1 below"]
    assert (
        port_words(2, Port("drive", "out", Cell(0, 1, 0), Facing.UP)) == "2  drive: out, into the block above"
    )
    assert port_words(1, Port("carts", "track", Cell(0, 1, 0), Facing.EAST)) == "1  carts, going east"


def test_the_hopper_of_a_reader_is_drawn_where_it_stands() -> None:
    module = ModuleHand("reader").module(Cell(5, 64, 5))
    assert Part.HOPPER in {piece.part for piece in module.pieces if piece.at == Cell(5, 63, 5)}
    assert all(piece.at not in module.cells for piece in ModuleHand("reader").track(Cell(5, 64, 5)))
