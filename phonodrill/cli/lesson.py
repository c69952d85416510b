"""``phonodrill lesson``: plan a whole lesson, render an edited one, swap a word."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Annotated, Any, Optional

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.lesson_out import Wish, deliver_lessons, wish_for
from phonodrill.cli.own_words import own_words
from phonodrill.cli.report import report
from phonodrill.errors import PhonodrillError
from phonodrill.lesson.days import RESTING_LESSONS, make_days
from phonodrill.lesson.plan import FEWEST_MINUTES, MOST_MINUTES
from phonodrill.lesson.request import Request
from phonodrill.lesson.tree import Lesson
from phonodrill.lexicon.store import Lexicon
from phonodrill.one_at_a_time import one_at_a_time
from phonodrill.paper.pack_parts import Part
from phonodrill.paper.page import Paper
from phonodrill.render.views import lesson as view
from phonodrill.services.lesson import Swap, check_days, swap_everywhere
from phonodrill.sounds.notation import SCRIPT
from phonodrill.text_file import read_text

PackOutOption = Annotated[
    Optional[Path],
    typer.Option(
        "--out", help="File to write; NAME.pdf for a pack on paper, NAME.pptx for slides."
    ),
]
app = typer.Typer(add_completion=False, rich_markup_mode=None)


@app.callback(invoke_without_command=True)
def lesson(
    context: typer.Context,
    focus: Annotated[
        str,
        typer.Option(
            "--focus", help="Endings es,ies; a spelling sh, a_e, c=s; a sound /k/; i:e; a task."
        ),
    ] = "",
    minutes: Annotated[
        int, typer.Option("--minutes", help=f"How long, {FEWEST_MINUTES} to {MOST_MINUTES}.")
    ] = 25,
    days: Annotated[
        int, typer.Option("--days", help="A lesson for each of so many days, no word again.")
    ] = 1,
    taught: options.TaughtOption = None,
    series: Annotated[
        str, typer.Option("--series", help="A group's name: no word again too soon.")
    ] = "",
    after: Annotated[
        Optional[Path], typer.Option("--after", help="The same, kept in this file.")
    ] = None,
    rest: Annotated[
        int, typer.Option("--rest", min=0, help="For how many lessons a word rests.")
    ] = RESTING_LESSONS,
    group: Annotated[
        str,
        typer.Option("--group", help="Words this group missed come back; its next focus."),
    ] = "",
    edited: Annotated[
        Optional[Path], typer.Option("--from", help="Render this lesson.json, checked again.")
    ] = None,
    student: Annotated[
        bool, typer.Option("--student", help="Only what students see, without answers.")
    ] = False,
    band: options.BandOption = 2,
    seed: options.SeedOption = None,
    notation: options.NotationOption = None,
    format_: options.FormatOption = None,
    out: PackOutOption = None,
    paper: Annotated[
        Optional[Paper], typer.Option("--paper", help="Size of the sheets of a PDF or DOCX.")
    ] = None,
    parts: Annotated[
        str, typer.Option("--parts", help=f"Parts of a PDF: {', '.join(Part)}; all by default.")
    ] = "",
) -> None:
    """Plan a whole lesson: warm-up, rule, words, sentences, sort, dictation, check."""
    if context.invoked_subcommand:
        return
    wanted = wish_for(format_, out, paper, parts, student=student)
    if edited:
        if focus or taught or series or after or group:
            raise PhonodrillError("--from has its focus and words in the file", "only --from FILE")
        with Lexicon() as lexicon:
            from phonodrill.lesson.from_data import read_lessons

            lessons = [
                read.lesson for read in read_lessons(parse_lesson(edited), lexicon, own_words())
            ]
        deliver_lessons(lessons, wanted)
        return
    if not focus and not group:
        raise PhonodrillError(
            "no focus for the lesson", "--focus es,ies, --group G, or --from lesson.json"
        )
    check_days(days)
    request = Request(
        focus,
        band,
        minutes,
        options.seed_or_new(seed),
        notation=str(notation or SCRIPT),
    )
    if group:
        request = _for_group(request, group, taught)
    _plan(request, days, taught, (series, after, rest), wanted)


def _for_group(request: Request, group: str, taught: Path | None) -> Request:
    """Take up the words the group missed, and its next focus if none was named."""
    from phonodrill.cli import needs
    from phonodrill.records.practice import missed_words, next_pick
    from phonodrill.records.skills import describe
    from phonodrill.services.checks import today

    answers = needs.answers_of(group)
    request = request._replace(review=missed_words(answers, today()))
    if request.focus:
        return request
    with Lexicon() as lexicon:
        pick = next_pick(answers, needs.order_of(taught, lexicon))
    shown = f"{describe(pick.skill)}, {pick.right} of {pick.asked} right"
    report([f"focus {pick.focus} ({shown}); why: phonodrill next --group {group}"])
    return request._replace(focus=pick.focus)


def _plan(
    request: Request,
    days: int,
    taught: Path | None,
    kept: tuple[str, Path | None, int],
    wanted: Wish,
) -> None:
    from phonodrill.cli.series import read_series, series_path

    series, after, rest = kept
    path = series_path(series, after)
    history = read_series(path, rest)
    with Lexicon() as lexicon:
        if taught:
            from phonodrill.cli.taught_file import read_taught

            steps = read_taught(taught, lexicon).steps
            request = request._replace(taught=tuple(step.text for step in steps))
        lessons = make_days(lexicon, request, days, history=history, overlay=own_words())
    report(list(dict.fromkeys(note for one in lessons for note in one.notes)))
    deliver_lessons(lessons, wanted)
    if path:
        _keep(path, lessons)


@app.command("swap")
def swap(
    file: Annotated[Path, typer.Argument(help="A lesson that was written as JSON.")],
    old: Annotated[str, typer.Argument(help="A word of the lesson.")],
    new: Annotated[str, typer.Argument(help="The word to take instead; else one is chosen.")] = "",
    out: options.OutOption = None,
) -> None:
    """Swap a word of a lesson; all that depends on it is worked out and checked again."""
    from phonodrill.lesson.from_data import read_lessons

    with one_at_a_time(out or file), Lexicon() as lexicon:
        reads = read_lessons(parse_lesson(file), lexicon, own_words())
        swapped = swap_everywhere(reads, Swap(old, new))
        lessons = [read.lesson for read in swapped.reads]
        deliver(view.document(lessons), options.Format.JSON, out or file)
    report(list(swapped.notes))


def parse_lesson(path: Path) -> Any:
    """Read a file of lessons as data.

    Raises:
        PhonodrillError: if it cannot be read or is no JSON that a file can hold.
    """
    hint = "a file that phonodrill lesson wrote"
    try:
        data = json.loads(read_text(path))
    except (ValueError, RecursionError) as error:
        raise PhonodrillError(f"{path} is no JSON", hint) from error
    try:
        json.dumps(data, ensure_ascii=False).encode()
    except UnicodeEncodeError as error:
        # JSON may escape half of a pair (\ud800), which no other file can hold.
        raise PhonodrillError(f"{path} has a sign that is none", hint) from error
    return data


def _keep(path: Path, lessons: list[Lesson]) -> None:
    """Add the lessons to their series."""
    from datetime import datetime

    from phonodrill.cli.series import keep_sets
    from phonodrill.lesson.days import describe
    from phonodrill.lesson.used import words_of_lesson

    date = datetime.now().astimezone().date().isoformat()
    keep_sets(path, [(describe(one, date), words_of_lesson(one)) for one in lessons])
