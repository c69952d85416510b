"""Options of the commands that make oral items, and the query they amount to."""

from __future__ import annotations

from typing import Annotated, Optional

import typer

from phonodrill.cli import options
from phonodrill.selection import Query
from phonodrill.sounds.accents import parse_accents
from phonodrill.sounds.notation import parse_sound
from phonodrill.sounds.units import RVowels

ENDINGS = ("s", "es", "ies", "ed", "ing")

EndingOption = Annotated[
    str, typer.Option("--ending", help="Only words spelled with s, es, ies, ed or ing added.")
]
SoundOption = Annotated[
    str, typer.Option("--sound", help="Only items about this sound: sh, /ʃ/ or SH.")
]
RVowelsOption = Annotated[
    Optional[RVowels],
    typer.Option("--r-vowels", help="Count a vowel with its R as two sounds or one."),
]
MadeUpOption = Annotated[
    bool, typer.Option("--made-up", help="Made-up words: blend, segment, substitute.")
]


def read_query(
    *, band: int, ending: str, sound: str, accent: str, r_vowels: RVowels | None, made_up: bool
) -> Query:
    """Read what the options say of the items wanted.

    Raises:
        PhonodrillError: naming an ending, sound or accent that is not known.
    """
    return Query(
        band=band,
        endings=options.parse_endings(ending, ENDINGS),
        sound=parse_sound(sound) if sound else "",
        r_vowels=r_vowels,
        accents=parse_accents(accent),
        made_up=made_up,
    )
