"""Numbers and records that several kinds of JSON have."""

from __future__ import annotations

from typing import Annotated, Any, NamedTuple, TypedDict


class Keyword(NamedTuple):
    """A keyword that a JSON Schema has beside the type."""

    name: str
    value: Any


Band = Annotated[int, Keyword("minimum", 0), Keyword("maximum", 4)]
Count = Annotated[int, Keyword("minimum", 0)]
Share = Annotated[float, Keyword("minimum", 0), Keyword("maximum", 1)]


class Versions(TypedDict):
    """The versions with which all JSON begins.

    Attributes:
        version: of the program.
        schema: of the fields; another number means that a field changed or went.
    """

    version: str
    schema: int


class Chunk(TypedDict):
    """Letters of a word tied to their sounds.

    Attributes:
        letters: as they are written; a_e for a split vowel.
        at: where in the word they stand, from 0.
        arpabet: what they say, one entry a sound; none where they are silent.
        irregular: whether it is the odd part of the word, to be learned by heart.
    """

    letters: str
    at: list[Count]
    arpabet: list[str]
    irregular: bool
