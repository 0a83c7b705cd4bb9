"""How build sheets are to be written: what was chosen last, and what is kept under a name."""

from __future__ import annotations

from typing import Final, NamedTuple

import msgspec

from app.settings import Settings

PAPERS: Final = ("A4", "A3")
FORMATS: Final = ("PDF", "SVG", "PNG")
MOST: Final = 30
"""Presets that are kept; a longer list could not be looked through."""


class SheetChoice(NamedTuple):
    """How the build sheet is written."""

    paper: str = "A4"
    format: str = "PDF"
    colour: bool = False
    steps: bool = True


class Preset(msgspec.Struct, frozen=True):
    """Choices under a name."""

    name: str
    choice: SheetChoice = SheetChoice()
    folder: str = ""
    """Where sheets go; empty where each goes beside its plan."""


LAST: Final = ""
"""The name of what was chosen last, whether it is kept or not."""


class SheetPresets:
    """The presets in the settings, by name in the order of the alphabet."""

    def __init__(self, settings: Settings) -> None:
        self._settings = settings

    @property
    def last(self) -> Preset:
        """What was chosen last time."""
        return self._read().get(LAST, Preset(LAST))

    @property
    def kept(self) -> dict[str, Preset]:
        """What is kept under names."""
        found = self._read()
        return {name: found[name] for name in sorted(found, key=str.casefold) if name != LAST}

    def keep(self, preset: Preset) -> None:
        """Keep choices under a name, in place of what was kept under it; past the most, the oldest goes."""
        found = self._read()
        found.pop(preset.name, None)
        found[preset.name] = preset
        self._write([*found.values()][-MOST:])

    def forget(self, name: str) -> None:
        """Keep nothing under that name any more."""
        self._write([preset for preset in self._read().values() if preset.name != name])

    def remember(self, choice: SheetChoice, folder: str) -> None:
        """Offer these choices next time."""
        self.keep(Preset(LAST, choice, folder))

    def _read(self) -> dict[str, Preset]:
        try:
            found = msgspec.json.decode(self._settings.choice("sheet-presets", "[]"), type=list[Preset])
        except msgspec.DecodeError:
            # Settings of another version: no presets are better than no build sheet.
            found = []
        return {preset.name: preset for preset in found if _is_on_offer(preset.choice)}

    def _write(self, presets: list[Preset]) -> None:
        self._settings.choose("sheet-presets", msgspec.json.encode(presets).decode())


def _is_on_offer(choice: SheetChoice) -> bool:
    return choice.paper in PAPERS and choice.format in FORMATS
