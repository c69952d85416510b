"""Short sentences for a word, from the bank, past the gate."""

from __future__ import annotations

import re

from phonodrill.gate import Gate
from phonodrill.lexicon.entry import Sentence
from phonodrill.lexicon.store import Lexicon
from phonodrill.remembered import recall

GAP = "____"
_WORD = re.compile(r"[^\W\d_]+(?:['’-][^\W\d_]+)*")


def words_of(text: str) -> list[str]:
    """Split a sentence into its words, lower case.

    >>> words_of("Let's look for gulls!")
    ["let's", 'look', 'for', 'gulls']
    """
    return [word.lower().replace("’", "'") for word in _WORD.findall(text)]


def every_sentence_word(lexicon: Lexicon) -> frozenset[str]:
    """Return the words that sentences of the bank are for; read only once."""

    def read() -> frozenset[str]:
        return frozenset(sentence.word for sentence in lexicon.all_sentences())

    return recall(lexicon, "words with sentences", read)


def cloze(sentence: Sentence) -> str:
    """Leave a gap for the word of a sentence.

    >>> cloze(Sentence("gulls", "plural noun", "sea", "Gulls rest on the ropes."))
    '____ rest on the ropes.'
    """
    return re.sub(rf"\b{re.escape(sentence.word)}\b", GAP, sentence.text, flags=re.IGNORECASE)


def entry_of(lexicon: Lexicon, word: str) -> str:
    """Return the spelling under which the lexicon knows a word of a sentence.

    A possessive is known by its owner: *sister's* by *sister*.
    """
    owner = word.removesuffix("'s")
    is_contraction = (found := lexicon.get(word)) is not None and not found.is_name
    return word if is_contraction else owner


def passes(sentence: Sentence, lexicon: Lexicon, gate: Gate) -> bool:
    """Whether every word of a sentence may be said in it, and no two run into an unfit one."""
    before: list[str] = []
    for word in words_of(sentence.text):
        entry = lexicon.get(entry_of(lexicon, word))
        normals = [said.normal for said in entry.usable_pronunciations] if entry else []
        if not gate.allows(word, normals, alone=False) or not gate.allows_join(before, normals):
            return False
        before = normals
    return True


def find_sentences(lexicon: Lexicon, gate: Gate, word: str) -> list[Sentence]:
    """Return the sentences for a word in this very form.

    Args:
        lexicon: the open lexicon.
        gate: the never-say check, with the teacher's blocked words.
        word: the form wanted, in any case.
    """
    if word.lower() in gate.spellings:
        return []
    return [s for s in lexicon.sentences(word) if passes(s, lexicon, gate)]


def words_with_sentences(lexicon: Lexicon, word: str) -> list[str]:
    """Return other forms of a word, its base among them, that have sentences."""
    bases = [row.base for row in lexicon.bases_of(word.lower())] or [word.lower()]
    forms = [row.form for base in bases for row in lexicon.forms_of(base)]
    return [other for other in dict.fromkeys([*bases, *forms]) if lexicon.sentences(other)]
