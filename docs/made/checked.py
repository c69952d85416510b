"""What phonodrill was checked against: the sources that tests name."""

from __future__ import annotations

import ast
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path

TESTS = Path(__file__).parents[2] / "tests"
HEAD = """# What it was checked against

Each line is a test that compares phonodrill with a published fact, an open data set or a general
library, or says that there is none. Made from the tests themselves.
"""


def make_page() -> str:
    """Write the page, by source."""
    by_source: dict[str, list[str]] = defaultdict(list)
    for source, what in find_sources():
        by_source[source].append(what)
    lines = [HEAD, "| source | what was compared |", "|---|---|"]
    for source, tests in sorted(by_source.items(), key=lambda pair: pair[0].lower()):
        what = "<br>".join(dict.fromkeys(tests))
        lines.append(f"| {source.replace('|', ' ')} | {what} |")
    return "\n".join(lines) + "\n"


def find_sources() -> Iterator[tuple[str, str]]:
    """Yield each source that a test names, with the test's name as words."""
    for path in sorted(TESTS.rglob("test_*.py")):
        module = ast.parse(path.read_text("utf-8"))
        named = _constants(module)
        for node in ast.walk(module):
            if isinstance(node, ast.FunctionDef | ast.ClassDef):
                what = node.name.removeprefix("test_").removeprefix("Test").replace("_", " ")
                for source in _sources_of(node, named):
                    yield source, f"{what} (`{path.relative_to(TESTS)}`)"


def _constants(module: ast.Module) -> dict[str, ast.expr]:
    """Return what a module's names of sources stand for."""
    return {
        target.id: node.value
        for node in module.body
        if isinstance(node, ast.Assign)
        for target in node.targets
        if isinstance(target, ast.Name)
    }


def _sources_of(node: ast.FunctionDef | ast.ClassDef, named: dict[str, ast.expr]) -> Iterator[str]:
    for decorator in node.decorator_list:
        if isinstance(decorator, ast.Call) and ast.unparse(decorator.func) == "pytest.mark.source":
            given = decorator.args[0]
            value = named[given.id] if isinstance(given, ast.Name) else given
            yield " ".join(str(ast.literal_eval(value)).split())
