"""The ends of an arm in words: where its name is asked for, for screen readers, and in the help."""

from __future__ import annotations

from typing import Final, NamedTuple

from app.tools.host import Ends
from app.translation import QT_TR_NOOP


class EndsWords(NamedTuple):
    """What is said of the ends of an arm; each text is looked up where it is shown."""

    word: str
    spoken: str
    about: str


ENDS_WORDS: Final = {
    Ends.IN: EndsWords(QT_TR_NOOP("in"), QT_TR_NOOP("in"), QT_TR_NOOP("Carts come in here")),
    Ends.OUT: EndsWords(QT_TR_NOOP("out"), QT_TR_NOOP("out"), QT_TR_NOOP("Carts leave here")),
    Ends.BOTH: EndsWords(
        QT_TR_NOOP("both"), QT_TR_NOOP("in and out"), QT_TR_NOOP("Carts come in and leave here")
    ),
}
