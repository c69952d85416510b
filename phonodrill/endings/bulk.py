"""What the ending says in many words at once: a text, a corpus, a whole lexicon."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from phonodrill.endings.classify import classify
from phonodrill.endings.sounds import label_of_last
from phonodrill.lexicon.entry import INFLECTIONS
from phonodrill.lexicon.store import Lexicon


def sounds_of_endings(words: Iterable[str], lexicon: Lexicon) -> Iterator[tuple[str, str]]:
    """Yield each word with the label of what its ending says.

    All listed forms are read at once, so this pays from some thousand words on; for
    few words, and for all that is known of them, see :func:`classify`.

    Args:
        words: lower case.
        lexicon: the open lexicon.

    Yields:
        The word and its label; empty if it is no regular form that dictionaries list.
    """
    labels = _listed(lexicon)
    exceptions = lexicon.ending_exceptions()
    for word in words:
        label = labels.get(word, "")
        if label is None:
            # Bases that would say it differently: the slow way decides.
            ways = classify(word, lexicon, exceptions)
            label = labels[word] = ways[0].sound if ways else ""
        yield word, label


def _listed(lexicon: Lexicon) -> dict[str, str | None]:
    """Return the label of every listed form; None where its bases do not agree."""
    labels: dict[str, str | None] = {}
    for form, inflection, ending, last in lexicon.listed_forms():
        label = label_of_last(last, INFLECTIONS[inflection], ending) if ending else None
        if labels.setdefault(form, label) != label:
            labels[form] = None
    judged = [*(form for form, _ in lexicon.ending_exceptions()), *lexicon.not_inflected()]
    return labels | dict.fromkeys(judged)
