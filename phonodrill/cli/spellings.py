"""``phonodrill spellings``: how a sound is spelled, or a spelling said."""

from __future__ import annotations

from typing import Annotated

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.own_words import own_words
from phonodrill.errors import PhonodrillError
from phonodrill.gate import open_gate
from phonodrill.graphemes.correspondence import WEAK_ARPABET
from phonodrill.lexicon.store import Lexicon
from phonodrill.reading.spellings import count_correspondences, sounds_of, spellings_of
from phonodrill.render.views import spellings as view
from phonodrill.selection import fit_to_say
from phonodrill.sounds.inventory import BY_CODE
from phonodrill.sounds.normal import WEAK
from phonodrill.sounds.notation import parse_sound

app = typer.Typer(add_completion=False, rich_markup_mode=None)


@app.command()
def spellings(
    sound: Annotated[str, typer.Argument(help="A sound: /f/, sh, ā, ER, or ə.")] = "",
    spelling: Annotated[
        str, typer.Option("--spelling", help="Ask the reverse: how these letters are said.")
    ] = "",
    one_syllable: Annotated[
        bool, typer.Option("--one-syllable", help="Count only words of one syllable.")
    ] = False,
    band: options.BandOption = 3,
    notation: options.NotationOption = None,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Show every spelling of a sound, with its share of words and of running text.

    Without a sound, all sounds.
    """
    if sound and spelling:
        raise PhonodrillError("give a sound or --spelling, not both", "phonodrill spellings /f/")
    code = _code(sound) if sound else ""
    with Lexicon() as lexicon:
        inventory = lexicon.correspondences()
        gate = open_gate(lexicon, own_words().words("block"))
        words = lexicon.spelled(highest_band=band)
        counts = count_correspondences(words, fit_to_say(lexicon, gate), one_syllable=one_syllable)
        letters = spelling.strip().lower()
        if letters:
            shares = sounds_of(letters, inventory, counts)
        else:
            sounds = [code] if sound else [*BY_CODE, WEAK]
            shares = [s for one in sounds for s in spellings_of(one, inventory, counts)]
    if not shares:
        raise PhonodrillError(
            f"no word of bands 1-{band} has {'the sound ' + sound if sound else repr(letters)}",
            "another sound, or --band 3",
        )
    deliver(view.document(shares, code, letters, notation), format_, out)


def _code(sound: str) -> str:
    bare = sound.strip().strip("/")
    return WEAK if bare in (WEAK, WEAK_ARPABET) else parse_sound(sound)
