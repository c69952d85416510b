"""Word cards to cut out, and how their backs stand behind their fronts."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from enum import StrEnum
from typing import TypeVar

from phonodrill.paper.page import Card, Cards, Duplex, Grid, Script, Side, Text
from phonodrill.paper.printed import Printed

Place = TypeVar("Place")


class Size(StrEnum):
    """How large the cards are."""

    SMALL = "small"
    MEDIUM = "medium"
    LARGE = "large"


GRIDS = {Size.SMALL: Grid(3, 8), Size.MEDIUM: Grid(3, 6), Size.LARGE: Grid(2, 4)}


class Back(StrEnum):
    """What stands on the back of a word card."""

    SOUNDS = "sounds"
    CHUNKS = "chunks"
    ENDING = "ending"
    NONE = "none"


def card_of(word: Printed, back: Back) -> Card:
    """Make the card of a word.

    A word without the thing asked for (an ending, chunks) has its sounds on the back.
    """
    front = (Text(word.word),)
    sounds = tuple(Text(reading, Script.SOUNDS) for reading in word.readings)
    if back is Back.NONE:
        return Card(front)
    if back is Back.CHUNKS and word.split:
        return Card(front, (Text(" · ".join(word.split.chunks)), *sounds))
    if back is Back.ENDING and word.ending:
        built = (Text(f"{word.base} → {word.word}"),) if word.base else ()
        return Card(front, (Text(word.ending_signs, Script.SOUNDS), *built))
    return Card(front, sounds)


def lay_out(title: str, cards: Sequence[Card], grid: Grid, duplex: Duplex = Duplex.LONG) -> Cards:
    """Lay cards out on sheets, each back behind its front.

    Turned over at the long edge, the left column of a sheet is the right one of
    its back; at the short edge, the top row the bottom one. Sheets without any
    back, and all with ``Duplex.NONE``, have fronts only.

    Args:
        title: stands in the margin.
        cards: in order, row by row.
        grid: cards a sheet.
        duplex: how the printer turns the sheet.
    """
    sheets = list(_sheets(cards, grid))
    sides = []
    has_backs = duplex is not Duplex.NONE and any(card.back for card in cards)
    for number, sheet in enumerate(sheets, 1):
        place = f"sheet {number} of {len(sheets)}"
        fronts = tuple(None if card is None else card.front for card in sheet)
        sides.append(Side(f"{place}, front" if has_backs else place, True, fronts))
        if has_backs:
            backs = [None if card is None else card.back for card in sheet]
            turned = tuple(mirrored(backs, grid, duplex))
            sides.append(Side(f"{place}, back (turn at the {duplex} edge)", False, turned))
    return Cards(title, grid, tuple(sides))


def mirrored(places: Sequence[Place], grid: Grid, duplex: Duplex) -> list[Place]:
    """Return the places of a sheet as they stand on its other side.

    >>> mirrored([1, 2, 3, 4], Grid(2, 2), Duplex.LONG)
    [2, 1, 4, 3]
    >>> mirrored([1, 2, 3, 4], Grid(2, 2), Duplex.SHORT)
    [3, 4, 1, 2]
    """
    rows = [
        list(places[start : start + grid.columns]) for start in range(0, len(places), grid.columns)
    ]
    turned = rows[::-1] if duplex is Duplex.SHORT else [row[::-1] for row in rows]
    return [place for row in turned for place in row]


def _sheets(cards: Sequence[Card], grid: Grid) -> Iterator[list[Card | None]]:
    for start in range(0, len(cards), grid.cards):
        sheet: list[Card | None] = list(cards[start : start + grid.cards])
        yield sheet + [None] * (grid.cards - len(sheet))
