"""The page that shows the API, made from its OpenAPI schema; no script from elsewhere."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from typing import Annotated, Any, NamedTuple
from urllib.parse import urlencode

from fastapi import APIRouter, Query, Request, Response

from phonodrill.web.answers import EXAMPLE, JSON
from phonodrill.web.forms import ClassForm
from phonodrill.web.page import Page, show

PAGE = Page("/api", "API", "The same answers as data, for other programs.")
TEMPLATE = "interface.html"
Schema = Mapping[str, Any]
_LIMITS = {
    "minimum": "from {:.0f}",
    "maximum": "to {:.0f}",
    "minLength": "of at least {:,} characters",
    "maxLength": "of at most {:,} characters",
    "maxItems": "of at most {:,}",
}
_TYPES = {
    "integer": "whole number",
    "number": "number",
    "boolean": "true or false",
    "string": "text",
    "array": "list",
    "object": "object",
}
_SAYS_NOTHING = "Successful Response"
page = APIRouter()


class Field(NamedTuple):
    """A field that is sent.

    Attributes:
        name: its name.
        kind: its type and limits, in words.
        says: what it is for.
        needed: whether it must be sent.
    """

    name: str
    kind: str
    says: str
    needed: bool


class Route(NamedTuple):
    """One thing that can be asked for.

    Attributes:
        method: GET or POST.
        path: its address.
        summary: what it is, in a few words.
        says: more about it.
        fields: what is sent.
        answer: what comes back, in a sentence.
        answers: its fields, each with what it holds.
        link: an example to open, if it can be opened.
        body: an example to send, if there is one.
    """

    method: str
    path: str
    summary: str
    says: str
    fields: Sequence[Field]
    answer: str
    answers: Sequence[tuple[str, str]]
    link: str
    body: str


@page.get(PAGE.path)
async def interface_page(request: Request, form: Annotated[ClassForm, Query()]) -> Response:
    """Show every route of the API."""
    schema = request.app.openapi()
    errors = [
        (name, words["description"])
        for name, words in _properties(schema, {"$ref": "#/components/schemas/Refusal"}).items()
    ]
    return show(request, TEMPLATE, PAGE, form=form, routes=list(routes_of(schema)), errors=errors)


def routes_of(schema: Schema) -> Iterator[Route]:
    """Read the routes of an OpenAPI schema.

    Args:
        schema: as FastAPI writes it.
    """
    for path, methods in schema["paths"].items():
        for method, route in methods.items():
            parameters = route.get("parameters", [])
            fields = [_field(schema, p["name"], p["schema"], p) for p in parameters]
            example = route.get(EXAMPLE, {})
            body = _resolved(schema, _content(route.get("requestBody", {})))
            sent = body.get("properties", {})
            needed = body.get("required", [])
            fields += [_field(schema, n, s, s, needed=n in needed) for n, s in sent.items()]
            done = route["responses"].get("200", {})
            answers = _properties(schema, _content(done))
            yield Route(
                method.upper(),
                path,
                route.get("summary", path),
                route.get("description", "").replace("``", "“", 1).replace("``", "”", 1),
                fields,
                done.get("description", "").replace(_SAYS_NOTHING, ""),
                [(name, part.get("description", "")) for name, part in answers.items()],
                f"{path}?{urlencode(example)}".rstrip("?") if method == "get" else "",
                json.dumps(example, ensure_ascii=False) if sent else "",
            )


def _field(
    schema: Schema, name: str, kind: Schema, about: Schema, *, needed: bool = False
) -> Field:
    is_needed = bool(about.get("required")) or needed
    return Field(name, _kind(schema, kind), about.get("description", ""), is_needed)


def _kind(schema: Schema, part: Schema) -> str:
    """Write type, limits and usual value in words.

    >>> _kind({}, {"type": "integer", "minimum": 1, "maximum": 3, "default": 2})
    'whole number from 1 to 3; usually 2'
    >>> _kind({}, {"anyOf": [{"enum": ["a", "b"], "type": "string"}, {"type": "null"}]})
    'one of a, b'
    """
    choices = part.get("anyOf", [part])
    real = _resolved(schema, next((one for one in choices if one.get("type") != "null"), part))
    if "enum" in real:
        kind = f"one of {', '.join(map(str, real['enum']))}"
    else:
        limits = [words.format(real[name]) for name, words in _LIMITS.items() if name in real]
        kind = " ".join([_TYPES.get(real.get("type", ""), "text"), *limits])
    usual = part.get("default")
    is_told = usual not in (None, "", [])
    return f"{kind}; usually {str(usual).lower()}" if is_told else kind


def _content(part: Schema) -> Schema:
    content: Schema = part.get("content", {}).get(JSON, {}).get("schema", {})
    return content


def _properties(schema: Schema, part: Schema) -> Schema:
    found: Schema = _resolved(schema, part).get("properties", {})
    return found


def _resolved(schema: Schema, part: Schema) -> Schema:
    """Follow a reference to a named part of the schema."""
    reference = part.get("$ref", "")
    if not reference:
        return part
    named: Schema = schema["components"]["schemas"][reference.rpartition("/")[2]]
    return named
