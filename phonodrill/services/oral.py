"""The query that the options of oral items amount to."""

from __future__ import annotations

from phonodrill.selection import Query
from phonodrill.services.endings import parse_endings
from phonodrill.sounds.accents import parse_accents
from phonodrill.sounds.notation import parse_sound
from phonodrill.sounds.units import RVowels

ENDINGS = ("s", "es", "ies", "ed", "ing")


def read_query(
    *,
    band: int,
    ending: str = "",
    sound: str = "",
    accent: str = "",
    r_vowels: RVowels | None = None,
    made_up: bool = False,
) -> Query:
    """Read what is said of the items wanted.

    Raises:
        PhonodrillError: naming an ending, sound or accent that is not known.
    """
    return Query(
        band=band,
        endings=parse_endings(ending, ENDINGS),
        sound=parse_sound(sound) if sound else "",
        r_vowels=r_vowels,
        accents=parse_accents(accent),
        made_up=made_up,
    )
