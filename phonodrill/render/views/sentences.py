"""How sentences are shown."""

from __future__ import annotations

from typing import TYPE_CHECKING

from phonodrill.lexicon.entry import Sentence
from phonodrill.render.document import Document, Section, Table
from phonodrill.sentences import cloze

if TYPE_CHECKING:
    from phonodrill.render.fields import words


def document(word: str, sentences: list[Sentence], *, gap: bool) -> Document:
    """Show the sentences for a word, whole or with a gap for it."""
    records: list[words.Sentence] = [
        {
            "word": word,
            "sentence": sentence.text,
            "cloze": cloze(sentence),
            "part_of_speech": sentence.part_of_speech,
            "topic": sentence.topic,
        }
        for sentence in sentences
    ]
    rows = tuple(
        (row["cloze"] if gap else row["sentence"], row["part_of_speech"], row["topic"])
        for row in records
    )
    data: words.Sentences = {"word": word, "sentences": records}
    return Document(
        f"Sentences with a gap for “{word}”" if gap else f"Sentences with “{word}”",
        "",
        (Section("", Table(("sentence", "used as", "about"), rows)),),
        data,
        records,
    )
