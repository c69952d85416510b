"""``phonodrill words``: a teacher's own words."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver, write_whole
from phonodrill.cli.own_words import own_words, own_words_path
from phonodrill.errors import PhonodrillError, UnknownWordError
from phonodrill.gate import open_gate
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import Overlay, Rule, parse_rule, write_overlay
from phonodrill.render.views import words as view
from phonodrill.selection import may_be_shown, nearest_words

app = typer.Typer(add_completion=False, rich_markup_mode=None)
WordsArgument = Annotated[list[str], typer.Argument(help="One word or more.")]


@app.callback(invoke_without_command=True)
def words(context: typer.Context) -> None:
    """Keep your own words: add some, block some. They count at once."""
    if context.invoked_subcommand is None:
        typer.echo(context.get_help())


@app.command("add")
def add(words: WordsArgument, band: options.BandOption = 1) -> None:
    """Use these words as words of a band; a student's name may be added too."""
    with Lexicon() as lexicon:
        gate = open_gate(lexicon)
        for word in words:
            entry = lexicon.get(word.strip())
            if entry is None:
                near = nearest_words(lexicon, word)
                raise UnknownWordError(
                    f"{word!r} is not in the lexicon, so its sounds are not known",
                    f"phonodrill words add {near[0]}" if near else "check the spelling",
                )
            if not may_be_shown(entry, gate):
                raise PhonodrillError("that is not a word for class", "another word")
    _change({word: Rule("add", word, band) for word in _plain(words)})


@app.command("block")
def block(words: WordsArgument) -> None:
    """Never use these words, nor what sounds like them."""
    _change({word: Rule("block", word) for word in _plain(words)})


@app.command("remove")
def remove(words: WordsArgument) -> None:
    """Take words out of your lists again."""
    overlay = own_words()
    for word in _plain(words):
        if word not in overlay.rules:
            raise PhonodrillError(f"{word!r} is not in your lists", "phonodrill words list")
    _change(dict.fromkeys(_plain(words)))


@app.command("list")
def list_words(format_: options.FormatOption = None, out: options.OutOption = None) -> None:
    """Show your words; --out FILE exports them."""
    deliver(view.document(own_words(), str(own_words_path())), format_, out)


def _plain(words: list[str]) -> list[str]:
    return [word.strip().lower() for word in words]


def _change(rules: Mapping[str, Rule | None]) -> None:
    for word, rule in rules.items():
        if rule and parse_rule(rule.line()) is None:
            raise PhonodrillError(f"{word!r} has more in it than letters", "a single word")
    path = own_words_path()
    kept = {**own_words().rules, **rules}
    overlay = Overlay({word: rule for word, rule in kept.items() if rule})
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise PhonodrillError(
            f"cannot make the folder {path.parent}: {error.strerror}", "check its permissions"
        ) from error
    write_whole(path, write_overlay(overlay).encode())
