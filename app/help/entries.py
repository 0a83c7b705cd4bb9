"""What a page of the help is made of. No Qt here."""

from __future__ import annotations

from typing import NamedTuple


class Line(NamedTuple):
    """A sentence or two, with a word before it such as *Why*; empty where it needs none."""

    head: str
    text: str


class Drawing(NamedTuple):
    """A plan in the notation of ``model.text_drawing``."""

    caption: str
    text: str


class Entry(NamedTuple):
    """What the help says of one thing."""

    key: str
    """``part rail``, ``rule loose-end``: by which it is found from elsewhere."""
    title: str
    lines: tuple[Line, ...]
    icon: str = ""
    """The name of its symbol, as ``app.icons`` knows it; empty where it has none."""
    keys: str = ""
    drawings: tuple[Drawing, ...] = ()

    def says(self, words: list[str]) -> bool:
        """Whether all words stand somewhere in it; they come in lower case."""
        texts = (self.title, self.keys, *(line.text for line in self.lines))
        said = " ".join(texts).casefold()
        return all(word in said for word in words)


class Page(NamedTuple):
    """Entries of one kind."""

    title: str
    about: str
    entries: tuple[Entry, ...]
