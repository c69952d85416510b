"""Short sentences with a word."""

from __future__ import annotations

from phonodrill.errors import PhonodrillError
from phonodrill.gate import open_gate
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.render.views import sentences as view
from phonodrill.sentences import find_sentences, words_with_sentences
from phonodrill.services.made import Made
from phonodrill.services.word_list import NOT_FOR_CLASS, is_fit


def sentences(
    lexicon: Lexicon, word: str, *, cloze: bool = False, overlay: Overlay = NO_OVERLAY
) -> Made:
    """Find short sentences with a word in this very form.

    Args:
        lexicon: the open lexicon.
        word: the form wanted.
        cloze: whether a gap is left for it.
        overlay: a teacher's own words.

    Raises:
        PhonodrillError: if there is none, or the word is not for class.
    """
    gate = open_gate(lexicon, overlay.words("block"))
    if not is_fit(word.strip().lower(), lexicon, gate):
        raise PhonodrillError(NOT_FOR_CLASS, "another word")
    found = find_sentences(lexicon, gate, word.strip())
    if not found:
        others = words_with_sentences(lexicon, word.strip())
        hint = " or ".join(f"phonodrill sentences {other}" for other in others[:3])
        raise PhonodrillError(f"no sentence with {word!r}", hint or "another word")
    return Made(view.document(word.strip().lower(), found, gap=cloze))
