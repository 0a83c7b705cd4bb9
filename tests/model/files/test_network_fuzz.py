"""Networks of every kind come back as they were; spoilt files give a message with file and place."""

from __future__ import annotations

from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from model.files.errors import PlanFileError
from model.files.network_file import network_bytes, parse_network
from model.network.network import Network
from tests.model.files.bending import SPOILERS
from tests.model.files.network_documents import FULL, read
from tests.model.network.strategies import NETWORKS

GOOD = network_bytes(read(FULL))
MAY_LOAD = {"wrong types", "bytes flipped", "cut"}
"""A network with a doubled key never loads, and tokens in any order make none."""


@settings(max_examples=80, deadline=None)
@given(NETWORKS)
def test_what_is_written_is_read_back(network: Network) -> None:
    written = network_bytes(network)
    again = parse_network(written, "again")
    assert again == network
    assert network_bytes(again) == written


@settings(max_examples=150, deadline=None)
@given(st.binary(max_size=200) | st.text(max_size=200).map(str.encode))
def test_any_bytes_are_read_or_refused(data: bytes) -> None:
    assert _loads(data) is False


@pytest.mark.parametrize("kind", SPOILERS)
def test_spoilt_files_are_read_or_refused(kind: str) -> None:
    random = Random(kind)
    loaded = [_loads(SPOILERS[kind](GOOD, random)) for _ in range(600)]
    assert not all(loaded)
    assert any(loaded) == (kind in MAY_LOAD)


def _loads(data: bytes) -> bool:
    """Whether it is read; then it is written to a fixed point, else the message names file and place."""
    try:
        network = parse_network(data, "spoilt.network.json")
    except PlanFileError as error:
        refusal = error
    else:
        assert parse_network(network_bytes(network), "again") == network
        return True
    assert str(refusal) == f"spoilt.network.json: {refusal.place}: expected {refusal.expected}"
    assert refusal.place
    assert refusal.expected
    return False
