"""The repeater: a delay that lets no short pulse and no short gap through as it is.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations


def called_for(back: int) -> int:
    """The output that the signal at the back calls for."""
    return 15 if back else 0


def when_due(output: int, back: int) -> int:
    """The output when a change comes due: it goes on for good or ill, and off only where the back still is.

    So a pulse shorter than the delay comes out as long as the delay, and a shorter gap is swallowed.
    """
    return called_for(back) if output else 15
