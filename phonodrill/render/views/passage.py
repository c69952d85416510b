"""How a checked passage is shown."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from phonodrill.reading.passage_check import Report, Status, Verdict
from phonodrill.render.document import Document, Mark, Marked, Section, Table, counted
from phonodrill.sounds.notation import SCRIPT, Notation

if TYPE_CHECKING:
    from phonodrill.render.fields import reading

HIDDEN = "•••"
_MARKS = {
    Status.DECODABLE: Mark.NONE,
    Status.WHOLE: Mark.LEARNED,
    Status.NOT_YET: Mark.MISSING,
    Status.UNFIT: Mark.HIDDEN,
}
LEGEND = "[not yet]   {taught whole}   (•••) not for class"


def document(
    report: Report, name_of: Callable[[str], str], highest_band: int, notation: Notation | None
) -> Document:
    """Show the passage with its words marked, and what each still needs.

    Args:
        report: the passage checked.
        name_of: writes a code or an ending as in a taught file.
        highest_band: words beyond it are listed.
        notation: how guessed readings are written.
    """
    verdicts = report.verdicts.values()
    not_yet = sorted(
        (v for v in verdicts if v.status is Status.NOT_YET),
        key=lambda verdict: (-report.counts[verdict.word], verdict.word),
    )
    beyond = [v.word for v in verdicts if _is_beyond(v, highest_band)]
    records = [_record(report, verdict, name_of, highest_band) for verdict in verdicts]
    data: reading.Passage = {
        "words": report.total(),
        "decodable": report.total(Status.DECODABLE),
        "taught_whole": report.total(Status.WHOLE),
        "not_for_class": report.total(Status.UNFIT),
        "numbers": report.numbers,
        "share": round(report.share, 4),
        "not_yet": [
            {
                "word": v.word,
                "count": report.counts[v.word],
                "needs": sorted(map(name_of, v.lacks)),
                "guess": v.is_guess,
            }
            for v in not_yet
        ],
        "next_step": name_of(report.next_step) if report.next_step else "",
        "next_step_words": report.next_words,
        "beyond_band": beyond,
        "guesses": [
            {"word": v.word, "arpabet": v.said.arpabet} for v in verdicts if v.is_guess and v.said
        ],
    }
    sections = [
        Section(f"The passage    {LEGEND}", Marked(_runs(report))),
        Section("Shares", Table(("how", "words", "share"), _shares(report))),
    ]
    if not_yet:
        rows = tuple(
            (
                v.word + " (guess)" * v.is_guess,
                str(report.counts[v.word]),
                ", ".join(sorted(map(name_of, v.lacks))),
            )
            for v in not_yet
        )
        sections.append(Section("Not yet", Table(("word", "times", "needs"), rows)))
    sections += _other_sections(report, beyond, highest_band, notation)
    return Document("Passage check", _about(report, name_of), tuple(sections), data, records)


def _about(report: Report, name_of: Callable[[str], str]) -> str:
    about = f"{report.share:.1%} of {counted(report.total(), 'word')} can be read"
    if report.next_step:
        more = counted(report.next_words, "word")
        about += f"; teaching {name_of(report.next_step)} next would add {more}"
    return about


def _shares(report: Report) -> tuple[tuple[str, ...], ...]:
    words = report.total()
    return tuple(
        (str(status), str(number), f"{number / words:.1%}" if words else "-")
        for status in Status
        if (number := report.total(status)) or status is Status.DECODABLE
    )


def _other_sections(
    report: Report, beyond: list[str], highest_band: int, notation: Notation | None
) -> list[Section]:
    sections = []
    if beyond:
        heading = f"Words beyond band {highest_band}: children may not know them"
        sections.append(Section(heading, Table(("word",), tuple((word,) for word in beyond))))
    style = notation or SCRIPT
    guesses = tuple(
        (v.word, f"/{v.said.spaced(style)}/" if v.said else "no reading found")
        for v in report.verdicts.values()
        if v.is_guess and v.status is not Status.UNFIT
    )
    if guesses:
        heading = "Not in the lexicon: the reading is a guess"
        sections.append(Section(heading, Table(("word", "guess"), guesses)))
    return sections


def _runs(report: Report) -> tuple[tuple[str, Mark], ...]:
    marks = {word: _MARKS[verdict.status] for word, verdict in report.verdicts.items()}
    marks[""] = Mark.NONE
    return tuple(
        (HIDDEN if marks[piece.word] is Mark.HIDDEN else piece.text, marks[piece.word])
        for piece in report.pieces
    )


def _is_beyond(verdict: Verdict, highest_band: int) -> bool:
    is_known_word = verdict.band > 0 and not verdict.is_name
    return is_known_word and verdict.band > highest_band and verdict.status is not Status.UNFIT


def _record(
    report: Report, verdict: Verdict, name_of: Callable[[str], str], highest_band: int
) -> dict[str, object]:
    is_hidden = verdict.status is Status.UNFIT
    return {
        "word": HIDDEN if is_hidden else verdict.word,
        "count": report.counts[verdict.word],
        "status": str(verdict.status),
        "needs": ", ".join(sorted(map(name_of, verdict.lacks))),
        "band": verdict.band,
        "name": verdict.is_name,
        "guess": verdict.is_guess,
        "beyond_band": _is_beyond(verdict, highest_band),
    }
