"""Gathers the texts of the editor for translators, and makes what the editor reads of their work.

Run from the checkout: ``bash .run/translations``. Texts in the code are found by ``pyside6-lupdate``; those
in tables and in resources, which are looked up by what is in a variable, are written into a file first.
"""

from __future__ import annotations

import re
import subprocess
import sys
from collections.abc import Iterable, Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

sys.path.insert(0, str(Path(__file__).parents[1]))

from app.actions import ACTIONS, MENUS
from app.dialogs.wiring import ROWS
from app.help.rules import said_of
from app.names import catalogue_texts
from app.network.actions import NETWORK_ACTIONS, NETWORK_MENUS, ON_THE_MAP
from app.view_keys import PLAN_KEYS
from model.edits.words import counted_text, plain_word
from model.grid import Facing, Heading
from model.network.findings import NETWORK_RULES
from model.parts import Mode, Part
from model.plan import Side
from model.rules import RULES
from model.severity import Severity
from model.steps.words import plain_words
from model.track.shapes import Shape
from model.wiring.modules.modules import Module, load_module, module_names, module_parameters

BROKEN_JSON = (
    "Expecting ',' delimiter",
    "Expecting ':' delimiter",
    "Expecting property name enclosed in double quotes",
    "Expecting value",
    "Extra data",
    "Illegal trailing comma before end of array",
    "Illegal trailing comma before end of object",
    "Invalid \\escape",
    "Invalid \\uXXXX escape",
    "Invalid control character at",
    "Unterminated string starting at",
)
"""What Python says of broken JSON (its source, ``json``, 3.11 to 3.13)."""
ROOT = Path(__file__).parents[1]
FOLDER = ROOT / "resources" / "translations"
CATALOGUE = "platelayer.ts"
CODE = ("app", "model")
MARKED_COUNT = re.compile(r'QT_TR_NOOP\(\s*"([^"]*%n[^"]*)"')
NO_LINES = ("-locations", "none", "-no-obsolete", "-silent")


def texts_of_tables() -> Iterator[str]:
    """Texts of which the code has no more than the name of what holds them."""
    yield from (*MENUS, *NETWORK_MENUS)
    for entry in (*ACTIONS, *NETWORK_ACTIONS):
        yield from (*entry.menu.split("/"), entry.text, entry.tip)
    for title, rows in PLAN_KEYS.items():
        yield from (title, *(text for row in rows for text in row))
    yield from (text for row in ON_THE_MAP for text in row)
    for rule in (*RULES.values(), *NETWORK_RULES.values()):
        yield from (rule.title, said_of(rule), rule.why, rule.remedy)
    for module in map(load_module, module_names()):
        yield from (module.title, module.about, *_settings(module))
    yield from catalogue_texts()
    yield from (row.capitalize() for row in ROWS)
    yield from BROKEN_JSON
    yield from _words()


def _settings(module: Module) -> Iterator[str]:
    """What can be chosen of a module, and what its ports are called."""
    for parameter in module_parameters(module.name):
        yield from (parameter.name.capitalize(), *parameter.choices)
    for port in module.ports:
        yield from (port.name, port.kind)


def _words() -> Iterator[str]:
    """Parts, and the few words of which files know no more than one."""
    for part in Part:
        yield from (plain_word(part), counted_text(part))
        yield from (*plain_words(part, wooden=False), *plain_words(part, wooden=True))
    yield from (each.word for each in (*Heading, *Shape))
    yield from (each.value for each in (*Facing, *Mode, *Side, *Severity))


def gather(target: Path) -> None:
    """Write all texts into a ``.ts`` file; translations in it stay."""
    with TemporaryDirectory() as folder:
        table = Path(folder, "tables.py")
        code = sorted(path for name in CODE for path in (ROOT / name).rglob("*.py"))
        texts = dict.fromkeys((*_counted(code), *texts_of_tables()))
        table.write_text("".join(map(_line, texts)), "utf-8")
        # It comes first: a text is one of a count if it is so where it is met first.
        _run("pyside6-lupdate", *NO_LINES, str(table), *map(str, code), "-ts", str(target))


def _counted(code: Iterable[Path]) -> Iterator[str]:
    """Texts with a count that are only marked: the mark does not say so."""
    for path in code:
        yield from MARKED_COUNT.findall(path.read_text("utf-8"))


def _line(text: str) -> str:
    return f'tr({text!r}, "", 1)\n' if "%n" in text else f"tr({text!r})\n"


def _run(tool: str, *arguments: str) -> None:
    subprocess.run([Path(sys.executable).with_name(tool), *arguments], check=True)


def main() -> None:
    """The catalogue, and each language."""
    FOLDER.mkdir(exist_ok=True)
    for file in {FOLDER / CATALOGUE, *FOLDER.glob("platelayer_*.ts")}:
        gather(file)
    for file in FOLDER.glob("platelayer_*.ts"):
        _run("pyside6-lrelease", "-silent", str(file), "-qm", str(file.with_suffix(".qm")))


if __name__ == "__main__":
    main()
