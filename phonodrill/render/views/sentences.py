"""How sentences are shown."""

from __future__ import annotations

from phonodrill.lexicon.entry import Sentence
from phonodrill.render.document import Document, Section, Table
from phonodrill.sentences import cloze


def document(word: str, sentences: list[Sentence], *, gap: bool) -> Document:
    """Show the sentences for a word, whole or with a gap for it."""
    records = [
        {
            "word": word,
            "sentence": sentence.text,
            "cloze": cloze(sentence),
            "part_of_speech": sentence.part_of_speech,
            "topic": sentence.topic,
        }
        for sentence in sentences
    ]
    shown = "cloze" if gap else "sentence"
    rows = tuple((record[shown], record["part_of_speech"], record["topic"]) for record in records)
    return Document(
        f"Sentences with a gap for “{word}”" if gap else f"Sentences with “{word}”",
        "",
        (Section("", Table(("sentence", "used as", "about"), rows)),),
        {"word": word, "sentences": records},
        records,
    )
