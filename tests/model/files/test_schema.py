"""The schema and the reader say the same of every file, but for what a schema cannot say.

Outside check: jsonschema's Draft202012Validator (JSON Schema 2020-12).
"""

from __future__ import annotations

import json
from pathlib import Path
from random import Random
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from model.files.plan_file import PlanFileError
from tests.model.files.bending import bent
from tests.model.files.documents import FULL, document, one_piece, read
from tests.model.files.test_reading import BAD_NAMES, GOOD_NAMES

ROOT = Path(__file__).parents[3]
SCHEMA = json.loads((ROOT / "resources" / "plan.schema.json").read_bytes())
VALIDATOR = Draft202012Validator(SCHEMA)

NOT_IN_A_SCHEMA = (
    "a cell of its own",
    "one route an arm",
    "slots can hold",
    "inside one another",
    "whole characters",
)
"""Beside doubled keys and the size of the file, which are gone once JSON is a value."""


def test_the_schema_is_a_schema() -> None:
    Draft202012Validator.check_schema(SCHEMA)


@pytest.mark.parametrize(
    "path", sorted((ROOT / "resources" / "examples").glob("*.plan.json")), ids=lambda path: path.name
)
def test_the_examples_keep_to_the_schema(path: Path) -> None:
    VALIDATOR.validate(json.loads(path.read_bytes()))


def test_reader_and_schema_agree_on_bent_plans() -> None:
    assert _count_accepted(1_200) > 100


@pytest.mark.slow
@pytest.mark.timeout(900)
def test_reader_and_schema_agree_on_many_bent_plans() -> None:
    assert _count_accepted(20_000) > 2_000


def _count_accepted(times: int) -> int:
    random = Random(times)
    return sum(_agreed_verdict(bent(FULL, random)) for _ in range(times))


@pytest.mark.parametrize(
    "value",
    [
        FULL,
        document(version=1.0),
        document(version=True),
        document(title="a" * 10_000),
        document(title="a" * 10_001),
        document(title="😀" * 10_000),
        document(arms=[{"name": str(n), "in": {"at": [0, 0, 0], "heading": "east"}} for n in range(1_001)]),
        document(routes=[{"from": str(n), "idle": "Mill"} for n in range(1_000)]),
        document(routes=[{"from": str(n), "idle": "Mill"} for n in range(1_001)]),
        document(waivers=[{"rule": "any,/\n"}]),
        one_piece("barrel", holds=[{"item": "salt", "count": 1728}]),
        one_piece("barrel", holds=[{"item": "salt", "count": 1729}]),
        one_piece("hopper", holds=[{"item": "salt", "count": 321}]),
        one_piece("auto-crafter", holds=[{"item": "salt", "count": 1}] * 10),
        one_piece("barrel", holds=[{"item": "waybill:", "count": 1}]),
        one_piece("barrel", holds=[{"item": "way,bill/", "count": 1.0}]),
        one_piece("barrel", holds=[{"item": "waybill:\n", "count": 1}]),
        *(document(routes=[{"from": "Quay", "idle": name}]) for name in [*GOOD_NAMES, *BAD_NAMES]),
        *(one_piece("hopper", holds=[{"item": name, "count": 1}]) for name in [*GOOD_NAMES, *BAD_NAMES]),
    ],
    ids=lambda value: ascii(value)[-40:],
)
def test_reader_and_schema_agree_on_single_cases(value: Any) -> None:
    _agreed_verdict(value)


def _agreed_verdict(value: Any) -> bool:
    """Whether both accept the value; fails where they do not agree."""
    valid = VALIDATOR.is_valid(value)
    refusal = _refusal(value)
    if refusal is None:
        assert valid, list(VALIDATOR.iter_errors(value))
    elif valid:
        assert any(words in refusal for words in NOT_IN_A_SCHEMA)
    return refusal is None


def _refusal(value: Any) -> str | None:
    try:
        read(value)
    except PlanFileError as error:
        return str(error)
    return None
