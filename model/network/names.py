"""Words for waybills."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import count
from typing import Final

WORDS: Final = (
    "Salt", "Reed", "Eel", "Apple", "Peat", "Malt", "Lamp oil", "Flour", "Brick", "Wool", "Oyster", "Barley",
    "Rope", "Honey", "Chalk", "Tar", "Willow", "Cider", "Herring", "Slate", "Hay", "Candle", "Plum", "Clay",
    "Samphire", "Cork", "Linen", "Mussel", "Oats", "Pewter", "Quince", "Rye", "Soap", "Thatch", "Vinegar",
    "Walnut",
)  # fmt: skip
"""What the invented Brinepan Tramway carries."""


def words_for(groups: Sequence[Sequence[str | None]], settled: Sequence[str | None]) -> list[str]:
    """A word for each group of readers, no two alike.

    ``settled`` gives some of them. The others get the word that most of the group's readers propose, where
    nobody has it yet, or the next of the list.
    """
    used = {word for word in settled if word is not None}
    words: list[str] = []
    fresh = _fresh_words()
    for group, word in zip(groups, settled, strict=True):
        proposals = Counter(proposal for proposal in group if proposal)
        wanted = (proposal for proposal, _ in proposals.most_common() if proposal not in used)
        chosen = word or next(wanted, None) or next(each for each in fresh if each not in used)
        used.add(chosen)
        words.append(chosen)
    return words


def _fresh_words() -> Iterator[str]:
    """The list, then the list with numbers."""
    yield from WORDS
    for number in count(2):
        yield from (f"{word} {number}" for word in WORDS)
