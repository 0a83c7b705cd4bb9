"""The arms of junctions, and how they are called in the window."""

from __future__ import annotations

from app.translation import tr
from model.network.network import JunctionSpec, Network, end_of, junction_and_arm


def arms_of(network: Network, junction: JunctionSpec) -> list[str]:
    """Every arm that the junction, its readers, or a link names; of one with a plan those of the plan."""
    if junction.arms:
        return [arm.name for arm in junction.arms]
    found = [arm for reader in junction.readers for arm in (reader.start, *reader.ways)]
    before = end_of(junction.name, "")
    for link in network.links:
        found += [end.removeprefix(before) for end in (link.start, link.end) if end.startswith(before)]
    return list(dict.fromkeys(found))


def reader_words(key: str) -> str:
    """``Mill from East`` of ``Mill/East``."""
    at = junction_and_arm(key)
    return key if at is None else tr("{arm} from {junction}", arm=at[0], junction=at[1])
