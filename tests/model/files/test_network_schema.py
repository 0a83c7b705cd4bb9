"""The schema of networks and the reader say the same of every file, but for what a schema cannot say.

Outside check: jsonschema's Draft202012Validator (JSON Schema 2020-12).
"""

from __future__ import annotations

import json
from pathlib import Path
from random import Random
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from model.files.errors import PlanFileError
from model.files.network_file import network_bytes, parse_network
from tests.model.files.bending import bent
from tests.model.files.network_documents import FULL, document, one_junction, one_link, one_trip, read
from tests.model.files.test_reading import BAD_NAMES, GOOD_NAMES

ROOT = Path(__file__).parents[3]
VALIDATOR = Draft202012Validator(json.loads((ROOT / "resources" / "network.schema.json").read_bytes()))

NOT_IN_A_SCHEMA = (
    "one reader an arm",
    "null or one of the ways",
    "one pin a reader",
    "one way for two stations",
    "inside one another",
    "whole characters",
)


def test_the_schema_is_a_schema() -> None:
    Draft202012Validator.check_schema(VALIDATOR.schema)


@pytest.mark.parametrize("path", sorted((ROOT / "resources" / "examples").glob("*.network.json")), ids=str)
def test_the_examples_keep_to_the_schema(path: Path) -> None:
    VALIDATOR.validate(json.loads(path.read_bytes()))


def test_reader_and_schema_agree_on_bent_networks() -> None:
    random = Random(600)
    assert sum(_agreed_verdict(bent(FULL, random)) for _ in range(600)) > 60


@pytest.mark.parametrize(
    "value",
    [
        FULL,
        document(version=1.0),
        document(version=True),
        document(title="a" * 10_000),
        document(title="a" * 10_001),
        document(stations=[{"name": "Quay", "map": [0, 1e6]}]),
        document(stations=[{"name": "Quay", "map": [0, 1e7]}]),
        document(stations=[{"name": "Quay", "map": [0, 1, 2]}]),
        one_junction(readers=[{"from": "East", "ways": ["a", "a"]}]),
        one_junction(readers=[{"from": "East", "ways": ["a", "b"], "default": None}]),
        one_junction(readers=[{"from": "East", "ways": ["a", "b"], "default": ""}]),
        one_junction(plan="p" * 1_000),
        one_junction(plan="p" * 1_001),
        one_junction(plan="../plans/a,b.plan.json"),
        one_junction(plan="a\nb"),
        one_link(length=1.0),
        one_link(length=100_000_000),
        one_link(length=10**30),
        one_trip(per_week=10**9),
        one_trip(per_week=10**30),
        one_trip(per_week=True),
        document(pins=[{"reader": "Mill/East", "default": None}]),
        *(one_link(to=f"Mill/{name}") for name in [*GOOD_NAMES, *BAD_NAMES]),
        *(one_link(to=name) for name in [*GOOD_NAMES, *BAD_NAMES]),
        *(one_trip(to=name) for name in [*GOOD_NAMES, *BAD_NAMES]),
    ],
    ids=lambda value: ascii(value)[-40:],
)
def test_reader_and_schema_agree_on_single_cases(value: Any) -> None:
    _agreed_verdict(value)


def _agreed_verdict(value: Any) -> bool:
    """Whether both accept the value; fails where they do not agree, or what is read is not written so."""
    valid = VALIDATOR.is_valid(value)
    refusal = _refusal(value)
    if refusal is None:
        assert valid, list(VALIDATOR.iter_errors(value))
        written = network_bytes(read(value))
        assert parse_network(written, "again") == read(value)
        VALIDATOR.validate(json.loads(written))
    elif valid:
        assert any(words in refusal for words in NOT_IN_A_SCHEMA), refusal
    return refusal is None


def _refusal(value: Any) -> str | None:
    try:
        read(value)
    except PlanFileError as error:
        return str(error)
    return None
