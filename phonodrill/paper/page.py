"""The kinds of page that can be printed, as plain data.

A page holds all it shows; whoever draws it asks nothing else. Pages of several
kinds may be put in one file, in any order.
"""

from __future__ import annotations

from enum import StrEnum
from typing import NamedTuple


class Paper(StrEnum):
    """Size of the sheet."""

    LETTER = "letter"
    A4 = "a4"


class Duplex(StrEnum):
    """How the printer turns a sheet over, which decides where the backs stand."""

    LONG = "long"
    SHORT = "short"
    NONE = "none"


class Script(StrEnum):
    """What a text is made of, which decides its font."""

    LETTERS = "letters"
    SOUNDS = "sounds"


class Text(NamedTuple):
    """A short text in letters, or in signs for sounds; never both.

    Attributes:
        text: what is printed.
        script: letters, or sounds.
    """

    text: str
    script: Script = Script.LETTERS


class Card(NamedTuple):
    """One card to cut out.

    Attributes:
        front: the lines of its front; none for a blank card.
        back: the lines of its back; none if it has no back.
    """

    front: tuple[Text, ...] = ()
    back: tuple[Text, ...] = ()


class Grid(NamedTuple):
    """How many cards stand on a sheet."""

    columns: int
    rows: int

    @property
    def cards(self) -> int:
        """How many cards a sheet has."""
        return self.columns * self.rows


class Side(NamedTuple):
    """One side of a sheet of cards.

    Attributes:
        label: which sheet and side it is, for the margin.
        is_front: whether it is cut along its lines; backs carry none.
        faces: the lines of each place, row by row; None where no card is.
    """

    label: str
    is_front: bool
    faces: tuple[tuple[Text, ...] | None, ...]


class Cards(NamedTuple):
    """Sheets of cards to cut out, fronts and backs in turn.

    Attributes:
        title: stands small in the margin.
        grid: cards a sheet.
        sides: the sides of the sheets, in the order of printing.
    """

    title: str
    grid: Grid
    sides: tuple[Side, ...]


class Mat(NamedTuple):
    """A page of columns on which cards are sorted.

    Attributes:
        title: what is sorted by what.
        headings: the lines at the head of each column.
        note: one line on what to do; may be empty.
    """

    title: str
    headings: tuple[tuple[Text, ...], ...]
    note: str = ""


class Piece(NamedTuple):
    """The letters of a chunk that stand together, with their sounds.

    Attributes:
        letters: as written in the word.
        sounds: signs of the sounds, one each; none for letters that say nothing
            where they stand (the e of *rope*, the b of *lamb*).
        is_regular: whether it is a taught pattern, not the odd part of its word.
        closes: for the e that closes a split vowel, the place of the piece with
            its vowel; -1 for every other piece.
    """

    letters: str
    sounds: tuple[str, ...]
    is_regular: bool = True
    closes: int = -1


class Split(NamedTuple):
    """A word in pieces; joined, their letters are the word."""

    word: str
    pieces: tuple[Piece, ...]

    @property
    def sounds(self) -> int:
        """How many sounds it has."""
        return sum(len(piece.sounds) for piece in self.pieces)

    @property
    def chunks(self) -> tuple[str, ...]:
        """The letters of each chunk, a split vowel as ``a_e``."""
        closing = {piece.closes: piece.letters for piece in self.pieces}
        return tuple(
            f"{piece.letters}_{closing[place]}" if place in closing else piece.letters
            for place, piece in enumerate(self.pieces)
            if piece.closes < 0
        )


class Boxes(NamedTuple):
    """Rows of boxes, one a sound.

    Attributes:
        title: stands at the head.
        note: one line on what to do; may be empty.
        rows: the words.
        filled: whether letters and sounds are shown; empty boxes otherwise.
    """

    title: str
    note: str
    rows: tuple[Split, ...]
    filled: bool


class ChunkLines(NamedTuple):
    """Words to sound out, a line under each chunk.

    Attributes:
        title: stands at the head.
        note: one line on what to do; may be empty.
        rows: the words.
    """

    title: str
    note: str
    rows: tuple[Split, ...]


class WordList(NamedTuple):
    """A numbered list of words in large type.

    Attributes:
        title: stands at the head.
        note: one line on what to do; may be empty.
        words: in order.
        columns: how many stand side by side.
    """

    title: str
    note: str
    words: tuple[str, ...]
    columns: int = 2


class Key(NamedTuple):
    """A table for the teacher.

    Attributes:
        title: stands at the head.
        note: one line on how it came about; may be empty.
        headings: of the columns.
        widths: of the columns, as shares of the page; 0 for one as wide as its text.
        rows: as many cells as headings, each some texts side by side.
    """

    title: str
    note: str
    headings: tuple[str, ...]
    widths: tuple[int, ...]
    rows: tuple[tuple[tuple[Text, ...], ...], ...]


class Heading(NamedTuple):
    """A heading within a sheet; level 2 or 3, as the title of the sheet is 1."""

    text: str
    level: int = 2


class Paragraph(NamedTuple):
    """Running text, its sounds as runs of their own.

    Attributes:
        runs: letters and sounds in turn.
        size: in points.
        is_lead: whether it stays on the page of what follows.
    """

    runs: tuple[Text, ...]
    size: int = 12
    is_lead: bool = False


class Table(NamedTuple):
    """A table within a sheet.

    Attributes:
        headings: of the columns, as runs of text.
        widths: of the columns, as shares of the page; 0 for one as wide as its text.
        rows: as many cells as headings, each a run of texts.
    """

    headings: tuple[tuple[Text, ...], ...]
    widths: tuple[int, ...]
    rows: tuple[tuple[tuple[Text, ...], ...], ...]


class Item(NamedTuple):
    """A numbered line, with its answer and a remark where the teacher is to see them."""

    number: int
    ask: tuple[Text, ...]
    answer: tuple[Text, ...] = ()
    remark: tuple[Text, ...] = ()


class Items(NamedTuple):
    """Numbered lines; size in points."""

    items: tuple[Item, ...]
    size: int = 12


class WordRows(NamedTuple):
    """Words side by side; size in points."""

    words: tuple[str, ...]
    columns: int = 4
    size: int = 14


class WriteLines(NamedTuple):
    """Lines to write on, each with the text before it, which may be empty.

    Attributes:
        labels: one a line.
        columns: how many lines stand side by side.
        share: percent of its column that the line takes.
    """

    labels: tuple[str, ...]
    columns: int = 1
    share: int = 90


class OpenColumns(NamedTuple):
    """Open columns to write words in, under their headings.

    Attributes:
        headings: of the columns, as runs of text.
        rows: to write in, one under another.
        lanes: words side by side in a column.
    """

    headings: tuple[tuple[Text, ...], ...]
    rows: int
    lanes: int = 1


class ScoreGrid(NamedTuple):
    """One row a student, one column an item, and a column for the sum.

    Attributes:
        headings: of the columns.
        rows: how many.
        names: what stands in the first rows already; the others are to be filled in.
    """

    headings: tuple[str, ...]
    rows: int
    names: tuple[str, ...] = ()


Block = Heading | Paragraph | Table | Items | WordRows | WriteLines | OpenColumns | ScoreGrid


class Sheet(NamedTuple):
    """A page, or several, of blocks one under another.

    Attributes:
        title: stands at the head.
        note: one line on what to do; may be empty.
        blocks: in order.
        is_named: whether a student writes name and date on it.
    """

    title: str
    note: str
    blocks: tuple[Block, ...]
    is_named: bool = False


Page = Cards | Mat | Boxes | ChunkLines | WordList | Key | Sheet
