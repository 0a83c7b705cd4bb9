"""Every export of the program, each into a folder."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Final

from app.export import export_sheet
from app.export.cards import export_cards
from app.export.timing_sheet import TimingSheet, timing_svg
from app.materials_csv import materials_csv
from app.panels.timing_trace import Trace
from model.dry_run.waveform import value_change_dump
from model.files.network_file import network_bytes
from model.files.network_graphml import graphml_bytes
from model.files.plan_file import plan_bytes
from model.files.writer import write_bytes
from model.grid import Cell
from model.parts import Part
from model.pieces import new_piece
from model.sheet import materials
from tests.app.export.sheets import example
from tests.app.windows import straight_plan
from tests.model.network.crossing import NETWORK, PLAN


@cache
def traces() -> list[Trace]:
    """Two probes of a run."""
    found = []
    for x, part in enumerate((Part.LEVER, Part.DUST)):
        trace = Trace(Cell(x, 64, 0), new_piece(part, Cell(x, 64, 0)), "")
        trace.extend([(0, 0), (10, 14), (30, 0)])
        found.append(trace)
    return found


def timing_drawing() -> bytes:
    return timing_svg(TimingSheet(traces(), {}, 0, 60, 60, "Mill"))


def waveforms() -> bytes:
    return value_change_dump([trace.wave for trace in traces()], 60, "Mill")


def sheet(ending: str) -> Callable[[Path], object]:
    return lambda folder: export_sheet(straight_plan(), folder / f"out.{ending}", steps=False)


def cards(ending: str) -> Callable[[Path], object]:
    return lambda folder: export_cards(NETWORK, PLAN, folder / f"cards.{ending}")


EXPORTS: Final[dict[str, Callable[[Path], object]]] = {
    **{f"sheet as {ending}": sheet(ending) for ending in ("pdf", "svg", "png")},
    **{f"cards as {ending}": cards(ending) for ending in ("pdf", "svg")},
    "timing diagram": lambda folder: write_bytes(folder / "line.svg", timing_drawing()),
    "waveforms": lambda folder: write_bytes(folder / "line.vcd", waveforms()),
    "materials": lambda folder: write_bytes(
        folder / "carry.csv", materials_csv(materials(example("fen-ring"))).encode()
    ),
    "graph": lambda folder: write_bytes(folder / "net.graphml", graphml_bytes(NETWORK, PLAN)),
    "plan": lambda folder: write_bytes(folder / "a.plan.json", plan_bytes(example("fen-ring"))),
    "network": lambda folder: write_bytes(folder / "a.network.json", network_bytes(NETWORK)),
}
