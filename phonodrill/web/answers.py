"""What the API answers, field by field, for the OpenAPI schema and the page that shows it."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any, NamedTuple

JSON = "application/json"
EXAMPLE = "x-example"
"""Where the schema holds an example of what is sent."""
_OF_A_FILE = ("$schema", "$comment", "title")
VERSIONS = "Version of the program, and of these fields."


class Answer(NamedTuple):
    """What a route answers.

    Attributes:
        says: in a sentence.
        example: fields to send, which are answered with all the fields below.
        kind: of JSON, a key of :data:`phonodrill.render.json_schema.KINDS`; empty for what
            no command writes.
        fields: name -> what it holds, where there is no kind.
    """

    says: str
    example: Mapping[str, str]
    kind: str = ""
    fields: Mapping[str, str] = MappingProxyType({})


ANSWERS = {
    "/lesson": Answer(
        "One lesson; for more days than one, lessons: a list of such.",
        {"focus": "es,ies"},
        kind="lesson",
    ),
    "/warmup": Answer(
        "Items, each with its checked answer.",
        {"task": "delete", "count": "4"},
        kind="warmup",
    ),
    "/chain": Answer(
        "Words, each of which differs from the one before in one sound.",
        {"start": "crab"},
        kind="chain",
    ),
    "/bank": Answer(
        "A part of all items of a task.",
        {"task": "blend"},
        fields={
            "task": "What is done with each word.",
            "at": "Where in the word.",
            "offset": "How many items come before.",
            "next": "The offset of the next part; nothing after the last.",
            "items": "As in a warm-up.",
        },
    ),
    "/endings/sort": Answer(
        "Words in groups.",
        {"ending": "es,ies"},
        kind="endings-sort",
    ),
    "/endings/add": Answer(
        "A word with an ending.",
        {"word": "ferry"},
        kind="endings-add",
    ),
    "/endings/base": Answer(
        "The words that a form may come from.",
        {"word": "ferries"},
        kind="endings-base",
    ),
    "/endings/table": Answer(
        "A rule card.",
        {},
        kind="endings-table",
    ),
    "/endings/lookalikes": Answer(
        "Words to be ready for.",
        {"ending": "es,ies"},
        kind="endings-lookalikes",
    ),
    "/pairs": Answer(
        "Pairs of words.",
        {"sounds": "i:e"},
        kind="pairs",
    ),
    "/decodable": Answer(
        "Words that can be read by what was taught.",
        {"taught": "default:40"},
        kind="decodable",
    ),
    "/spellings": Answer(
        "Shares of spellings, or of sounds.",
        {"sound": "f"},
        kind="spellings",
    ),
    "/passage": Answer(
        "The words of the text, counted by how the class can read them.",
        {"text": "The ferries sat in the harbor.", "taught": "default:40"},
        kind="passage",
    ),
    "/word": Answer(
        "All that is known of a word.",
        {"word": "ferries"},
        kind="word",
    ),
    "/sentences": Answer(
        "Sentences for a word.",
        {"word": "ferries"},
        kind="sentences",
    ),
    "/words": Answer(
        "The words that the teacher added or blocked.",
        {},
        kind="words",
    ),
    "/taught/check": Answer(
        "The steps, one by one.",
        {"taught": "default:12"},
        kind="taught-check",
    ),
    "/taught/suggest": Answer(
        "The steps taught already, then those to teach next.",
        {"taught": "default:12", "steps": "3"},
        kind="taught-suggest",
    ),
    "/lexicon": Answer(
        "Sources and counts of the lexicon.",
        {},
        kind="lexicon",
    ),
}


def describe_answers(
    schema: dict[str, Any], prefix: str, answers: Mapping[str, Answer]
) -> dict[str, Any]:
    """Put what is answered into an OpenAPI schema.

    Args:
        schema: as FastAPI writes it; it is changed.
        prefix: what all addresses of the API begin with.
        answers: what each route answers.
    """
    for path, routes in schema["paths"].items():
        if (told := answers.get(path.removeprefix(prefix))) is None:
            continue
        content = {JSON: {"schema": _whole(told)}}
        for route in routes.values():
            route["responses"]["200"] = {"description": told.says, "content": content}
            route[EXAMPLE] = dict(told.example)
    return schema


def _whole(told: Answer) -> dict[str, Any]:
    """Return the schema of an answer."""
    if not told.kind:
        fields = {"phonodrill": VERSIONS, **told.fields}
        properties = {name: {"description": words} for name, words in fields.items()}
        return {"type": "object", "properties": properties}
    from phonodrill.render.json_schema import json_schema

    schema = json_schema(told.kind)
    defined = schema.pop("$defs", {})
    whole: dict[str, Any] = _spelled_out(schema, defined)
    if "oneOf" in whole:
        # What either may have, for whoever only looks at the names.
        names = whole["oneOf"][0]["properties"]
        says = {name: {"description": field["description"]} for name, field in names.items()}
        whole |= {"type": "object", "properties": says}
    return {name: part for name, part in whole.items() if name not in _OF_A_FILE}


def _spelled_out(part: Any, defined: Mapping[str, Any]) -> Any:
    """Put definitions where they are named: an OpenAPI schema has them at another place."""
    if isinstance(part, list):
        return [_spelled_out(one, defined) for one in part]
    if not isinstance(part, dict):
        return part
    if "$ref" in part:
        rest = {name: value for name, value in part.items() if name != "$ref"}
        named = defined[part["$ref"].rpartition("/")[2]]
        return _spelled_out({**named, **rest}, defined)
    return {name: _spelled_out(value, defined) for name, value in part.items()}
