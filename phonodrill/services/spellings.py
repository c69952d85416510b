"""How a sound is spelled, or a spelling said."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

from phonodrill.errors import PhonodrillError
from phonodrill.gate import open_gate
from phonodrill.graphemes.correspondence import WEAK_ARPABET
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.reading.letter_places import Habit, habit_of
from phonodrill.reading.spellings import Share, count_correspondences, sounds_of, spellings_of
from phonodrill.render.views import spellings as view
from phonodrill.selection import fit_to_say
from phonodrill.services.made import Made
from phonodrill.sounds.inventory import BY_CODE
from phonodrill.sounds.normal import WEAK
from phonodrill.sounds.notation import Notation, parse_sound


def spellings(
    lexicon: Lexicon,
    sound: str = "",
    spelling: str = "",
    *,
    band: int,
    one_syllable: bool = False,
    overlay: Overlay = NO_OVERLAY,
    notation: Notation | None = None,
) -> Made:
    """Count every spelling of a sound, of all sounds, or every sound of a spelling.

    With each goes where it stands in words of one syllable, if nearly always the same.

    Args:
        lexicon: the open lexicon.
        sound: in any notation; empty for all, or where a spelling is given.
        spelling: letters; asks the reverse.
        band: highest familiarity band.
        one_syllable: whether only words of one syllable are counted.
        overlay: a teacher's own words.
        notation: how sounds are written.

    Raises:
        PhonodrillError: if both are given, the sound is not known, or no word has it.
    """
    if sound and spelling:
        raise PhonodrillError("give a sound or --spelling, not both", "phonodrill spellings /f/")
    code = _code(sound) if sound else ""
    inventory = lexicon.correspondences()
    is_fit = fit_to_say(lexicon, open_gate(lexicon, overlay.words("block")))
    words = lexicon.spelled(highest_band=band)
    counts = count_correspondences(words, is_fit, one_syllable=one_syllable)
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
    habits = _habits(shares, lexicon, is_fit, band)
    return Made(view.document(shares, habits, code, letters, notation))


def _habits(
    shares: Iterable[Share], lexicon: Lexicon, is_fit: Callable[[str], bool], band: int
) -> Mapping[tuple[str, str], Habit]:
    """Say of spellings where they stand, with exceptions that may be said and are of the band."""
    known = {*lexicon.words(highest_band=band)}
    found = {
        (share.spelling, share.sound): habit_of(share.spelling, share.sound, lexicon)
        for share in shares
    }
    return {
        key: habit.of_words(lambda word: word in known and is_fit(word))
        for key, habit in found.items()
        if habit
    }


def _code(sound: str) -> str:
    bare = sound.strip().strip("/")
    return WEAK if bare in (WEAK, WEAK_ARPABET) else parse_sound(sound)
