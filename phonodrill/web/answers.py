"""What the API answers, for the OpenAPI schema and the page that shows it."""

from __future__ import annotations

from typing import Any

from pydantic import BaseModel, Field

JSON = "application/json"
_VERSIONS = "Version of the program, and of these fields."


class ErrorAnswer(BaseModel):
    """Said when something is not possible."""

    error: str = Field(description="What was wrong, in one line.")
    try_: str = Field(alias="try", description="What to do about it; may be empty.")


def _error(says: str) -> dict[str, Any]:
    return {"model": ErrorAnswer, "description": says}


ERRORS: dict[int | str, dict[str, Any]] = {
    400: _error("What was asked for cannot be had."),
    422: _error("A field is missing or beyond its limits."),
    503: _error("Too many ask at once: again in a minute."),
}


def answer(says: str, **fields: str) -> dict[int | str, dict[str, Any]]:
    """Describe an answer of the API.

    Args:
        says: what is answered, in a sentence.
        fields: name of a field that is always there -> what it holds.

    Returns:
        For ``responses`` of a route.
    """
    described = {"phonodrill": _VERSIONS, **fields}
    schema = {
        "type": "object",
        "properties": {name: {"description": words} for name, words in described.items()},
        "required": list(described),
    }
    return {200: {"description": says, "content": {JSON: {"schema": schema}}}}
