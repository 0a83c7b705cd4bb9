"""The help is made of the tables: whatever they name has its entry, and nothing else does."""

from __future__ import annotations

import subprocess
import sys
from inspect import cleandoc
from pathlib import Path

import pytest

from app.actions import ACTIONS, TOOLS, action
from app.help.entries import Page
from app.help.pages import entry, found, pages
from app.names import part_about, part_name
from app.network.actions import NETWORK_ACTIONS, NETWORK_TOOLS, ON_THE_MAP
from app.translation import install
from app.view_keys import PLAN_KEYS
from model.network.findings import NETWORK_RULES
from model.parts import TRAITS, Part
from model.rules import RULES
from model.severity import Severity
from model.sheet.levels import Sign
from model.text_drawing import plan_from_drawing
from model.track.carts import Outcome
from model.wiring.modules.modules import module_names


def expected() -> set[str]:
    """The keys of all that the tables name."""
    tools = set(TOOLS.values())
    map_tools = set(NETWORK_TOOLS.values())
    return {
        *(f"part {part}" for part in TRAITS),
        *(f"rule {rule}" for rule in RULES),
        *(f"network rule {rule}" for rule in NETWORK_RULES),
        *(f"tool {tool}" for tool in TOOLS),
        *(f"map tool {tool}" for tool in NETWORK_TOOLS),
        *(f"action {made.name}" for made in ACTIONS if made.name not in tools),
        *(f"map action {made.name}" for made in NETWORK_ACTIONS if made.name not in map_tools),
        *(f"keys {view}" for view in (*PLAN_KEYS, "On the map")),
        *(f"module {module}" for module in module_names()),
        *(f"arm {ends}" for ends in ("in", "out", "both")),
        *(f"way {way}" for way in ("empty", "called", *Outcome)),
        *(f"marker {severity}{tail}" for severity in Severity for tail in ("", "-aside")),
        *(f"sign {sign}" for sign in Sign if sign is not Sign.PIECE),
    }


def all_keys(shown: tuple[Page, ...]) -> list[str]:
    return [made.key for page in shown for made in page.entries]


def test_every_part_rule_tool_action_and_key_has_its_entry_and_nothing_else_does() -> None:
    keys = all_keys(pages())
    assert len(keys) == len(set(keys))
    assert set(keys) == expected()


def test_no_entry_is_without_text() -> None:
    for page in pages():
        assert page.title
        assert page.about.endswith(".")
        for made in page.entries:
            assert made.title.strip(), made.key
            assert made.lines, made.key
            for line in made.lines:
                assert line.text.strip(), made.key


def test_an_entry_says_what_its_table_says() -> None:
    rule = RULES["detector-arm"]
    said = entry("rule detector-arm")
    texts = [line.text for line in said.lines]
    assert rule.why in texts
    assert rule.remedy in texts
    assert cleandoc(rule.find.__doc__ or "").startswith(texts[0])
    assert [drawing.text for drawing in said.drawings] == list(rule.examples())
    assert entry("tool lay").lines[0].text == action("tool_lay").tip
    assert entry("part hopper").title == part_name(Part.HOPPER)
    assert entry("part hopper").lines[0].text == part_about(Part.HOPPER)
    assert [line.head for line in entry("keys On the map").lines] == [keys for keys, _ in ON_THE_MAP]


def test_what_the_rules_of_the_world_say_of_a_part_follows_from_the_catalogue() -> None:
    """A hopper has 5 slots and a barrel 27: common practice of the trade, from memory, no source."""
    assert any("5 slots" in line.text for line in entry("part hopper").lines)
    assert any("27 slots" in line.text for line in entry("part barrel").lines)
    assert not any("slots" in line.text for line in entry("part lamp").lines)
    assert any("up or down" in line.text for line in entry("part lever").lines)


@pytest.mark.parametrize("part", list(Part))
def test_every_part_says_what_it_does_in_one_sentence(part: Part) -> None:
    about = part_about(part)
    assert about.endswith(".")
    assert about[0].isupper()


def test_a_module_says_what_its_file_says() -> None:
    """A reader holds the line until the last cart of a train has passed: common practice, no source."""
    said = entry("module reader")
    assert said.lines[0].text.startswith("Takes one waybill out of a passing storage cart and holds the line")
    assert [line.text for line in said.lines if line.head == "Ports"] == [
        "1  carts, going east\n2  line: out, going east"
    ]
    assert {"Waybill", "Ring", "Line"} <= {line.head for line in said.lines}


def test_an_arm_is_drawn_with_the_ends_that_it_is_about() -> None:
    plans = {way: plan_from_drawing(entry(f"arm {way}").drawings[0].text) for way in ("in", "out", "both")}
    ends = {
        way: (plan.arms[0].enter is not None, plan.arms[0].leave is not None) for way, plan in plans.items()
    }
    assert ends == {"in": (True, False), "out": (False, True), "both": (True, True)}


def test_a_search_keeps_what_has_all_the_words() -> None:
    keys = all_keys(found("CURVES rail"))
    assert "rule cannot-curve" in keys or "part booster-rail" in keys
    assert "action about" not in keys
    assert found("no such thing anywhere") == ()
    assert all_keys(found("  ")) == all_keys(pages())


def test_the_help_speaks_the_language_of_the_user() -> None:
    install(lambda text, _comment, _n: f"» {text}")
    try:
        assert pages()[0].title == "» Tools"
    finally:
        install(None)


def test_the_pages_need_no_toolkit() -> None:
    code = "import sys, app.help.pages as p; p.pages(); sys.exit('PySide6' in sys.modules)"
    root = Path(__file__).parents[3]
    assert subprocess.run([sys.executable, "-c", code], cwd=root, check=False).returncode == 0
