"""What differs between two plans in words, the same on the command line and in the window."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from app.translation import QT_TR_NOOP, tr
from model.comparing import Beside, Difference, Kind
from model.edits.words import held_words, part_word
from model.parts import FACED, RAILS, Mode, Part
from model.pieces import Piece
from model.plan import Arm, ArmEnd, Route, Waiver

VERBS: Final = {
    Kind.TAKEN: QT_TR_NOOP("take away"),
    Kind.TURNED: QT_TR_NOOP("turn"),
    Kind.CHANGED: QT_TR_NOOP("change"),
    Kind.PLACED: QT_TR_NOOP("place"),
    Kind.RESHAPED: QT_TR_NOOP("lies otherwise"),
}
"""What a builder does about each kind, in the order in which it is done."""
COUNTS: Final = {
    Kind.PLACED: QT_TR_NOOP("{number} placed"),
    Kind.TAKEN: QT_TR_NOOP("{number} taken away"),
    Kind.TURNED: QT_TR_NOOP("{number} turned"),
    Kind.CHANGED: QT_TR_NOOP("{number} changed"),
    Kind.RESHAPED: QT_TR_NOOP("{number} lying otherwise"),
}
NAMES: Final = {
    "title": QT_TR_NOOP("title"),
    "running side": QT_TR_NOOP("running side"),
    "arm": QT_TR_NOOP("arm"),
    "route": QT_TR_NOOP("route"),
    "waiver": QT_TR_NOOP("waiver"),
    "sheet": QT_TR_NOOP("sheet"),
}
ORDER: Final = {kind: number for number, kind in enumerate(VERBS)}


def counts_words(counts: Mapping[Kind, int]) -> str:
    """``3 placed, 2 taken away, 1 turned``; in words where there is nothing."""
    said = [tr(COUNTS[kind], number=f"{counts[kind]:,}") for kind in COUNTS if counts.get(kind)]
    return ", ".join(said) or tr("no piece differs")


def verb(kind: Kind) -> str:
    """``take away``"""
    return tr(VERBS[kind])


def difference_words(found: Difference) -> str:
    """``torch, facing up``, ``torch: facing up → facing east``, ``rail: rising-east → east-west``."""
    before, after = found.before, found.after
    if before is None or after is None:
        return piece_words(before if after is None else after)
    said = aspect_words(found)
    return said if before.part is not after.part else f"{part_word(after.part)}: {said}"


def aspect_words(found: Difference) -> str:
    """The same without the part where there is but one: ``facing up``, ``facing up → facing east``."""
    before, after = found.before, found.after
    if before is None or after is None:
        piece = before if after is None else after
        return "" if piece is None else ", ".join(_settings(piece).values())
    lying = "" if found.lay is None or found.lies is None else _becomes(found.lay.word, found.lies.word)
    if found.kind is Kind.RESHAPED:
        return lying
    if before.part is not after.part:
        said = _becomes(piece_words(before), piece_words(after))
    else:
        said = _settings_that_differ(before, after)
    if lying:
        return tr("{said}; lies {otherwise}", said=said, otherwise=lying)
    is_as_before = found.kind is Kind.TURNED and after.part in RAILS
    return tr("{said}; lies the same", said=said) if is_as_before else said


def piece_words(piece: Piece | None) -> str:
    """A piece with all that a builder must see to: ``repeater, facing east, delay 4 ticks``."""
    if piece is None:
        return tr("nothing")
    return ", ".join([part_word(piece.part), *_settings(piece).values()])


def _settings_that_differ(before: Piece, after: Piece) -> str:
    old, new = _settings(before), _settings(after)
    keys = [key for key in {**old, **new} if old.get(key) != new.get(key)]
    said = [_becomes(old.get(key) or tr("without"), new.get(key) or tr("without")) for key in keys]
    if before.kept != after.kept or (before.holds != after.holds and "holds" not in keys):
        said.append(tr("keys that this version does not know"))
    return ", ".join(said)


def _settings(piece: Piece) -> dict[str, str]:
    """What is set on a piece, by what it is."""
    said = {}
    if piece.part in FACED or piece.facing != "north":
        said["facing"] = tr("facing {way}", way=piece.facing)
    if piece.wooden:
        said["wooden"] = tr("wooden")
    if piece.part is Part.REPEATER:
        said["delay"] = tr("delay {ticks} ticks", ticks=piece.delay)
    if piece.part is Part.COMPARATOR:
        said["mode"] = tr("set to subtract") if piece.mode is Mode.SUBTRACT else tr("set to compare")
    if piece.holds:
        held = " + ".join(map(held_words, piece.holds))
        said["holds"] = tr("holding {items}", items=held)
    return said


def _becomes(before: str, after: str) -> str:
    return tr("{before} → {after}", before=before, after=after)


def name_words(found: Beside) -> str:
    """``title``, ``arm Mill``"""
    return f"{tr(NAMES[found.what])} {found.name}".rstrip()


def beside_words(found: Beside) -> str:
    """``idle Mill → idle Mill, called Fen with Salt``"""
    return _becomes(_value_words(found.before), _value_words(found.after))


def _value_words(value: Any) -> str:
    match value:
        case None:
            return tr("none")
        case Arm():
            return ", ".join([*_end_words(tr("in"), value.enter), *_end_words(tr("out"), value.leave)])
        case Route():
            said = [tr("idle {arm}", arm=value.idle)]
            said += [tr("called {arm}", arm=value.called)] if value.called is not None else []
            said += [tr("with {waybill}", waybill=value.waybill)] if value.waybill is not None else []
            return ", ".join(said)
        case Waiver():
            return value.reason or tr("no reason given")
        case _:
            return str(value)


def _end_words(word: str, end: ArmEnd | None) -> list[str]:
    if end is None:
        return []
    return [tr("{end} {cell} heading {heading}", end=word, cell=end.at, heading=end.heading.word)]
