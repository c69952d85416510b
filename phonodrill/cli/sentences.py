"""``phonodrill sentences``: short sentences with a word."""

from __future__ import annotations

from typing import Annotated

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.own_words import own_words
from phonodrill.errors import PhonodrillError
from phonodrill.gate import open_gate
from phonodrill.lexicon.store import Lexicon
from phonodrill.render.views import sentences as view
from phonodrill.sentences import find_sentences, words_with_sentences

app = typer.Typer(add_completion=False, rich_markup_mode=None)


@app.command()
def sentences(
    word: Annotated[str, typer.Argument(help="The word, in the form wanted: ferries.")],
    cloze: Annotated[bool, typer.Option("--cloze", help="Leave a gap for the word.")] = False,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Print short sentences with a word, or with a gap for it."""
    with Lexicon() as lexicon:
        gate = open_gate(lexicon, own_words().words("block"))
        found = find_sentences(lexicon, gate, word.strip())
        if not found:
            others = words_with_sentences(lexicon, word.strip())
            hint = " or ".join(f"phonodrill sentences {other}" for other in others[:3])
            raise PhonodrillError(f"no sentence with {word!r}", hint or "another word")
    deliver(view.document(word.strip().lower(), found, gap=cloze), format_, out)
