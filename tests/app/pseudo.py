"""A language that nobody speaks: each text of the catalogue in brackets and longer by a third.

What is shown outside the brackets was never looked up; what does not fit will not fit in another language.
"""

from __future__ import annotations

import re
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from math import ceil
from pathlib import Path
from xml.etree import ElementTree

from PySide6.QtCore import QCoreApplication, QLocale, QTranslator

from app import translation
from app.language import folder, use_language

LANGUAGE = "eo"
"""One for which Qt has no translation of its own texts."""
FORMS = 2
OPENS, CLOSES, FILLS = "⟦", "⟧", "·"
_END = re.compile(r"^(.*?)(…?)$", re.DOTALL)


def pseudo(text: str) -> str:
    """The text in that language; what asks for more ends with the same three dots."""
    match = _END.match(text)
    assert match is not None
    said, dots = match.groups()
    return f"{OPENS}{said}{FILLS * ceil(len(text) / 3)}{CLOSES}{dots}"


def write_pseudo(target: Path) -> None:
    """Make ``platelayer_eo.qm`` in a folder, of all texts in the catalogue."""
    tree = ElementTree.parse(folder() / "platelayer.ts")
    tree.getroot().set("language", LANGUAGE)
    for message in tree.getroot().iter("message"):
        source, translation = message.find("source"), message.find("translation")
        assert source is not None
        assert source.text
        assert translation is not None
        translation.clear()
        if message.get("numerus") == "yes":
            for _ in range(FORMS):
                ElementTree.SubElement(translation, "numerusform").text = pseudo(source.text)
        else:
            translation.text = pseudo(source.text)
    file = target / f"platelayer_{LANGUAGE}.ts"
    tree.write(file, "utf-8", xml_declaration=True)
    tool = Path(sys.executable).with_name("pyside6-lrelease")
    subprocess.run([tool, "-silent", file, "-qm", file.with_suffix(".qm")], check=True)


@contextmanager
def spoken_everywhere(application: QCoreApplication, place: Path) -> Iterator[None]:
    """The editor speaks it, and English again afterwards."""
    write_pseudo(place)
    before = set(application.findChildren(QTranslator))
    try:
        assert use_language(application, QLocale(LANGUAGE), place)
        yield
    finally:
        translation.install(None)
        for translator in set(application.findChildren(QTranslator)) - before:
            application.removeTranslator(translator)
            translator.deleteLater()


def outside(text: str) -> str:
    """What of a text stands outside all brackets."""
    kept, depth = [], 0
    for letter in text:
        depth += letter == OPENS
        if not depth:
            kept.append(letter)
        depth -= letter == CLOSES
    return "".join(kept)
