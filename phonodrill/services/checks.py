"""What the command and the page of a check share."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from phonodrill.paper.page import Paper
    from phonodrill.records.kept import Check
    from phonodrill.records.store import Store

MOST_ITEMS = 12
"""What a child can be asked at a stretch, and columns that fit on the page."""
USUAL_ITEMS = 8
RESTING_CHECKS = 5
"""Words of so many checks before are left out where there are others."""


def recent_words(store: Store, group: str) -> frozenset[str]:
    """Return the words of a group's last checks, which rest.

    Raises:
        PhonodrillError: if there is no such group.
    """
    recent = store.list_checks(group, RESTING_CHECKS)
    return frozenset(item.word for one in recent for item in store.find_check(one.key).items)


def write_sheet(made: Check, students: Sequence[str], paper: Paper) -> bytes:
    """Write the sheet of a check as PDF.

    Args:
        made: the check.
        students: codes of its group.
        paper: size of the sheets.
    """
    from phonodrill.lesson.tree import CAUTION
    from phonodrill.render import as_pdf
    from phonodrill.render.views.records import check_pages

    title = f"Check {made.key}: {made.focus}"
    return as_pdf.render(check_pages(made, students), title=title, paper=paper, footer=CAUTION)


def today() -> str:
    """Return the date of today, ISO 8601."""
    return datetime.now().astimezone().date().isoformat()
