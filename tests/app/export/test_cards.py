"""Departure cards and the list of readers, read back from the PDF with pypdf, pdfplumber and pypdfium2."""

from __future__ import annotations

import re
from functools import cache
from io import BytesIO
from itertools import pairwise
from pathlib import Path
from tempfile import TemporaryDirectory
from xml.etree import ElementTree

import msgspec
import numpy as np
import pypdfium2
import pytest
from pypdf import PdfReader

from app.canvas.symbols.lettering import em_for, width
from app.export.card_rows import NAME_ROOM, by_lines, empty_words, labels_of, name_lines, time_words
from app.export.cards import export_cards
from app.export.pencil import SECTION, TEXT
from model.files.writer import WriteError
from model.network.cards import EmptyRun
from model.network.network import JunctionSpec, Link, Network, ReaderSpec, Station, Trip
from model.network.result import NetworkPlan, Planned, TripPlan
from model.network.riding import Ride, Stop
from tests.app.export.sheets import MM, pages, strokes, texts, width_mm
from tests.app.export.test_pages import HOSTILE, SVG, TAGS
from tests.model.network.crossing import NETWORK, PLAN

pytestmark = pytest.mark.usefixtures("qapp")

A4 = (595.2756, 841.8898)
"""Points of A4 upright: ISO 216, 210 × 297 mm."""


def cards_pdf(folder: Path, network: Network = NETWORK, plan: NetworkPlan = PLAN) -> bytes:
    path = folder / "cards.pdf"
    assert export_cards(network, plan, path) == [str(path)]
    return path.read_bytes()


@cache
def crossing_pdf() -> bytes:
    """The cards of the small network, made once."""
    with TemporaryDirectory() as folder:
        return cards_pdf(Path(folder))


def line_of(text: str, start: str) -> str:
    return next(line for line in text.splitlines() if line.startswith(start))


def test_all_pages_are_a4_and_nothing_lies_beyond_them() -> None:
    data = crossing_pdf()
    sizes = [page.mediabox[2:] for page in PdfReader(BytesIO(data)).pages]
    assert sizes == 3 * [pytest.approx(A4, abs=0.6)]
    for page in pages(data):
        for shape in (*strokes(page), *page.chars):
            assert shape["x0"] >= -0.1
            assert shape["x1"] <= A4[0] + 0.1
            assert -0.1 <= shape["top"] <= shape["bottom"] <= A4[1] + 0.1


def test_a_card_says_where_to_what_to_take_and_how_long() -> None:
    """160 and 104 cells at 8 a second."""
    text = texts(crossing_pdf())[0]
    assert line_of(text, "Fen") == "Fen Salt Reed 20 s"
    assert line_of(text, "Mill nothing") == "Mill nothing 13 s"
    assert "A cart without a waybill goes to Mill." in text
    assert "Crossing" in text


def test_two_cards_lie_on_a_page_in_the_order_of_the_file() -> None:
    first, second, _ = texts(crossing_pdf())
    assert first.index("Quay") < first.index("No trip from here is planned.")
    assert "No track leads away from here." in first
    assert line_of(second, "Quay") == "Quay no way leads there"


def test_marks_show_where_to_cut_the_page_into_two_of_a5() -> None:
    """A5 is 148 × 210 mm, which is half of A4: ISO 216."""
    page = pages(crossing_pdf())[0]
    edge = [shape for shape in strokes(page) if shape["x0"] < 0.1 or shape["x1"] > A4[0] - 0.1]
    assert len(edge) == 2
    for shape in edge:
        assert shape["top"] == pytest.approx(148.5 * MM, abs=0.3)
        assert shape["x1"] - shape["x0"] == pytest.approx(8 * MM, abs=0.3)
    frames = [shape for shape in page.rects if width_mm(shape) == 0.7]
    assert [round(frame["height"] / MM, 1) for frame in frames] == [128.5, 128.5]
    assert all(frame["bottom"] < 148.5 * MM or frame["top"] > 148.5 * MM for frame in frames)


def test_lines_are_wide_or_half_as_wide_and_nothing_has_a_hue() -> None:
    """Two widths of 2:1, ISO 128, from memory; hairlines beside them."""
    data = crossing_pdf()
    for page in pages(data)[:2]:
        assert {width_mm(shape) for shape in strokes(page)} >= {0.7, 0.35}
    for page in pypdfium2.PdfDocument(data):
        picture = np.asarray(page.render(scale=1).to_pil().convert("RGB")).astype(int)
        assert np.abs(picture.max(axis=2) - picture.min(axis=2)).max() == 0


def test_the_list_of_readers_says_what_to_write_on_each_sign(tmp_path: Path) -> None:
    readers = {**PLAN.readers, "Halt/Gate": Planned("Fen", None)}
    text = texts(cards_pdf(tmp_path, plan=msgspec.structs.replace(PLAN, readers=readers)))[-1]
    assert line_of(text, "Gate") == "Gate Town Pans Salt Fields"
    assert line_of(text, "Halt") == "Halt Gate Fen takes nothing —"
    assert "List of readers" in text
    assert "Build sheet" not in text
    assert "3 / 3" in text


def test_a_network_without_readers_and_stations_is_one_page_that_says_so(tmp_path: Path) -> None:
    nothing = NetworkPlan(0, 0, True, {}, ())
    (text,) = texts(cards_pdf(tmp_path, Network(), nothing))
    assert "The network has no readers." in text
    assert "Network without a title" in text


def many(stations: int, waybills: int) -> tuple[Network, NetworkPlan]:
    """Trips from Quay to that many others, each with so many waybills."""
    names = [f"Stop {number:03}" for number in range(stations)]
    network = Network(
        stations=(Station("Quay"),),
        links=(Link("Quay", "Gate/In", 8),),
        trips=tuple(Trip("Quay", name, 1) for name in names),
    )
    carried = tuple(f"Waybill {number}" for number in range(waybills))
    trips = tuple(TripPlan("Quay", name, (), carried, 8, (0,)) for name in names)
    return network, NetworkPlan(0, 0, True, {}, trips)


@pytest.mark.parametrize(("stations", "waybills"), [(22, 1), (6, 9), (2, 60)])
def test_a_long_card_goes_on_and_loses_nothing(tmp_path: Path, stations: int, waybills: int) -> None:
    data = cards_pdf(tmp_path, *many(stations, waybills))
    text = "\n".join(texts(data)[:-1])
    assert re.findall(r"Stop \d{3}(?!, more)", text) == [f"Stop {number:03}" for number in range(stations)]
    assert len(re.findall(r"Waybill \d+", text)) == stations * waybills
    counts = [tuple(map(int, found)) for found in re.findall(r"card (\d+) of (\d+)", text)]
    assert counts == [(number, len(counts)) for number in range(1, len(counts) + 1)]
    assert len(counts) > 1
    assert text.count("take along") == len(counts), "the head stands on each card"
    for page in pages(data)[:-1]:
        frames = [shape for shape in page.rects if width_mm(shape) == 0.7]
        for word in page.extract_words():
            assert any(frame["top"] < word["top"] and word["bottom"] < frame["bottom"] for frame in frames), (
                word["text"]
            )


def test_rows_keep_clear_of_what_is_said_of_empty_carts(tmp_path: Path) -> None:
    """Three sentences stand at the foot, and a line above them."""
    network, plan = many(22, 1)
    network = network.replace(links=(*network.links, *(Link("Quay", "Gate/In", 8),) * 2))
    page = pages(cards_pdf(tmp_path, network, plan))[0]
    lines = [
        shape
        for shape in strokes(page)
        if shape["x1"] - shape["x0"] > 100 * MM and shape["top"] < A4[1] / 2 and not shape["height"]
    ]
    rows = [line["top"] for line in lines if width_mm(line) == 0.18]
    (above,) = [line["top"] for line in lines if width_mm(line) == 0.35]
    foot = min(word["top"] for word in page.extract_words() if word["text"] == "further.")
    assert len(rows) > 5
    assert max(rows) < above < foot


def test_many_readers_run_over_pages_with_the_head_on_each(tmp_path: Path) -> None:
    junctions = tuple(
        JunctionSpec(f"J{number:02}", readers=(ReaderSpec("In", ("East", "West")),)) for number in range(60)
    )
    readers = {f"{junction.name}/In": Planned("East", "Salt") for junction in junctions}
    found = texts(cards_pdf(tmp_path, Network(junctions=junctions), NetworkPlan(0, 1, True, readers, ())))
    assert len(found) == 3
    assert all("with waybill" in text for text in found)
    assert re.findall(r"J\d\d", "\n".join(found)) == [junction.name for junction in junctions]
    assert "List of readers · part 2 of 3" in found[1]


def test_a_station_with_several_tracks_says_which_to_take(tmp_path: Path) -> None:
    network = NETWORK.replace(links=(*NETWORK.links, *(Link("Quay", "Mill", 500),) * 4))
    text = texts(cards_pdf(tmp_path, network))[0]
    assert line_of(text, "Fen") == "Fen Salt Reed Gate/Town 20 s"
    assert "set out towards" in text
    assert "Towards Gate/Town, a cart without a waybill goes to Mill." in text
    assert "And 3 more tracks lead away from here." in text


@pytest.mark.parametrize(
    ("run", "words"),
    [
        (("Mill", Stop.STATION), "A cart without a waybill goes to Mill."),
        (("Ring/In", Stop.LOOP), "A cart without a waybill circles and arrives nowhere."),
        (("Ring/In", Stop.NO_WAY), "A cart without a waybill comes to Ring/In, and no further."),
    ],
)
def test_it_is_told_where_empty_carts_go(run: tuple[str, Stop], words: str) -> None:
    assert empty_words(EmptyRun(None, Ride((0,), *run, (), ()))) == words


@pytest.mark.parametrize(
    ("seconds", "words"),
    [
        (0, "0 s"),
        (12.125, "13 s"),
        (59.5, "1 min"),
        (60, "1 min"),
        (125, "2 min 5 s"),
        (3599.5, "1 h"),
        (3841, "1 h 5 min"),
        (3_600_000, "1,000 h"),
    ],
)
def test_times_are_rounded_up(seconds: float, words: str) -> None:
    assert time_words(seconds) == words


@pytest.mark.parametrize(
    "name", ["Mill", "Orchard Road beyond the second mill", "Q" * 80, "Tithe " + "m" * 74]
)
def test_no_letter_of_a_name_is_cut_off_on_paper(name: str) -> None:
    """80 letters are the most that a name has."""
    lines = name_lines(name)
    size = em_for(SECTION if len(lines) == 1 else TEXT)
    assert "".join(lines).replace(" ", "") == name.replace(" ", "")
    assert all(width(line, size, True) <= NAME_ROOM for line in lines)
    assert "".join(by_lines(name)).replace(" ", "") == name.replace(" ", "")
    assert width("Q" * 80, em_for(TEXT), True) > 2 * NAME_ROOM, "the control: it does need several lines"


def test_a_waybill_that_is_taken_twice_running_is_one_label() -> None:
    labels = list(labels_of(("Salt", "Salt", "Reed", "Salt"), 100.0))
    assert [label.text for label in labels] == ["2 × Salt", "Reed", "Salt"]


def test_labels_keep_to_their_room_and_apart() -> None:
    waybills = (*(f"Waybill {number}" for number in range(20)), "x" * 300)
    labels = list(labels_of(waybills, 80.0))
    assert all(label.left + label.wide <= 80.001 for label in labels)
    for one, other in pairwise(labels):
        assert other.line == one.line + 1 or other.left >= one.left + one.wide + 1
    assert {label.line for label in labels} == set(range(labels[-1].line + 1))


@pytest.mark.parametrize("name", HOSTILE)
def test_hostile_names_are_text(tmp_path: Path, name: str) -> None:
    network = NETWORK.replace(title=name, stations=(Station(name),), trips=(Trip(name, name, 1),))
    plan = msgspec.structs.replace(PLAN, trips=(TripPlan(name, name, (), (name,), 8, (0,)),))
    shown = "".join(char if char.isprintable() else " " for char in name).replace(" ", "")
    for file in export_cards(network, plan, tmp_path / "cards.svg"):
        tree = ElementTree.parse(file).getroot()
        assert {element.tag.removeprefix(SVG) for element in tree.iter()} <= TAGS
        said = "".join(element.text or "" for element in tree.iter(f"{SVG}text")).replace(" ", "")
        assert shown[:8] in said


def test_svg_and_png_are_a_file_a_page(tmp_path: Path) -> None:
    for ending in ("svg", "png"):
        written = export_cards(NETWORK, PLAN, tmp_path / f"cards.{ending}")
        assert [Path(file).name for file in written] == [f"cards-0{number}.{ending}" for number in (1, 2, 3)]
        assert all(Path(file).stat().st_size > 1_000 for file in written)


def test_another_ending_is_refused_and_a_folder_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="must end in"):
        export_cards(NETWORK, PLAN, tmp_path / "cards.doc")
    with pytest.raises(WriteError):
        export_cards(NETWORK, PLAN, tmp_path / "nowhere" / "cards.pdf")
    assert not list(tmp_path.iterdir())
