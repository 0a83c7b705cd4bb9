"""Numbers as they are typed into a network."""

from __future__ import annotations

import re
from typing import Final

IN_THOUSANDS: Final = re.compile(r"\d{1,3}(,\d{3})+(\.\d*)?")


def without_marks(text: str) -> str:
    """Without spaces and the commas between thousands, as the program writes them.

    Another comma stays, and what holds it is no number: ``2,5`` is not twenty-five.
    """
    text = text.replace(" ", "")
    return text.replace(",", "") if IN_THOUSANDS.fullmatch(text) else text
