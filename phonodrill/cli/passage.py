"""``phonodrill passage``: how much of a text a class can read."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.own_words import own_words
from phonodrill.cli.taught_file import read_taught
from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.store import Lexicon
from phonodrill.render.views import passage as view
from phonodrill.services.passage import check_text, namer
from phonodrill.text_file import read_text

HIGHEST_SIGNS = 1_000_000
"""A long book has fewer; the page takes as many."""
app = typer.Typer(add_completion=False, rich_markup_mode=None)


def read_passage(path: Path) -> str:
    """Return the text of a passage.

    Raises:
        PhonodrillError: if it cannot be read, is no UTF-8 text or too long.
    """
    text = read_text(path)
    if len(text) > HIGHEST_SIGNS:
        raise PhonodrillError(f"{path} is longer than {HIGHEST_SIGNS:,} signs", "a part of it")
    return text


@app.command()
def passage(
    file: Annotated[Path, typer.Argument(help="A plain text file.")],
    taught: options.TaughtOption = None,
    band: options.BandOption = 2,
    notation: options.NotationOption = None,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Check a passage: which words can be read, which were taught whole, which not yet."""
    if taught is None:
        raise PhonodrillError("what has the class been taught?", "--taught FILE, a step a line")
    text = read_passage(file)
    with Lexicon() as lexicon:
        known = read_taught(taught, lexicon).known()
        report = check_text(lexicon, text, known, own_words(), str(file))
        document = view.document(report, namer(lexicon), band, notation)
    deliver(document, format_, out)
