"""Networks of every kind come back as they were."""

from __future__ import annotations

from hypothesis import given, settings

from model.files.network_file import network_bytes, parse_network
from model.network.network import Network
from tests.model.network.strategies import NETWORKS


@settings(max_examples=80, deadline=None)
@given(NETWORKS)
def test_what_is_written_is_read_back(network: Network) -> None:
    written = network_bytes(network)
    again = parse_network(written, "again")
    assert again == network
    assert network_bytes(again) == written
