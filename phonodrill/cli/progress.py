"""``phonodrill progress``: how a group or a student stands."""

from __future__ import annotations

from typing import Annotated

import typer

from phonodrill.cli import needs, options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.report import report
from phonodrill.errors import PhonodrillError
from phonodrill.records.standing import THRESHOLDS

app = typer.Typer(add_completion=False, rich_markup_mode=None)


@app.command()
def progress(
    group: Annotated[str, typer.Option("--group", help="The group.")] = "",
    student: Annotated[str, typer.Option("--student", help="Only this student.")] = "",
    has: needs.HasOption = THRESHOLDS.has,
    lacks: needs.LacksOption = THRESHOLDS.lacks,
    fewest: needs.FewestOption = THRESHOLDS.fewest,
    window: needs.WindowOption = THRESHOLDS.window,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Show who has what: shares right with how sure they are, growth, confusions, review."""
    if not group and not student:
        raise PhonodrillError("whose progress?", "--group G or --student S")
    rule = needs.rule_of(has, lacks, fewest, window)
    found = group or needs.group_of(student)
    answers = needs.answers_of(found)
    if student:
        from phonodrill.cli.records_store import open_store

        with open_store() as store:
            if student not in store.list_students(found):
                raise PhonodrillError(
                    "there is no such student in that group", "phonodrill group list --students"
                )
    from phonodrill.lexicon.store import Lexicon
    from phonodrill.records.report import see_progress
    from phonodrill.render.views import progress as view
    from phonodrill.services.checks import today

    with Lexicon() as lexicon:
        seen = see_progress(
            answers, lexicon, group=found, student=student, today=today(), rule=rule
        )
    if not answers:
        report([f"no answers yet; first: phonodrill check make --group {found} --focus es"])
    deliver(view.progress(seen), format_, out)
