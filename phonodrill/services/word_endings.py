"""Words by their endings: add one, take it off, its rule card, its traps, a sort."""

from __future__ import annotations

import random
from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING, NamedTuple

from phonodrill.endings.add import Form, add_ending
from phonodrill.endings.sort import By, Sort
from phonodrill.endings.suffix import SPELLINGS, SUFFIX_OF
from phonodrill.errors import PhonodrillError
from phonodrill.gate import Gate, open_gate
from phonodrill.lexicon.entry import Pronunciation
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.selection import Query
from phonodrill.services.endings import parse_endings
from phonodrill.services.made import Made
from phonodrill.services.word_list import NOT_FOR_CLASS, Line, is_fit, named, problems_of
from phonodrill.sounds.notation import Notation

if TYPE_CHECKING:
    from phonodrill.taught.known import Known

DEFAULT_ENDINGS = ("s", "es", "ies")
FAMILY = ("s", "es", "ies", "ves", "ed", "ing", "er", "est")
"""Endings that show a base with all its forms."""
LONGEST_WORD = 40


class Draw(NamedTuple):
    """What is drawn from the vocabulary.

    Attributes:
        band: highest familiarity band.
        size: how many of each kind.
        seed: makes the same choice again.
        known: what the class was taught; None for any word.
    """

    band: int
    size: int
    seed: int
    known: Known | None = None


class Sorted(NamedTuple):
    """A sort, and notes on words that are not in it.

    Attributes:
        sort: the words sorted.
        unfit: a note for each word that may not be used.
        left_out: a note for each word without such an ending.
    """

    sort: Sort
    unfit: tuple[str, ...] = ()
    left_out: tuple[str, ...] = ()


def add(
    lexicon: Lexicon,
    word: str,
    suffix: str,
    *,
    sounds: str = "",
    overlay: Overlay = NO_OVERLAY,
    notation: Notation | None = None,
) -> Made:
    """Add an ending to a word, real or made up.

    Args:
        lexicon: the open lexicon.
        word: the base.
        suffix: s, ed, ing, er, est, ly, y or 's.
        sounds: how a made-up base is said, as in CMUdict; by default read off its letters.
        overlay: a teacher's own words.
        notation: how sounds are written.

    Raises:
        PhonodrillError: if it is no word, or not for class.
    """
    from phonodrill.render.views.endings import added_document

    gate = open_gate(lexicon, overlay.words("block"))
    base = fit_word(word, lexicon, gate)
    said = _said(sounds) if sounds else None
    result = add_ending(base, suffix, lexicon, said=said)
    forms = tuple(form for form in result.forms if _may_show_form(form, lexicon, gate))
    if not (bool(forms) if result.forms else all(is_fit(w, lexicon, gate) for w in result.bases)):
        raise PhonodrillError(NOT_FOR_CLASS, "another word")
    return Made(added_document(result._replace(forms=forms), notation))


def base(lexicon: Lexicon, word: str, overlay: Overlay = NO_OVERLAY) -> Made:
    """Take the ending off: every base a word may come from, the likeliest first.

    Raises:
        PhonodrillError: if it is no word, or not for class.
    """
    from phonodrill.endings.undo import find_bases
    from phonodrill.render.views.endings import bases_document

    gate = open_gate(lexicon, overlay.words("block"))
    form = fit_word(word, lexicon, gate)
    result = find_bases(form.lower(), lexicon, gate)
    fit = tuple(origin for origin in result.origins if is_fit(origin.base, lexicon, gate))
    if result.origins and not fit:
        raise PhonodrillError(NOT_FOR_CLASS, "another word")
    return Made(bases_document(result._replace(form=form, origins=fit)))


def table(
    lexicon: Lexicon,
    suffix: str,
    draw: Draw,
    overlay: Overlay = NO_OVERLAY,
    notation: Notation | None = None,
) -> Made:
    """Make the rule card of an ending; the size is that of examples for each kind of base."""
    from phonodrill.endings.table import make_card
    from phonodrill.render.views.endings import card_document

    card = make_card(
        lexicon,
        suffix,
        band=draw.band,
        per_kind=draw.size,
        rng=random.Random(draw.seed),
        overlay=overlay,
    )
    return Made(card_document(card, notation, draw.seed, draw.band))


def lookalikes(lexicon: Lexicon, ending: str, draw: Draw, overlay: Overlay = NO_OVERLAY) -> Made:
    """List traps for a lesson; the size is that of words of each kind.

    Raises:
        PhonodrillError: naming an ending that is not known.
    """
    from phonodrill.endings.lookalikes import find_lookalikes
    from phonodrill.render.views.endings import lookalikes_document

    wanted = parse_endings(ending, SPELLINGS) or frozenset(DEFAULT_ENDINGS)
    traps = find_lookalikes(
        lexicon,
        Query(draw.band, wanted),
        count=draw.size,
        rng=random.Random(draw.seed),
        overlay=overlay,
    )
    focus = ", ".join(f"-{spelled}" for spelled in SPELLINGS if spelled in wanted)
    return Made(lookalikes_document(traps, focus, draw.seed, draw.band))


def sort(
    lexicon: Lexicon,
    ending: str,
    by: By,
    draw: Draw,
    overlay: Overlay = NO_OVERLAY,
    words: Sequence[Line] = (),
    what: str = "line",
) -> Sorted:
    """Sort words of the vocabulary, or a teacher's own, by their endings.

    Args:
        lexicon: the open lexicon.
        ending: spelled endings wanted, parted by commas; empty for the usual ones.
        by: what they are sorted by.
        draw: for words of the vocabulary; its size is that of a group, or by base of bases.
        overlay: a teacher's own words.
        words: the list to sort instead.
        what: what the numbers of the list count.

    Raises:
        PhonodrillError: if no word has such an ending.
    """
    from phonodrill.endings.sort import sort_vocabulary, sort_words

    rng = random.Random(draw.seed)
    usual = SPELLINGS if words else FAMILY if by is By.BASE else DEFAULT_ENDINGS
    wanted = parse_endings(ending, SPELLINGS) or frozenset(usual)
    unfit: list[str] = []
    left_out: list[str] = []
    if words:
        usable, unfit = _fit_words(lexicon, words, what)
        suffixes = dict.fromkeys(SUFFIX_OF[spelled] for spelled in SPELLINGS if spelled in wanted)
        result = sort_words(lexicon, usable, by, rng, suffixes)
        numbers = {line.word: line.number for line in reversed(words)}
        left_out = [
            f"{what} {numbers[w]}: {named(w)} left out: {why}" for w, why in result.left_out
        ]
    else:
        query = Query(draw.band, wanted, known=draw.known)
        result = sort_vocabulary(lexicon, query, by, draw.size, rng, overlay)
    if not result.groups:
        first = "".join(f": {note}" for note in (unfit + left_out)[:1])
        raise PhonodrillError(
            f"no word here has such an ending{first}", "words such as torches, ropes, skies"
        )
    return Sorted(result, tuple(unfit), tuple(left_out))


def fit_word(word: str, lexicon: Lexicon, gate: Gate) -> str:
    """Return the word that was given, if it is one and may be shown.

    Raises:
        PhonodrillError: if it is no word of letters, too long, or not for class.
    """
    text = word.strip().replace("’", "'")
    letters = text.replace("'", "").replace("-", "")
    if not (letters.isascii() and letters.isalpha()) or text[0] in "'-":
        raise PhonodrillError(f"{word!r} is not a word of letters", "one word: ferry")
    if len(text) > LONGEST_WORD:
        raise PhonodrillError(f"a word of {len(text)} letters", f"at most {LONGEST_WORD} letters")
    if not is_fit(text.lower(), lexicon, gate):
        raise PhonodrillError(NOT_FOR_CLASS, "another word")
    # A capital letter makes a name, which keeps its y; capitals throughout are no more than that.
    return text.lower() if text.isupper() else text


def _fit_words(lexicon: Lexicon, words: Iterable[Line], what: str) -> tuple[list[str], list[str]]:
    gate = open_gate(lexicon)

    def why_not(word: str) -> str | None:
        return None if is_fit(word, lexicon, gate) else "not a word for class"

    return problems_of(words, why_not, what)


def _may_show_form(form: Form, lexicon: Lexicon, gate: Gate) -> bool:
    normals = [form.said.normal] if form.said else []
    spelling = form.form.lower()
    return is_fit(spelling, lexicon, gate) and gate.allows(spelling, normals, alone=False)


def _said(phones: str) -> Pronunciation:
    from phonodrill.sounds.normal import normal_form
    from phonodrill.sounds.notation import parse_arpabet

    sounds, stress = parse_arpabet(phones.upper())
    if not stress:
        raise PhonodrillError(f"no vowel in {phones!r}", '--sounds "G AH1 CH"')
    return Pronunciation(sounds, stress, normal_form(sounds, stress))
