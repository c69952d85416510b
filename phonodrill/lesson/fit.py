"""Whether words and texts may stand in a lesson, and why not."""

from __future__ import annotations

from phonodrill.errors import PhonodrillError
from phonodrill.lesson.candidates import builds_cleanly
from phonodrill.lesson.compose import Prepared
from phonodrill.lesson.words import Words
from phonodrill.selection import NO_CAPITAL, may_be_said, nearest_words
from phonodrill.sentences import entry_of, words_of

_SHOWN = {"listed": "sound out", "bases": "find the base"}
"""Section -> what it is called in the lesson, if not so."""


def check_words(ready: Prepared, words: Words) -> None:
    """Check that every word fits its section.

    Raises:
        PhonodrillError: naming the first word that does not, and why.
    """
    known, rivals = ready.vocabulary.words, ready.vocabulary.rivals
    for section, listed in words._asdict().items():
        if section == "notes":
            continue
        for place, word in enumerate(listed):
            if word in listed[:place]:
                raise PhonodrillError(f"{_shown(section)}: {word} is there twice", "another word")
            fits = word in known or (section == "sort" and word in rivals)
            is_review = word in words.review or word in ready.context.request.review
            if section == "review" or (section in ("listed", "dictation") and is_review):
                fits = ready.context.pool.find(word) is not None
            if section == "build" and fits and not builds_cleanly(word, ready.context):
                raise PhonodrillError(
                    f"build: a part of {word!r} is not for class", "another word to build"
                )
            if not fits:
                raise PhonodrillError(
                    f"{_shown(section)}: {why_unfit(ready, word)}", _hint(ready, word)
                )
    twice = [word for word in words.dictation if word in words.sort]
    if twice:
        raise PhonodrillError(
            f"dictation: {twice[0]} is among the words just sorted", "another word to dictate"
        )


def _shown(section: str) -> str:
    return _SHOWN.get(section, section)


def why_unfit(ready: Prepared, word: str) -> str:
    """Say why a word may not be used for the focus."""
    context = ready.context
    entry = context.pool.entry_of(word)
    if entry is None:
        return f"{word!r} is not in the lexicon"
    if not may_be_said(entry, context.gate):
        unfit = NO_CAPITAL if entry.needs_capital else "a word that is not for class"
        return unfit.format(word=word)
    if entry.band > context.request.band:
        return f"{word!r} is of band {entry.band}, the lesson of band {context.request.band}"
    if not context.pool.can_read(entry):
        return f"{word!r} asks for letters that were not taught"
    if entry.is_heteronym:
        return f"{word!r} is said in two ways"
    return f"{word!r} is no plain word for {context.focus.title}"


def _hint(ready: Prepared, word: str) -> str:
    lexicon = ready.context.lexicon
    if lexicon.get(word):
        return "another word"
    near = ", ".join(nearest_words(lexicon, word))
    return f"did you mean {near}?" if near else "another word"


def check_text(
    ready: Prepared, text: str, where: str, *, must_have: str = "", known: bool = True
) -> None:
    """Check that a text may be read in class.

    Args:
        ready: what the lesson rests on.
        text: a word, a sentence, or wording of the teacher's.
        where: for the message.
        must_have: a word that has to stand in it.
        known: whether every word has to be in the lexicon.

    Raises:
        PhonodrillError: if a word of it is not known, or not for class.
    """
    context = ready.context
    words = words_of(text)
    before: list[str] = []
    for word in words:
        entry = context.lexicon.get(entry_of(context.lexicon, word))
        if entry is None and known:
            raise PhonodrillError(f"{where}: {word!r} is not in the lexicon", _hint(ready, word))
        normals = [said.normal for said in entry.usable_pronunciations] if entry else []
        fits = context.gate.allows(word, normals, alone=False)
        if not fits or not context.gate.allows_join(before, normals):
            raise PhonodrillError(f"{where}: a word that is not for class", "other words")
        before = normals
    if must_have and must_have not in words:
        raise PhonodrillError(
            f"{where}: {must_have!r} is not in the sentence", "a sentence with it"
        )
