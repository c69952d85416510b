"""A teacher's own words: add, block and take out again."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from phonodrill.errors import PhonodrillError, UnknownWordError
from phonodrill.gate import open_gate
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import Overlay, Rule, parse_rule
from phonodrill.selection import may_be_shown, nearest_words
from phonodrill.services.word_list import NOT_FOR_CLASS, is_fit


def add_words(lexicon: Lexicon, overlay: Overlay, words: Iterable[str], band: int) -> Overlay:
    """Use words as words of a band; a student's name may be added too.

    Args:
        lexicon: the open lexicon.
        overlay: the lists so far.
        words: those to add.
        band: 1 to 3.

    Raises:
        PhonodrillError: if a word is not known, or not for class; nothing is added then.
    """
    gate = open_gate(lexicon)
    plain = _plain(words)
    for word in plain:
        entry = lexicon.get(word)
        if entry is None:
            near = nearest_words(lexicon, word)
            raise UnknownWordError(
                f"{word!r} is not in the lexicon, so its sounds are not known",
                f"phonodrill words add {near[0]}" if near else "check the spelling",
            )
        if not may_be_shown(entry, gate):
            raise PhonodrillError(NOT_FOR_CLASS, "another word")
    return _changed(overlay, {word: Rule("add", word, band) for word in plain})


def block_words(lexicon: Lexicon, overlay: Overlay, words: Iterable[str]) -> Overlay:
    """Never use words, nor what sounds like them.

    Raises:
        PhonodrillError: if one is no word, or is barred anyway: then it is not written
            down either.
    """
    gate = open_gate(lexicon)
    plain = _plain(words)
    if not all(is_fit(word, lexicon, gate) for word in plain):
        raise PhonodrillError(f"{NOT_FOR_CLASS} and never used anyway", "another word")
    return _changed(overlay, {word: Rule("block", word) for word in plain})


def remove_words(overlay: Overlay, words: Iterable[str]) -> Overlay:
    """Take words out of the lists again.

    Raises:
        PhonodrillError: if one is not in them.
    """
    plain = _plain(words)
    for word in plain:
        if word not in overlay.rules:
            raise PhonodrillError(f"{word!r} is not in your lists", "phonodrill words list")
    return _changed(overlay, dict.fromkeys(plain))


def _plain(words: Iterable[str]) -> list[str]:
    plain = [word.strip().lower().replace("’", "'") for word in words]
    if not plain:
        raise PhonodrillError("there is no word", "one word or more")
    for word in plain:
        # What cannot be read back would be lost, and the lines around it harmed.
        if parse_rule(f"block {word}") != Rule("block", word):
            raise PhonodrillError(f"{word!r} is not a word of letters", "one word: ferry")
    return plain


def _changed(overlay: Overlay, rules: Mapping[str, Rule | None]) -> Overlay:
    kept = {**overlay.rules, **rules}
    return Overlay({word: rule for word, rule in kept.items() if rule})
