"""The files of the modules, and what is made of them."""

from __future__ import annotations

from importlib.resources import files

import pytest

from model.edits import EditRefused
from model.files.plan_file import plan_bytes, read_plan
from model.grid import ALL_TURNS, Cell, Facing, Turn
from model.parts import Part
from model.pieces import Held, Piece
from model.plan import Details, Route, plan_of
from model.rules import Severity, check
from model.wiring.modules import modules
from model.wiring.modules.file import ModuleDoc
from model.wiring.modules.modules import Port, load_module, module_names, module_parameters, trial_plan
from tests.model.wiring.module_bench import CASES, faces, unsupported

REPEATER = Piece(Part.REPEATER, Cell(4, 0, 2), Facing.EAST)


@pytest.mark.parametrize("name", module_names())
def test_its_file_is_as_the_program_writes_it(name: str) -> None:
    path = files("resources").joinpath("modules", f"{name}.plan.json")
    assert plan_bytes(read_plan(str(path))) == path.read_bytes()


@pytest.mark.parametrize("name", module_names())
def test_it_says_what_it_is(name: str) -> None:
    module = load_module(name)
    assert module.name == name
    assert module.title
    assert module.about.endswith(".")
    assert {port.kind for port in module.ports} >= {"in", "out"} or name == "reader"
    assert len({port.name for port in module.ports}) == len(module.ports)


@pytest.mark.parametrize(("name", "parameters"), CASES)
def test_it_stands_by_itself_and_meets_the_rest_at_its_ports(name: str, parameters: dict[str, str]) -> None:
    module = load_module(name, **parameters)
    assert unsupported(module) == []
    assert module.cells.isdisjoint(port.at for port in module.ports)
    ahead = {port.at.beside(port.facing) for port in module.ports if port.kind == "in"}
    assert ahead <= module.cells
    assert all(faces(module, port) for port in module.ports if port.kind == "out")


@pytest.mark.parametrize(("name", "parameters"), CASES)
def test_nothing_about_it_is_needed_but_its_ports(name: str, parameters: dict[str, str]) -> None:
    """What stands in the file only to try the module is not in the module."""
    module, plan = load_module(name, **parameters), trial_plan(name, **parameters)
    about = {piece.at for piece in plan.pieces} - module.cells
    assert {port.at for port in module.ports} <= about
    assert all(plan.pieces.get(piece.at) == piece for piece in module.pieces)
    assert not {plan.pieces.part_at(cell) for cell in about} & {Part.TORCH, Part.REPEATER, Part.COMPARATOR}


def test_footprint_and_depth() -> None:
    latch = load_module("latch")
    assert len(latch.footprint) == 9
    assert latch.depth == 2
    assert load_module("torch-stack", torches=3).depth == 6
    assert load_module("torch-stack").footprint == {(0, 0)}


@pytest.mark.parametrize("turn", ALL_TURNS)
def test_turned_about_its_origin(turn: Turn) -> None:
    module = load_module("latch")
    there = module.turned(turn, Cell(10, 5, -3))
    for before, after in zip(module.pieces, there.pieces, strict=True):
        assert after.at == turn.cell(before.at).moved(10, 5, -3)
        assert after.facing is turn.facing(before.facing)
    assert there.port("reset").at == turn.cell(module.port("reset").at).moved(10, 5, -3)
    assert there.turned(turn.inverse, module.origin) == module


def test_a_port_that_is_not_there() -> None:
    with pytest.raises(KeyError):
        load_module("latch").port("line")


@pytest.mark.parametrize("call", [load_module, trial_plan])
def test_unknown_modules_and_parameters(call: object) -> None:
    assert callable(call)
    with pytest.raises(KeyError, match="no-such"):
        call("no-such")
    with pytest.raises(KeyError, match="hold"):
        call("latch", hold=30)
    with pytest.raises(EditRefused, match=r"4 is no choice for torches .*: it can be 2 or 3\."):
        call("torch-stack", torches=4)


def test_parameters_offer_their_choices() -> None:
    (hold,) = module_parameters("off-delay")
    assert (hold.name, hold.first) == ("hold", "66")
    assert hold.choices[0] == "34"
    assert hold.first in hold.choices
    assert module_parameters("inverter-flat") == ()
    assert load_module("off-delay") == load_module("off-delay", hold=hold.first)


@pytest.fixture
def salt_reader(monkeypatch: pytest.MonkeyPatch) -> None:
    """A made-up module that holds and wants the waybill Salt."""
    held = (Held("waybill:Salt", 22), Held("ingot", 1))
    hopper = Piece(Part.HOPPER, Cell(4, 0, 3), Facing.DOWN, holds=held)
    lamp = Piece(Part.LAMP, Cell(5, 0, 2))
    details = Details(routes=(Route("Mill", "Fen", "Quay", "Salt"), Route("Fen", "Mill", "Quay", "Pans")))
    plan = plan_of([REPEATER, hopper, lamp], details)
    line = Port("line", "out", Cell(5, 0, 2), Facing.EAST)
    doc = ModuleDoc("made-up", "It.", (line,), 2, Cell(4, 0, 2), (lamp.at,), {"waybill": "Salt"})
    monkeypatch.setattr(modules, "read_module", lambda _: (plan, doc))


@pytest.mark.usefixtures("salt_reader")
def test_the_waybill_takes_its_name_everywhere() -> None:
    module = load_module("made-up", waybill="Tithe")
    assert [piece.holds for piece in module.pieces] == [(), (Held("waybill:Tithe", 22), Held("ingot", 1))]
    assert [route.waybill for route in trial_plan("made-up", waybill="Tithe").routes] == ["Tithe", "Pans"]
    assert module.turned(Turn(1), Cell(0, 0, 0)).pieces[0].at == Cell(0, 0, 0)
    with pytest.raises(EditRefused, match="comma"):
        load_module("made-up", waybill="Salt, Fen")


@pytest.mark.parametrize(("name", "parameters"), CASES)
def test_a_check_of_its_file_finds_no_error(name: str, parameters: dict[str, str]) -> None:
    """Each file opens in the editor as a plan that could be built."""
    findings = check(trial_plan(name, **parameters)).findings
    assert [finding.message for finding in findings if finding.severity is Severity.ERROR] == []
