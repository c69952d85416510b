"""What commands and pages that work from kept answers share."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from phonodrill.taught.tokens import write_whole_token

if TYPE_CHECKING:
    from phonodrill.taught.steps import Step


def order_of(steps: Iterable[Step]) -> tuple[str, ...]:
    """Return the correspondences of steps taught as skills name them, in their order."""
    return tuple(dict.fromkeys(write_whole_token(row) for step in steps for row in step.named))
