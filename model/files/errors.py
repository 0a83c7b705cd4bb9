"""What is said of a file that cannot be read."""

from __future__ import annotations

from model.wording import tr


class PlaceError(Exception):
    """Something in a file that cannot be read; which file it is, is not known yet."""

    def __init__(self, place: str, expected: str) -> None:
        super().__init__(place, expected)
        self.place = place
        self.expected = expected


class PlanFileError(Exception):
    """A file that cannot be read: which one, the place in it, and what was expected there.

    ``place`` is a path such as ``pieces[3].at``, a line and a column, ``top level``, or ``the file itself``.
    """

    def __init__(self, file: str, place: str, expected: str) -> None:
        self.file = file
        self.place = place or tr("top level")
        super().__init__(
            tr("{file}: {place}: expected {expected}", file=file, place=self.place, expected=expected)
        )
        self.expected = expected
