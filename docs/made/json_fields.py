"""The page of all JSON fields, from the schemas that are made of their types."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from phonodrill.render.json_schema import KINDS, json_schema

HEAD = """# JSON

`--format json`, and `--out NAME.json`, write all that a command found as one object. It begins
with the versions: `"phonodrill": {"version": "0.1.0", "schema": 1}`. The number of the schema
changes when a field goes or means something else. New fields may come with any version, so that a
program should pass over what it does not know; the schema of a version allows only what it writes.

Every kind has a [JSON Schema](https://json-schema.org/draft/2020-12) (draft 2020-12), made from
the same types that the program is checked against; the tests hold what each command writes to it.
From Python: `phonodrill.json_schema("warmup")`. The page's API (`phonodrill serve`, under `/api`)
answers with the same fields.

Sounds are written in IPA unless `--notation` says otherwise; a field with *arpabet* in its name
is always written as in CMUdict, with spaces and stress digits. A field is always there unless it
says *may be absent*.
"""


def make_page() -> str:
    """Write the page."""
    return "\n".join([HEAD, *(part for kind in KINDS for part in _kind(kind))])


def _kind(kind: str) -> Iterator[str]:
    schema = json_schema(kind)
    commands = KINDS[kind].commands
    yield f"## {kind} {{ #{kind} }}\n"
    written = " and ".join(
        f"[`phonodrill {name}`](commands.md#{'-'.join(name.split())})" for name in commands
    )
    lines = ", one object a line" if KINDS[kind].is_line else ""
    yield f"Written by {written}{lines}. [Schema](../schema/{kind}.json)\n"
    shapes = schema.get("oneOf", [schema])
    for number, shape in enumerate(shapes):
        either = "" if len(shapes) == 1 else ("Either: " if number == 0 else "Or: ")
        yield f"{either}{_sentence(shape['description'])}\n"
        yield _fields(shape, kind)
    for name, record in schema.get("$defs", {}).items():
        yield f"### {kind}: {name} {{ #{_anchor(kind, name)} }}\n"
        yield f"{_sentence(record['description'])}\n"
        yield _fields(record, kind)


def _fields(record: dict[str, Any], kind: str) -> str:
    """Write the fields of a record as definitions: name and type, then the meaning."""
    required = record["required"]
    parts = []
    for name, field in record["properties"].items():
        if name == "phonodrill":
            continue
        absent = "" if name in required else ", may be absent"
        parts.append(f"`{name}` ({_type(field, kind)}{absent})\n:   {field['description']}\n")
    return "\n".join(parts)


def _type(field: dict[str, Any], kind: str) -> str:
    """Say in words what a field may hold."""
    if "$ref" in field:
        name = field["$ref"].rpartition("/")[2]
        return f"[{name}](#{_anchor(kind, name)})"
    if "anyOf" in field:
        return " or ".join(_type(choice, kind) for choice in field["anyOf"])
    if "enum" in field:
        return ", ".join(_value(value) for value in field["enum"])
    if field["type"] == "array":
        return f"list of {_items(field, kind)}"
    if field["type"] == "object":
        return f"object, each value: {_type(field['additionalProperties'], kind)}"
    return _simple(field)


def _items(field: dict[str, Any], kind: str) -> str:
    if places := field.get("prefixItems"):
        return f"{len(places)}: {', then '.join(_type(place, kind) for place in places)}"
    return _type(field["items"], kind)


_WORDS = {"string": "text", "boolean": "true or false", "integer": "whole number"}


def _simple(field: dict[str, Any]) -> str:
    shown: str = _WORDS.get(field["type"], field["type"])
    low, high = field.get("minimum"), field.get("maximum")
    return shown if low is None or high is None else f"{shown}, {low} to {high}"


def _value(value: Any) -> str:
    if value == "":
        return "empty text"
    return f"`{str(value).lower() if isinstance(value, bool) else value}`"


def _anchor(kind: str, name: str) -> str:
    return f"{kind}-{name.lower()}"


def _sentence(text: str) -> str:
    return text if text.endswith(".") else f"{text}."
