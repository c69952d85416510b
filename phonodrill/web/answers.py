"""What the API answers, for the OpenAPI schema and the page that shows it."""

from __future__ import annotations

from typing import Any

JSON = "application/json"
_VERSIONS = "Version of the program, and of these fields."


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
