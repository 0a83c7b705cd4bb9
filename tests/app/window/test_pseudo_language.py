"""Every screen in a language that nobody speaks: English was forgotten, and what lacks room is cut."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from itertools import islice
from pathlib import Path
from random import Random
from time import time

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PySide6.QtWidgets import QApplication

from app.commands.files import PLANS, FileKind
from app.commands.files import not_opened as said_of
from app.export.frame import language
from app.network.files import NETWORKS
from app.recovery import LeftOver
from app.settings import Recent
from app.speech.deeds import deed_words, done_verbs
from app.speech.gestures import gesture_words
from app.start import StartScreen
from app.tools.host import Ends, Ghost, ShownCart
from app.undo import Step
from model import wording
from model.edits import EditRefused, name_problem
from model.edits.names import item_problem, text_problem
from model.files.errors import PlanFileError
from model.grid import Cell, Heading
from model.wiring.proof.proof import prove
from tests.app.conftest import MakeWindow
from tests.app.every_screen import every_screen
from tests.app.network.conftest import MakeWindow as MakeNetwork
from tests.app.network.conftest import make_network  # noqa: F401
from tests.app.pseudo import outside, pseudo, spoken_everywhere
from tests.app.room_for_words import too_narrow
from tests.app.shown_texts import shown_texts
from tests.harness.readers import READERS
from tests.model.files.bending import SPOILERS
from tests.model.network.strategies import NETWORKS as ANY_NETWORK
from tests.model.network.test_edits import any_edit
from tests.model.wiring.readers import ReaderLine
from tests.strategies import EDITS, NEEDED, changes, plans

WORD = re.compile(r"[A-Za-z]{3,}")
KEYS = re.compile(
    r"\b(?:Ctrl|Shift|Alt|PgUp|PgDown|Del|Backspace|Return|Enter|Home|End|Esc|Space|Tab|F\d+)\b",
)
"""Keys are written by Qt, which has words of its own for them in each language."""
BY_QT = {"Cancel", "Close", "OK", "Scroll Left", "Scroll Right", "Press shortcut"}
"""Texts of Qt, translated by Qt where it knows the language."""
NAMES = re.compile(
    r"\b(?:Saltern Junction|Saltern|Quay|Mill|Fen|Salt|Reed|Eel|Small|Wye"  # of the plan and the network
    r"|waybill:Salt|ingot|nugget"  # items in a container, by the names that files have for them
    r"|Platelayer|PDF|SVG|PNG)\b"
)
"""What is called so in every language."""
GIVEN = {"A message that stays until it is put away.", "A loose end", "Working"}
"""What ``every_screen`` itself says in the place of a message."""


def is_looked_up(text: str) -> bool:
    """Whether no word stands outside the brackets but names, keys and what is not the program's."""
    rest = outside(text)
    return rest in BY_QT or rest in GIVEN or not WORD.search(KEYS.sub("", NAMES.sub("", rest)))


def test_every_text_is_looked_up_and_has_room(
    qapp: QApplication,
    tmp_path: Path,
    make_window: MakeWindow,
    make_network: MakeNetwork,  # noqa: F811
) -> None:
    forgotten: dict[str, str] = {}
    cut: dict[str, str] = {}
    with spoken_everywhere(qapp, tmp_path):
        for name, screen in every_screen(make_window(), make_network()):
            for where, text in shown_texts(screen):
                if not is_looked_up(text):
                    forgotten.setdefault(text, f"{name}: {where}")
            for what in too_narrow(screen):
                cut.setdefault(what, name)
    assert not forgotten, "\n".join(f"{where}: {text!r}" for text, where in forgotten.items())
    assert not cut, "\n".join(f"{name}: {what}" for what, name in cut.items())


def test_the_start_screen_is_looked_up_with_all_that_it_may_list(
    qapp: QApplication, tmp_path: Path, make_window: MakeWindow
) -> None:
    left_over = [
        LeftOver(Path("1.plan.json"), "", None, seconds) for seconds in (time(), time() - 86_400, 1e9)
    ]
    recent = [Recent("1/1.plan.json", 1e9, "Saltern", gravest, 1) for gravest in ("error", "", None)]
    with spoken_everywhere(qapp, tmp_path):
        screen = StartScreen(make_window(), recent, left_over, sketch_first=False)
        screen.left_over_rows[0].throw_button.click()
        forgotten = [
            text for _, text in shown_texts(screen) if not is_looked_up(text.replace("1.plan.json", ""))
        ]
        screen.deleteLater()
    assert forgotten == []


@pytest.fixture
def spoken() -> Iterator[None]:
    """Whatever is looked up comes in brackets; whether the catalogue has it, ``test_language`` tells."""
    wording.install(lambda text, comment, n: pseudo(wording.as_written(text, comment, n)))
    yield
    wording.install(None)


def has_no_english(text: str) -> bool:
    """Whether no word stands outside the brackets."""
    return not WORD.search(outside(text))


ONCE = settings(max_examples=10, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])


@pytest.mark.usefixtures("spoken")
@pytest.mark.parametrize("kind", EDITS)
@ONCE
@given(data=st.data())
def test_every_step_and_what_is_said_of_it_is_looked_up(kind: str, data: st.DataObject) -> None:
    plan = data.draw(plans().filter(lambda plan: kind not in NEEDED or NEEDED[kind](plan)))
    label = data.draw(changes(plan, kind)).label
    for said in (label, *(deed_words(step, label) for step in Step)):
        assert has_no_english(said), said


@pytest.mark.usefixtures("spoken")
@ONCE
@given(network=ANY_NETWORK, data=st.data())
def test_every_step_in_a_network_is_looked_up(network: object, data: st.DataObject) -> None:
    try:
        said = any_edit(network, data).label
    except EditRefused as refused:
        said = str(refused)
    except IndexError:
        return
    assert has_no_english(said), said


@pytest.mark.usefixtures("spoken")
def test_what_is_done_can_be_said_in_words_of_a_language_that_begins_with_the_verb() -> None:
    for verb, done in done_verbs().items():
        assert deed_words(Step.DONE, f"{verb} ⟦6 rails⟧") == f"{done} ⟦6 rails⟧"
        assert has_no_english(verb + done)


@pytest.mark.usefixtures("spoken")
@pytest.mark.parametrize("check", [name_problem, item_problem, text_problem])
@pytest.mark.parametrize("text", ["", "q" * 100, "q" * 20_000, "a,b", "waybill:", "a\nb"])
def test_why_a_name_is_refused_is_looked_up(check: Callable[[str], str | None], text: str) -> None:
    assert has_no_english(check(text) or "")


def refusals(reader: str) -> Iterator[PlanFileError]:
    """What is said of files that were spoilt in every way."""
    random = Random(reader)
    for spoiler in SPOILERS.values():
        for _ in range(150):
            try:
                READERS[reader].read(spoiler(READERS[reader].good, random))
            except PlanFileError as error:
                yield error


IN_FILES = re.compile(
    r'"[^"]*"'  # keys and formats
    r"|\b(?:UTF-8|JSON|NaN|Infinity|waybill|null|true|false)\b"
    r"|[a-z_]+(?:\[\d*\]|\.)[\w.\[\]]*"  # places
    r"|^[a-z_]+$"
)
"""What stands so in files, in every language."""


@pytest.mark.usefixtures("spoken")
@pytest.mark.parametrize("reader", READERS)
def test_what_is_said_of_a_file_that_cannot_be_read_is_looked_up(reader: str) -> None:
    for error in refusals(reader):
        for said in (error.expected, error.place):
            assert has_no_english(IN_FILES.sub("", said)), said


@pytest.mark.usefixtures("spoken")
@pytest.mark.parametrize("kind", [PLANS, NETWORKS], ids=lambda kind: kind.word)
def test_what_the_window_says_of_a_file_is_looked_up(kind: FileKind) -> None:
    path = Path("1.json")
    for error in (PlanFileError("1.json", "", "1"), OSError(2, "2")):
        said = said_of(path, error, kind)
        assert has_no_english(said.replace("1.json", "")), said
    assert all(has_no_english(wording.tr(text)) for text in kind.words)
    assert has_no_english(kind.filter.replace(f"(*{kind.ending})", ""))


@pytest.mark.usefixtures("spoken")
@pytest.mark.parametrize(
    "plan",
    [
        ReaderLine(chain=(2,) * 8).plan(),
        ReaderLine(count=21).plan(),
    ],
    ids=["a hold that ends too soon", "a wrong count"],
)
def test_what_a_proof_finds_is_looked_up(plan: object) -> None:
    *_, last = islice(prove(plan), 6)
    assert last.failed
    for said in last.failed:
        assert has_no_english(re.sub(r"\b(?:Quay|Mill|Fen|Salt)\b", "", said)), said


@pytest.mark.usefixtures("spoken")
@pytest.mark.parametrize("ends", [Ends.IN, Ends.OUT, Ends.BOTH])
def test_what_is_said_of_a_gesture_is_looked_up(ends: Ends) -> None:
    at, heading = Cell(0, 64, 0), Heading.EAST
    ghost = Ghost(
        crossing=(at, heading, ends),
        cart=ShownCart(at, heading, loaded=True),
        strengths={at: 3},
        crossed=frozenset({at}),
    )
    assert has_no_english(gesture_words(ghost)), gesture_words(ghost)


@pytest.mark.usefixtures("spoken")
def test_a_sheet_says_the_language_it_is_in() -> None:
    assert has_no_english(language())
    wording.install(None)
    assert language() == "en"
