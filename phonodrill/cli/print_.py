"""``phonodrill print``: cards, sorting mats, sound boxes and lists for a tutor's words."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from pathlib import Path
from typing import Annotated, Optional

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver, is_named
from phonodrill.cli.headings import read_headings
from phonodrill.cli.print_words import ENDINGS, Source, choose_words, open_store
from phonodrill.cli.report import report
from phonodrill.endings.sort import By
from phonodrill.errors import PhonodrillError
from phonodrill.paper import cards as card_pages
from phonodrill.paper import mat as mat_pages
from phonodrill.paper import sheets
from phonodrill.paper.page import Card, Duplex, Page, Paper, Text
from phonodrill.paper.printed import Printed, print_words
from phonodrill.render.document import Document, counted
from phonodrill.render.views import paper as view
from phonodrill.render.views import sort as sort_view
from phonodrill.sounds.notation import SCRIPT, Notation
from phonodrill.sounds.units import RVowels
from phonodrill.whole_file import write_whole

DEFAULT_COUNT = 24
SORT_NOTE = "Say each word. Lay its card in the column where it belongs."

WordsArgument = Annotated[Optional[list[str]], typer.Argument(help="The words to print.")]
EndingOption = Annotated[
    str, typer.Option("--ending", help=f"Draw words with these endings: {', '.join(ENDINGS)}.")
]
PaperOption = Annotated[Paper, typer.Option("--paper", help="Size of the sheet.")]
SizeOption = Annotated[card_pages.Size, typer.Option("--size", help="24, 18 or 8 cards a sheet.")]
DuplexOption = Annotated[
    Duplex, typer.Option("--duplex", help="Edge at which the printer turns the sheet.")
]
PdfOutOption = Annotated[
    Optional[Path], typer.Option("--out", help="File to write; NAME.pdf for paper.")
]
app = typer.Typer(add_completion=False, rich_markup_mode=None)


class Part(StrEnum):
    """A part of the sound-box pages."""

    ALL = "all"
    BOXES = "boxes"
    LINES = "lines"
    KEY = "key"


@app.callback(invoke_without_command=True)
def print_(context: typer.Context) -> None:
    """Print cards, sorting mats, sound boxes and lists of words: --out NAME.pdf."""
    if context.invoked_subcommand is None:
        typer.echo(context.get_help())


@app.command("cards")
def cards(
    words: WordsArgument = None,
    file: options.WordsOption = None,
    ending: EndingOption = "",
    back: Annotated[
        card_pages.Back, typer.Option("--back", help="What stands on the back.")
    ] = card_pages.Back.SOUNDS,
    size: SizeOption = card_pages.Size.MEDIUM,
    duplex: DuplexOption = Duplex.LONG,
    band: options.BandOption = 2,
    taught: options.TaughtOption = None,
    count: options.CountOption = DEFAULT_COUNT,
    seed: options.SeedOption = None,
    notation: options.NotationOption = None,
    paper: PaperOption = Paper.LETTER,
    format_: options.FormatOption = None,
    out: PdfOutOption = None,
) -> None:
    """Print word cards to cut out, for double-sided printing."""
    source = _source(words, file, ending, band, taught, count, seed)
    printed = _printed(source, notation)
    made = [card_pages.card_of(word, back) for word in printed]
    title = "Word cards"
    page = card_pages.lay_out(title, made, card_pages.GRIDS[size], duplex)
    _write([page], view.cards(title, _about(printed, source), made), source, paper, format_, out)


@app.command("mat")
def mat(
    words: WordsArgument = None,
    file: options.WordsOption = None,
    ending: EndingOption = "",
    by: Annotated[
        By, typer.Option("--by", help="Sort endings by sound, spelling or rule.")
    ] = By.SOUND,
    headings: Annotated[
        str, typer.Option("--headings", help="Your own columns: sh,ch,th or /ī/,/ĭ/ or -s,-es.")
    ] = "",
    blank: Annotated[
        int, typer.Option("--blank", min=0, max=200, help="How many blank cards follow.")
    ] = 18,
    with_cards: Annotated[
        bool, typer.Option("--cards", help="Also print the cards of the words.")
    ] = False,
    size: SizeOption = card_pages.Size.MEDIUM,
    band: options.BandOption = 2,
    taught: options.TaughtOption = None,
    count: options.CountOption = DEFAULT_COUNT,
    seed: options.SeedOption = None,
    notation: options.NotationOption = None,
    paper: PaperOption = Paper.LETTER,
    format_: options.FormatOption = None,
    out: PdfOutOption = None,
) -> None:
    """Print a mat to sort cards on, blank cards, and the key."""
    source = _source(words, file, ending, band, taught, count, seed)
    style = notation or SCRIPT
    with open_store() as store:
        columns_wanted = read_headings(headings, store.lexicon, store.gate, style)
        needs_words = bool(words or file or ending) or not columns_wanted
        entries = choose_words(store, source, by) if needs_words else []
        printed = print_words(store.lexicon, store.gate, entries, style)
    title = "Sort by the heading" if columns_wanted else sort_view.TITLES[by]
    columns = _columns(printed, columns_wanted, by)
    grid = card_pages.GRIDS[size]
    pages: list[Page] = [mat_pages.mat_of(title, columns, SORT_NOTE)]
    if with_cards and printed:
        fronts = [card_pages.card_of(word, card_pages.Back.NONE) for word in printed]
        pages.append(card_pages.lay_out("Word cards", fronts, grid, Duplex.NONE))
    if blank:
        pages.append(card_pages.lay_out("Blank cards", [Card()] * blank, grid, Duplex.NONE))
    about = _about(printed, source) if printed else ""
    if printed:
        pages.append(sheets.mat_key(columns, f"Key: {title.lower()}", about))
    _write(pages, view.mat(title, about, columns), source, paper, format_, out)


@app.command("boxes")
def boxes(
    words: WordsArgument = None,
    file: options.WordsOption = None,
    ending: EndingOption = "",
    part: Annotated[Part, typer.Option("--part", help="Only one part.")] = Part.ALL,
    r_vowels: Annotated[
        RVowels, typer.Option("--r-vowels", help="Give a vowel with its R two boxes or one.")
    ] = RVowels.TWO,
    band: options.BandOption = 2,
    taught: options.TaughtOption = None,
    count: options.CountOption = 10,
    seed: options.SeedOption = None,
    notation: options.NotationOption = None,
    paper: PaperOption = Paper.LETTER,
    format_: options.FormatOption = None,
    out: PdfOutOption = None,
) -> None:
    """Print sound boxes, one box a sound, words in chunks, and the key."""
    source = _source(words, file, ending, band, taught, count, seed)
    printed = _printed(source, notation, r_vowels)
    report([f"{w.word!r} left out: its letters do not spell it" for w in printed if not w.split])
    printed = tuple(word for word in printed if word.split)
    if not printed:
        raise PhonodrillError("no word here has letters that spell its sounds", "other words")
    parts: dict[Part, Page] = {
        Part.BOXES: sheets.boxes_of(printed, filled=False),
        Part.LINES: sheets.chunk_lines_of(printed),
        Part.KEY: sheets.boxes_of(printed, filled=True, title="Key: sound boxes"),
    }
    pages = list(parts.values()) if part is Part.ALL else [parts[part]]
    document = view.boxes("Sound boxes", _about(printed, source), printed)
    _write(pages, document, source, paper, format_, out)


@app.command("list")
def list_(
    words: WordsArgument = None,
    file: options.WordsOption = None,
    ending: EndingOption = "",
    key: Annotated[bool, typer.Option("--key/--no-key", help="With the key.")] = True,
    band: options.BandOption = 2,
    taught: options.TaughtOption = None,
    count: options.CountOption = DEFAULT_COUNT,
    seed: options.SeedOption = None,
    notation: options.NotationOption = None,
    paper: PaperOption = Paper.LETTER,
    format_: options.FormatOption = None,
    out: PdfOutOption = None,
) -> None:
    """Print a list of words in large type, with a key of their sounds."""
    source = _source(words, file, ending, band, taught, count, seed)
    printed = _printed(source, notation)
    title, about = "Words to read", _about(printed, source)
    pages: list[Page] = [sheets.word_list_of(printed, title)]
    table = sheets.word_key(printed, f"Key: {title.lower()}", about)
    if key:
        pages.append(table)
    document = view.word_list(title, about, printed, table if key else None)
    _write(pages, document, source, paper, format_, out)


def _source(
    words: list[str] | None,
    file: Path | None,
    ending: str,
    band: int,
    taught: Path | None,
    count: int,
    seed: int | None,
) -> Source:
    return Source(
        tuple(words or ()),
        file,
        ending,
        band,
        taught,
        options.check_count(count),
        options.seed_or_new(seed),
    )


def _printed(
    source: Source, notation: Notation | None, r_vowels: RVowels = RVowels.TWO
) -> tuple[Printed, ...]:
    with open_store() as store:
        entries = choose_words(store, source)
        return print_words(store.lexicon, store.gate, entries, notation or SCRIPT, r_vowels)


def _about(printed: Sequence[Printed], source: Source) -> str:
    count = counted(len(printed), "word")
    return f"{count}, {source.about}" if source.about else count


def _columns(printed: Sequence[Printed], headings: Sequence[Text], by: By) -> mat_pages.Columns:
    if headings:
        return mat_pages.by_headings(printed, headings)
    return mat_pages.by_ending(printed, by)


def _write(
    pages: list[Page],
    document: Document,
    source: Source,
    paper: Paper,
    format_: options.Format | None,
    out: Path | None,
) -> None:
    if source.ending:
        document = document._replace(data={"seed": source.seed, **document.data})
    if out is None or not is_named(out, format_, ".pdf"):
        deliver(document, format_, out, paper=paper)
        return
    from phonodrill.lesson.tree import CAUTION
    from phonodrill.render import as_pdf

    footer = " · ".join(filter(None, (CAUTION, document.about)))
    write_whole(out, as_pdf.render(pages, title=document.title, paper=paper, footer=footer))
