"""What the command and the page of a check share."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

if TYPE_CHECKING:
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


def today() -> str:
    """Return the date of today, ISO 8601."""
    return datetime.now().astimezone().date().isoformat()
