"""``phonodrill next``: what to teach a group next, for whom, and why."""

from __future__ import annotations

from typing import Annotated

import typer

from phonodrill.cli import needs, options
from phonodrill.cli.deliver import deliver
from phonodrill.records.standing import THRESHOLDS

app = typer.Typer(add_completion=False, rich_markup_mode=None)


@app.command("next")
def next_(
    group: Annotated[str, typer.Option("--group", help="The group.")] = "",
    taught: options.TaughtOption = None,
    has: needs.HasOption = THRESHOLDS.has,
    lacks: needs.LacksOption = THRESHOLDS.lacks,
    fewest: needs.FewestOption = THRESHOLDS.fewest,
    window: needs.WindowOption = THRESHOLDS.window,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Say what to teach next, for whom and why, from the checks that were kept."""
    rule = needs.rule_of(has, lacks, fewest, window)
    answers = needs.answers_of(group)
    from phonodrill.lexicon.store import Lexicon
    from phonodrill.records.report import see_next
    from phonodrill.render.views import next_focus as view
    from phonodrill.services.checks import today

    with Lexicon() as lexicon:
        order = needs.order_of(taught, lexicon)
        seen = see_next(answers, lexicon, group=group, today=today(), rule=rule, order=order)
    deliver(view.next_step(seen), format_, out)
