"""Options of the commands that make oral items."""

from __future__ import annotations

from typing import Annotated, Optional

import typer

from phonodrill.sounds.units import RVowels

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
