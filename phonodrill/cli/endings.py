"""``phonodrill endings``: words by their endings."""

from __future__ import annotations

import random
from enum import StrEnum
from typing import Annotated

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.own_words import own_words
from phonodrill.cli.report import report
from phonodrill.endings.add import Form, add_ending
from phonodrill.endings.rules import SUFFIXES
from phonodrill.endings.sort import By
from phonodrill.endings.together import SPELLINGS, SUFFIX_OF
from phonodrill.errors import PhonodrillError
from phonodrill.gate import Gate, open_gate
from phonodrill.lexicon.entry import Pronunciation
from phonodrill.lexicon.store import Lexicon
from phonodrill.selection import Query, may_be_shown
from phonodrill.services.endings import parse_endings

DEFAULT_ENDINGS = ("s", "es", "ies")
FAMILY = ("s", "es", "ies", "ves", "ed", "ing", "er", "est")
"""Endings that show a base with all its forms."""
LONGEST_WORD = 40
Suffix = StrEnum("Suffix", {s.strip("'").upper() + "_" * ("'" in s): s for s in SUFFIXES})  # type: ignore[misc]
_S = Suffix("s")
app = typer.Typer(add_completion=False, rich_markup_mode=None)

SuffixOption = Annotated[
    Suffix, typer.Option("--ending", help='Which ending; "\'s" is the possessive.')
]


@app.callback(invoke_without_command=True)
def endings(context: typer.Context) -> None:
    """Add an ending, take it off, see its rules and traps, sort words by it."""
    if context.invoked_subcommand is None:
        typer.echo(context.get_help())


@app.command("add")
def add(
    word: Annotated[str, typer.Argument(help="The base word, real or made up: ferry, gutch.")],
    ending: SuffixOption = _S,
    sounds: Annotated[
        str, typer.Option("--sounds", help="How a made-up base is said, as in CMUdict: G AH1 CH.")
    ] = "",
    notation: options.NotationOption = None,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Add an ending to a word: the form, what happens to the letters, the rule, the sound."""
    from phonodrill.render.views.endings import added_document

    with Lexicon() as lexicon:
        gate = open_gate(lexicon, own_words().words("block"))
        base = _fit_word(word, lexicon, gate)
        said = _said(sounds) if sounds else None
        result = add_ending(base, str(ending), lexicon, said=said)
        forms = tuple(form for form in result.forms if _may_show_form(form, lexicon, gate))
        fit = bool(forms) if result.forms else all(_is_fit(w, lexicon, gate) for w in result.bases)
    if not fit:
        raise PhonodrillError("that is not a word for class", "another word")
    deliver(added_document(result._replace(forms=forms), notation), format_, out)


@app.command("base")
def base(
    word: Annotated[str, typer.Argument(help="A word with an ending: ferries, skated.")],
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Take the ending off: every base a word may come from, the likeliest first."""
    from phonodrill.endings.undo import find_bases
    from phonodrill.render.views.endings import bases_document

    with Lexicon() as lexicon:
        gate = open_gate(lexicon, own_words().words("block"))
        form = _fit_word(word, lexicon, gate)
        result = find_bases(form.lower(), lexicon, gate)
        fit = tuple(o for o in result.origins if _is_fit(o.base, lexicon, gate))
    if result.origins and not fit:
        raise PhonodrillError("that is not a word for class", "another word")
    deliver(bases_document(result._replace(form=form, origins=fit)), format_, out)


@app.command("table")
def table(
    ending: SuffixOption = _S,
    band: options.BandOption = 2,
    count: options.CountOption = 2,
    seed: options.SeedOption = None,
    notation: options.NotationOption = None,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Print the rule card of an ending, with examples from the vocabulary.

    --count is the number of examples for each kind of base.
    """
    from phonodrill.endings.table import make_card
    from phonodrill.render.views.endings import card_document

    count = options.check_count(count)
    seed = options.seed_or_new(seed)
    with Lexicon() as lexicon:
        card = make_card(
            lexicon,
            str(ending),
            band=band,
            per_kind=count,
            rng=random.Random(seed),
            overlay=own_words(),
        )
    deliver(card_document(card, notation, seed, band), format_, out)


@app.command("lookalikes")
def lookalikes(
    ending: Annotated[
        str, typer.Option("--ending", help=f"The lesson's focus: {', '.join(SPELLINGS)}.")
    ] = ",".join(DEFAULT_ENDINGS),
    band: options.BandOption = 2,
    count: options.CountOption = 8,
    seed: options.SeedOption = None,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """List traps for a lesson: words that only look inflected, odd sounds, two rules.

    --count is the number of words of each kind.
    """
    from phonodrill.endings.lookalikes import find_lookalikes
    from phonodrill.render.views.endings import lookalikes_document

    count = options.check_count(count)
    wanted = _parse(ending) or frozenset(DEFAULT_ENDINGS)
    seed = options.seed_or_new(seed)
    with Lexicon() as lexicon:
        traps = find_lookalikes(
            lexicon,
            Query(band, wanted),
            count=count,
            rng=random.Random(seed),
            overlay=own_words(),
        )
    focus = ", ".join(f"-{spelled}" for spelled in SPELLINGS if spelled in wanted)
    deliver(lookalikes_document(traps, focus, seed, band), format_, out)


@app.command("sort")
def sort(
    ending: Annotated[
        str,
        typer.Option(
            "--ending",
            help=f"Which spellings: {', '.join(SPELLINGS)}; by default s, es, ies.",
        ),
    ] = "",
    by: Annotated[
        By, typer.Option("--by", help="Sort by sound, spelling, rule or base.")
    ] = By.SOUND,
    taught: options.TaughtOption = None,
    band: options.BandOption = 2,
    words: options.WordsOption = None,
    count: options.CountOption = 8,
    seed: options.SeedOption = None,
    notation: options.NotationOption = None,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Print words sorted by what their ending says, with the answer key.

    --count is the number of words in each group, or of bases with --by base; with
    --words all are sorted.
    """
    from phonodrill.cli.words_file import problems_of, read_words
    from phonodrill.endings.sort import sort_vocabulary, sort_words
    from phonodrill.render.views import sort as view

    count = options.check_count(count)
    usual = FAMILY if by is By.BASE else DEFAULT_ENDINGS
    wanted = _parse(ending) or frozenset(SPELLINGS if words else usual)
    seed = options.seed_or_new(seed)
    rng = random.Random(seed)
    with Lexicon() as lexicon:
        if words:
            gate = open_gate(lexicon)

            def why_not(word: str) -> str | None:
                return None if _is_fit(word, lexicon, gate) else "not a word for class"

            lines = read_words(words)
            usable, problems = problems_of(lines, why_not)
            suffixes = dict.fromkeys(
                SUFFIX_OF[spelled] for spelled in SPELLINGS if spelled in wanted
            )
            result = sort_words(lexicon, usable, by, rng, suffixes)
            numbers = {line.word: line.number for line in reversed(lines)}
            problems += [f"line {numbers[w]}: {w!r} left out: {why}" for w, why in result.left_out]
            report(problems)
        else:
            query = Query(band, wanted, known=options.known_from(taught, lexicon))
            result = sort_vocabulary(lexicon, query, by, count, rng, own_words())
    if not result.groups:
        raise PhonodrillError(
            "no word here has such an ending", "words such as torches, ropes, skies"
        )
    deliver(view.document(result, notation, seed), format_, out)


def _parse(text: str) -> frozenset[str]:
    return parse_endings(text, SPELLINGS)


def _fit_word(word: str, lexicon: Lexicon, gate: Gate) -> str:
    """Return the word a command was given, if it is one and may be shown.

    Raises:
        PhonodrillError: if it is no word of letters, too long, or not for class.
    """
    text = word.strip().replace("’", "'")
    letters = text.replace("'", "").replace("-", "")
    if not (letters.isascii() and letters.isalpha()) or text[0] in "'-":
        raise PhonodrillError(f"{word!r} is not a word of letters", "one word: ferry")
    if len(text) > LONGEST_WORD:
        raise PhonodrillError(f"a word of {len(text)} letters", f"at most {LONGEST_WORD} letters")
    if not _is_fit(text.lower(), lexicon, gate):
        raise PhonodrillError("that is not a word for class", "another word")
    return text


def _may_show_form(form: Form, lexicon: Lexicon, gate: Gate) -> bool:
    normals = [form.said.normal] if form.said else []
    spelling = form.form.lower()
    return _is_fit(spelling, lexicon, gate) and gate.allows(spelling, normals, alone=False)


def _is_fit(word: str, lexicon: Lexicon, gate: Gate) -> bool:
    entry = lexicon.get(word)
    return may_be_shown(entry, gate) if entry else gate.allows(word, [], alone=False)


def _said(phones: str) -> Pronunciation:
    from phonodrill.sounds.normal import normal_form
    from phonodrill.sounds.notation import parse_arpabet

    sounds, stress = parse_arpabet(phones.upper())
    if not stress:
        raise PhonodrillError(f"no vowel in {phones!r}", '--sounds "G AH1 CH"')
    return Pronunciation(sounds, stress, normal_form(sounds, stress))
