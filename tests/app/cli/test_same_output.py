"""The same input gives the same output: of every subcommand, under two hash seeds and two locales.

All subcommands over all examples run in one process each time, whose output and files are compared.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Final

import pytest

from app.cli import SUBCOMMANDS
from tests.app.cli.running import EXAMPLES, OBSERVED, ROOT

PLANS: Final = sorted(EXAMPLES.glob("*.plan.json"))
NETWORK: Final = EXAMPLES / "brinepan.network.json"
LOCALES: Final = ("C", "de_DE.UTF-8")
"""The other one writes numbers with a comma, where it is installed."""
SCRIPT: Final = """
import json, os, pathlib, sys
from PySide6.QtWidgets import QApplication
application = QApplication([])
from app import cli
printed = {}
for line in json.loads(sys.argv[1]):
    path = pathlib.Path("printed")
    with open(path, "w", encoding="utf-8") as sys.stdout:
        status = cli.run(line)
    printed[" ".join(line)] = (status, path.read_text(encoding="utf-8"))
    path.unlink()
sys.stdout = sys.__stdout__
files = {path.name: path.read_bytes().hex() for path in sorted(pathlib.Path().iterdir())}
print(json.dumps([printed, files]))
"""


def lines() -> list[list[str]]:
    """Each subcommand with all its forms over all examples; PDF is left out: it carries the time."""
    asked: list[list[str]] = []
    for plan in PLANS:
        arm = json.loads(plan.read_bytes())["arms"][0]["name"]
        out = f"{plan.name}-"
        forms = [
            ["check"], ["trace", "--from", arm], ["materials"], ["steps"], ["tests"],
            ["run", "--script", "script.json"], ["compare", str(PLANS[0])],
            ["order", "--seconds", "30", "-o", f"{out}order"], ["wire", "--depth", "0", "-o", f"{out}wire"],
        ]  # fmt: skip
        asked += [[form[0], str(plan), *form[1:], *more] for form in forms for more in ([], ["--json"])]
        asked.append(["turn", str(plan), "--quarter", "1", "--mirror", "-o", f"{out}turn"])
    asked += [["sheet", str(PLANS[0]), "-o", "sheet.svg"]]
    asked += [["diagnose", str(PLANS[-1]), "--observed", str(OBSERVED), "--json"]]
    asked += [["network", str(NETWORK), "--graphml", "net.graphml", *more] for more in ([], ["--json"])]
    return asked


def output(folder: Path, seed: str, locale: str, script: str = SCRIPT) -> str:
    folder.mkdir()
    (folder / "script.json").write_text('{"events": []}')
    environment = os.environ | {
        "PYTHONHASHSEED": seed, "LC_ALL": locale, "PYTHONPATH": str(ROOT), "QT_QPA_PLATFORM": "offscreen",
    }  # fmt: skip
    done = subprocess.run(
        [sys.executable, "-c", script, json.dumps(lines())],
        cwd=folder,
        env=environment,
        capture_output=True,
        text=True,
        check=True,
    )
    return done.stdout


@pytest.mark.timeout(600)
def test_two_hash_seeds_and_two_locales_print_and_write_the_same(tmp_path: Path) -> None:
    one, other = (
        json.loads(output(tmp_path / seed, seed, locale)) for seed, locale in zip("12", LOCALES, strict=True)
    )
    assert {line.split()[0] for line in one[0]} == set(SUBCOMMANDS)
    for kind in (0, 1):
        assert one[kind].keys() == other[kind].keys()
        assert [key for key in one[kind] if one[kind][key] != other[kind][key]] == []
    assert all(status in (0, 3) for status, _ in one[0].values())
    assert len(one[1]) > len(PLANS)


def test_an_output_that_hangs_on_the_hash_seed_is_seen(tmp_path: Path) -> None:
    """The control that must fail: a set of names printed as it comes."""
    script = "print({'Quay', 'Saltern', 'Mill', 'Fen', 'Beacon', 'Orchard', 'Tithe Barn'})"
    assert output(tmp_path / "1", "1", "C", script) != output(tmp_path / "2", "2", "C", script)
