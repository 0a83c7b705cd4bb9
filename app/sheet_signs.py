"""The signs of the build sheet beside the pieces themselves, in the words of its key and of the help."""

from __future__ import annotations

from typing import Final

from app.translation import QT_TR_NOOP
from model.sheet.levels import Sign

SIGN_WORDS: Final = {
    Sign.RISING: QT_TR_NOOP("of these rising, wide end high"),
    Sign.SWITCH: QT_TR_NOOP("of these switches, drive on the free side"),
    Sign.INVERTER: QT_TR_NOOP("switches with an inverter"),
    Sign.FACING: QT_TR_NOOP("place it facing this way"),
    Sign.NUMBER: QT_TR_NOOP("place these in order of their numbers"),
}
