"""How a piece is set, in the words of the legend: ``repeater, facing east, delay 4``."""

from __future__ import annotations

import msgspec

from model.grid import Cell, Facing
from model.parts import Mode, Part
from model.pieces import Piece, new_piece


def setting_words(piece: Piece) -> str:
    """A piece that is no rail, in words: its part and all in which it differs from one out of the tray."""
    plain = new_piece(piece.part, piece.at)
    words = [str(piece.part)]
    if piece.facing is not plain.facing:
        words.append(f"facing {piece.facing}")
    if piece.delay != plain.delay:
        words.append(f"delay {piece.delay}")
    if piece.mode is not plain.mode:
        words.append(str(piece.mode))
    if piece.wooden:
        words.append("wooden")
    return ", ".join(words)


def piece_from_words(text: str) -> Piece:
    """The piece that the words describe, in cell 0 0 0. Raises ValueError for words that describe none."""
    part, *words = text.split(", ")
    piece = new_piece(Part(part), Cell(0, 0, 0))
    for word in words:
        piece = _with(piece, word)
    return piece


def _with(piece: Piece, word: str) -> Piece:
    replace = msgspec.structs.replace
    match word.split(" "):
        case ["facing", facing]:
            return replace(piece, facing=Facing(facing))
        case ["delay", ticks]:
            return replace(piece, delay=int(ticks))
        case ["wooden"]:
            return replace(piece, wooden=True)
        case _:
            return replace(piece, mode=Mode(word))
