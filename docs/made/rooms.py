"""The drawing of the rooms and what they import, made from the package itself."""

from __future__ import annotations

import tomllib
from collections.abc import Iterable, Mapping
from html import escape
from pathlib import Path

import grimp

ROOT = Path(__file__).parents[2]
PACKAGE = "phonodrill"
WIDTH, ROW, BOX_WIDTH, BOX_HEIGHT = 760, 66, 128, 30
"""Sizes in pixels: the drawing, from one row to the next, a room."""

Imports = Mapping[str, frozenset[str]]


def read_rows() -> list[list[str]]:
    """Return the rooms as pyproject.toml orders them: a row a layer, the highest first."""
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))
    contracts = settings["tool"]["importlinter"]["contracts"]
    layers = next(one["layers"] for one in contracts if one["type"] == "layers")
    return [[room.strip() for room in layer.split("|")] for layer in layers]


def read_imports(rooms: Iterable[str]) -> dict[str, frozenset[str]]:
    """Return for each room the rooms that its modules import."""
    graph = grimp.build_graph(PACKAGE, exclude_type_checking_imports=True)
    rooms = list(rooms)
    return {
        room: frozenset(
            other
            for other in rooms
            if other != room
            and graph.direct_import_exists(
                importer=f"{PACKAGE}.{room}", imported=f"{PACKAGE}.{other}", as_packages=True
            )
        )
        for room in rooms
    }


def without_shortcuts(imports: Imports) -> dict[str, frozenset[str]]:
    """Leave out what follows from the rest: a room that another imported room imports too.

    >>> without_shortcuts({"a": frozenset("bc"), "b": frozenset("c"), "c": frozenset()})["a"]
    frozenset({'b'})
    """
    return {
        room: frozenset(
            other
            for other in others
            if not any(other in _reached(between, imports) for between in others - {other})
        )
        for room, others in imports.items()
    }


def draw(rows: list[list[str]], imports: Imports) -> str:
    """Draw the rooms row by row as SVG, with a line from each down to what it imports."""
    places = {
        room: (WIDTH * (column + 1) / (len(row) + 1), ROW * number + BOX_HEIGHT)
        for number, row in enumerate(rows)
        for column, room in enumerate(row)
    }
    height = ROW * len(rows)
    lines = [
        f'<path d="M{x1:.0f} {y1 + BOX_HEIGHT / 2:.0f}C{_bend(x1, y1, x2, y2)}"/>'
        for room, others in imports.items()
        for x1, y1 in [places[room]]
        for x2, y2 in (places[other] for other in sorted(others))
    ]
    boxes = [
        f'<rect x="{x - BOX_WIDTH / 2:.0f}" y="{y - BOX_HEIGHT / 2:.0f}" width="{BOX_WIDTH}"'
        f' height="{BOX_HEIGHT}" rx="4"/><text x="{x:.0f}" y="{y + 5:.0f}">{escape(room)}</text>'
        for room, (x, y) in places.items()
    ]
    return (
        f'<svg viewBox="0 0 {WIDTH} {height}" role="img" aria-label="The rooms, each with lines'
        f' down to the rooms it imports; the list below says the same" class="rooms">'
        f'<g fill="none" stroke="currentColor" stroke-opacity=".45">{"".join(lines)}</g>'
        f'<g fill="var(--md-default-bg-color, white)" stroke="currentColor">'
        f"{''.join(box.partition('<text')[0] for box in boxes)}</g>"
        f'<g fill="currentColor" text-anchor="middle" font-size="14">'
        f"{''.join('<text' + box.partition('<text')[2] for box in boxes)}</g></svg>"
    )


def make_page() -> str:
    """Return the page as Markdown."""
    rows = read_rows()
    rooms = [room for row in rows for room in row]
    imports = read_imports(rooms)
    listed = "\n".join(
        f"| `{room}` | {' '.join(f'`{other}`' for other in rooms if other in imports[room])} |"
        for room in rooms
    )
    return f"""# Rooms and imports

Each room is a folder or a file of the package. Lines lead down to what a room imports when it
runs; where one room imports another that imports a third, the line to the third is left out.
Nothing points up and nothing goes in a circle: `tests/test_imports.py` fails otherwise. What each
room does is in DEVELOPERS.md.

{draw(rows, without_shortcuts(imports))}

| room | imports |
|---|---|
{listed}
"""


def _reached(room: str, imports: Imports) -> frozenset[str]:
    """Return every room that a room imports, directly or by way of others."""
    found: set[str] = set()
    waiting = [room]
    while waiting:
        for other in imports[waiting.pop()] - found:
            found.add(other)
            waiting.append(other)
    return frozenset(found)


def _bend(x1: float, y1: float, x2: float, y2: float) -> str:
    """Return the rest of a curve that leaves and arrives upright."""
    start, end = y1 + BOX_HEIGHT / 2, y2 - BOX_HEIGHT / 2
    middle = (start + end) / 2
    return f"{x1:.0f} {middle:.0f} {x2:.0f} {middle:.0f} {x2:.0f} {end:.0f}"
