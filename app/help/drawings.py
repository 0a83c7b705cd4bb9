"""Pages of the help on what the drawings show: ways of carts, ends of arms, signs, markers, modules."""

from __future__ import annotations

from typing import Final

from app.arm_ends import ENDS_WORDS
from app.canvas.preview import ENDINGS, LOADS, Words
from app.help.entries import Drawing, Entry, Line, Page
from app.panels.modules_words import PARAMETER_TIPS, facts_words, parameter_word, port_words
from app.sheet_signs import SIGN_WORDS
from app.tools.host import Ends
from app.translation import QT_TR_NOOP, tr
from model.severity import Severity
from model.wiring.modules.modules import load_module, module_names, module_parameters

MARKS: Final = {
    "": Words(
        "{severity}",
        QT_TR_NOOP("A finding of this weight is about the cell; of several, the number stands beside it."),
    ),
    "-aside": Words(
        QT_TR_NOOP("{severity}, set aside"),
        QT_TR_NOOP("Such a finding was set aside with a reason: dashed and empty."),
    ),
}
"""By what the name of the marker ends in."""
ON_SHEET: Final = QT_TR_NOOP("Explained on each page of the build sheet that bears it.")
ARM: Final = "level 64\n───\narm {name}: {ends}"
"""A straight with an arm at its west end, in the notation of drawings."""
ARM_ENDS: Final = {Ends.IN: "in 0 64 0 east", Ends.OUT: "out 0 64 0 west"}


def ways_page() -> Page:
    """How the ways of carts are drawn, and why they end."""
    about = tr("A test cart, a reader that is previewed and a chosen test run show the way of a cart.")
    loads = (_load_entry(called, words) for called, words in LOADS.items())
    endings = (
        Entry(f"way {outcome}", _title(tr(words.word, arm="Quay")), (Line("", tr(words.about)),))
        for outcome, words in ENDINGS.items()
    )
    return Page(tr("Ways of carts"), about, (*loads, *endings))


def _load_entry(called: bool, words: Words) -> Entry:
    load = "called" if called else "empty"
    title = tr("Way of a cart, {load}", load=tr(words.word))
    return Entry(f"way {load}", title, (Line("", tr(words.about)),), f"way-{load}")


def arms_page() -> Page:
    """The tags of arms."""
    about = tr("Where track enters and leaves the junction. Its tag points the way in which carts run.")
    return Page(tr("Arms and their tags"), about, tuple(_ends_entry(ends) for ends in ENDS_WORDS))


def _ends_entry(ends: Ends) -> Entry:
    words = ENDS_WORDS[ends]
    drawn = ", ".join(text for end, text in ARM_ENDS.items() if end in ends)
    drawing = Drawing(tr(words.word), ARM.format(name="Quay", ends=drawn))
    title, lines = tr("Arm, {ends}", ends=tr(words.spoken)), (Line("", f"{tr(words.about)}."),)
    return Entry(f"arm {words.word}", title, lines, drawings=(drawing,))


def signs_page() -> Page:
    """What is drawn beside the pieces themselves."""
    about = tr("The markers of findings on the plan, and the signs that the build sheet adds to the parts.")
    markers = (
        Entry(
            f"marker {severity}{tail}",
            _title(tr(marked.word, severity=tr(severity.value))),
            (Line("", tr(marked.about)),),
            f"{severity}{tail}",
        )
        for severity in Severity
        for tail, marked in MARKS.items()
    )
    signs = (
        Entry(f"sign {sign}", _title(tr(words)), (Line("", tr(ON_SHEET)),), f"sign-{sign}")
        for sign, words in SIGN_WORDS.items()
    )
    return Page(tr("Markers and signs"), about, (*markers, *signs))


def modules_page() -> Page:
    """The ready circuits, readers among them."""
    about = tr("Ready circuits to put down: readers, latches, inverters, drives.")
    return Page(tr("Modules"), about, tuple(module_entry(name) for name in module_names()))


def _title(words: str) -> str:
    """Words from within a sentence as a title."""
    return words[:1].upper() + words[1:]


def module_key(name: str) -> str:
    """The key of the entry of a module."""
    return f"module {name}"


def module_entry(name: str) -> Entry:
    """What the help says of a module."""
    module = load_module(name)
    ports = (port_words(number, port) for number, port in enumerate(module.ports, 1))
    parameters = (
        Line(parameter_word(each.name), f"{tr(PARAMETER_TIPS[each.name])}.")
        for each in module_parameters(name)
    )
    lines = (
        Line("", tr(module.about)),
        Line("", facts_words(module)),
        Line(tr("Ports"), "\n".join(ports)),
        *parameters,
    )
    return Entry(module_key(name), tr(module.title), lines, "module")
