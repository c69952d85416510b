"""What pages and the API are asked, checked before anything else is done.

One model a page serves its form, its shareable address, the API and the OpenAPI page.
"""

from __future__ import annotations

import random
from typing import Any, Self

from pydantic import BaseModel, ConfigDict, Field, model_validator

HIGHEST_SEED = 999_999
LONGEST_STEPS = 6000


class Form(BaseModel):
    """What several pages ask for. A field left empty has its usual value."""

    model_config = ConfigDict(extra="ignore", str_strip_whitespace=True)

    @model_validator(mode="before")
    @classmethod
    def _leave_out_empty(cls, data: Any) -> Any:
        if not isinstance(data, dict):
            return data
        return {name: value for name, value in data.items() if value not in ("", None)}


class ClassForm(Form):
    """Which words a class may be given."""

    band: int = Field(default=2, ge=1, le=3, description="Highest band of words used.")
    taught: str = Field(
        default="",
        max_length=LONGEST_STEPS,
        description="What was taught, a step a line; or default:40, the first 40 steps of our "
        "order; or list:NAME, a list kept on the page; empty: any word.",
    )


class DrawForm(ClassForm):
    """What is drawn by chance, and can be drawn again."""

    seed: int | None = Field(
        default=None, ge=0, le=HIGHEST_SEED, description="The same choice again."
    )

    def with_seed(self) -> Self:
        """Return the form with a seed, a new one if none was asked for."""
        if self.seed is not None:
            return self
        return self.model_copy(update={"seed": new_seed()})


class Refusal(BaseModel):
    """What the API says when it cannot do what was asked."""

    error: str = Field(description="What was wrong, in one line.")
    hint: str = Field(alias="try", description="What to do about it; may be empty.")


def new_seed() -> int:
    """Draw a seed."""
    return random.SystemRandom().randrange(HIGHEST_SEED + 1)
