"""Change the program in small ways and count which changes no test notices.

    python -m pip install -e '.[test,mutation]'
    python -m tests.mutation.run sounds                  # every mutant of a room
    python -m tests.mutation.run tasks --sample 600      # a random part, the same each time
    python -m tests.mutation.run tasks --show            # what no test noticed
    python -m tests.mutation.run tasks --again           # those once more, after tests were added

mutmut makes the mutants and runs them, each with the tests that reach its function; this
script lays out a folder a room, says which tests there are and counts. The folder keeps the
results; it is `build/mutation/ROOM`.
"""

from __future__ import annotations

import argparse
import contextlib
import json
import math
import os
import random
import shutil
import subprocess
import sys
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import NamedTuple

from tests.mutation.plugin import AT_IMPORT, ORIGINALS, function_of

ROOT = Path(__file__).parents[2]

SEED = 10
FEW = 100
"""So many tests are run on every mutant of a room, whether or not they reach it."""
DRAWN = "drawn.json"
"""The file with the names of the mutants that are run."""
UNNOTICED = ("survived", "no tests", "not run")
SLOWEST = 1.5
"""Seconds that a test may take, while mutmut looks on, to be run on every mutant; those that
survive are run again with all tests."""

_OUTCOMES = {1: "killed", 3: "killed", 0: "survived", 5: "no tests", 33: "no tests"}
# A module that cannot even be imported or collected any more.
_OUTCOMES |= {2: "killed", 4: "killed"}
_OUTCOMES |= {-24: "timeout", 24: "timeout", 152: "timeout", 36: "timeout", -9: "timeout"}

_BASE = "tests/mutation/doctests.py"
_SPELLING = "tests/external/test_spelling_sources.py"
_EVERY_ITEM = [
    f"tests/test_gate.py::{name}"
    for name in (
        "test_there_are_items_to_check",
        "test_no_item_has_a_sound_that_is_never_said",
        "test_no_part_that_is_said_alone_sounds_unfit",
        "test_no_word_of_an_item_is_unfit_by_its_band",
        "test_a_general_filter_finds_nothing",
    )
]


class Room(NamedTuple):
    """What is mutated together.

    Attributes:
        files: the sources, as a pattern.
        tests: files and folders of tests that are run on them.
        without: tests of those that are not run: they take longer than all others together.
    """

    files: str
    tests: tuple[str, ...]
    without: tuple[str, ...] = ()


ROOMS = {
    "sounds": Room(
        "phonodrill/sounds/*.py",
        (
            "tests/sounds",
            "tests/graphemes",
            "tests/external/test_phonotactics.py",
            "tests/external/test_pronunciations.py",
            "tests/external/test_spellings.py",
            "tests/external/test_berko.py",
            _SPELLING,
            "tests/tasks/test_delete.py",
        ),
    ),
    "endings": Room(
        "phonodrill/endings/*.py",
        (
            "tests/endings",
            "tests/external/test_berko.py",
            _SPELLING,
        ),
        (
            "tests/endings/test_add.py::test_the_steps_use_every_letter_of_the_base",
            "tests/endings/test_classify.py::test_many_words_at_once_agree_with_one_at_a_time",
            "tests/endings/test_classify.py::test_the_ending_is_heard_in_the_pronunciation",
            "tests/endings/test_lessons.py::test_nothing_unfit_is_shown_in_a_note_or_a_trap",
            f"{_SPELLING}::test_the_sound_class_is_what_the_dictionary_has",
        ),
    ),
    "gate": Room("phonodrill/gate.py", ("tests/test_gate.py",), tuple(_EVERY_ITEM)),
    "tasks": Room(
        "phonodrill/tasks/*.py",
        ("tests/tasks", "tests/external/test_published_items.py"),
        (
            "tests/tasks/test_chain.py::test_a_shortest_chain_is_one",
            "tests/tasks/test_chain.py::test_a_varied_chain",
            "tests/tasks/test_chain.py::test_the_place_of_change_varies",
            "tests/tasks/test_delete.py",
            "tests/tasks/test_difficulty.py::test_near_foils_are_never_easy",
            "tests/tasks/test_history.py::test_a_set_that_falls_short_says_why",
            "tests/tasks/test_history.py::test_no_word_comes_again_while_it_rests",
            "tests/tasks/test_made_up.py",
            "tests/tasks/test_recalled.py",
            "tests/tasks/test_tasks.py::test_every_kind_has_its_words_and_makes_a_set",
            "tests/tasks/test_tasks.py::test_forms_are_asked_for_with_forms",
            "tests/tasks/test_tasks.py::test_levels_part_the_items_of_every_kind",
            "tests/tasks/test_tasks.py::test_no_word_is_used_beyond_the_band",
            "tests/tasks/test_tasks.py::test_sets_differ_by_seed_and_repeat_with_one",
        ),
    ),
}


def wilson(part: int, whole: int) -> tuple[float, float]:
    """Return the 95 % confidence interval of a share (Wilson 1927).

    >>> low, high = wilson(90, 100)
    >>> round(low, 3), round(high, 3)
    (0.826, 0.945)
    """
    z = 1.959964
    share = part / whole
    middle = share + z * z / (2 * whole)
    half = z * ((share * (1 - share) + z * z / (4 * whole)) / whole) ** 0.5
    below = 1 + z * z / whole
    return (middle - half) / below, (middle + half) / below


def _copy_if_changed(source: str, target: str) -> str:
    """Copy a file, so that its date tells mutmut whether there is anything new in it."""
    before = Path(target)
    if not before.exists() or before.read_bytes() != Path(source).read_bytes():
        shutil.copyfile(source, target)
    return target


def lay_out(room: Room, folder: Path) -> list[str]:
    """Copy what a room needs into a folder, and return its sources."""
    for name in ("phonodrill", "tests", "wordlists", "docs"):
        shutil.copytree(
            *(ROOT / name, folder / name),
            ignore=shutil.ignore_patterns("__pycache__", "pictures", "browser"),
            copy_function=_copy_if_changed,
            dirs_exist_ok=True,
        )
    settings = {
        "source_paths": ["phonodrill"],
        "only_mutate": [room.files],
        "also_copy": ["wordlists", "docs"],
        "pytest_add_cli_args": [
            *("-p", "tests.mutation.plugin", "-p", "_hypothesis_pytestplugin"),
            *("-p", "no:cacheprovider", "-p", "no:unraisableexception"),
            *("-o", "addopts=--strict-markers"),
        ],
        "pytest_add_cli_args_test_selection": [
            *(_BASE, *room.tests),
            *(f"--deselect={name}" for name in room.without),
        ],
        # A test may take so many times as long as without a mutant, in seconds of the clock.
        "timeout_multiplier": 8.0,
        "timeout_constant": 3.0,
        "track_dependencies": False,
        "use_git_change_detection": False,
    }
    table = "\n".join(f"{key} = {json.dumps(value)}" for key, value in settings.items())
    project = (ROOT / "pyproject.toml").read_text("utf-8")
    (folder / "pyproject.toml").write_text(f"{project}\n[tool.mutmut]\n{table}\n", "utf-8")
    files = sorted(str(path.relative_to(folder)) for path in folder.glob(room.files))
    (folder / "mutated.json").write_text(json.dumps(files), "utf-8")
    return files


@contextlib.contextmanager
def _inside(folder: Path) -> Iterator[None]:
    before = Path.cwd()
    os.chdir(folder)
    try:
        yield
    finally:
        os.chdir(before)


def mutants_of(files: Iterable[str], folder: Path) -> dict[str, list[str]]:
    """Return the names of all mutants of each source."""
    with _inside(folder):
        from mutmut.mutation.file_mutation import mutate_file_contents
        from mutmut.utils.format_utils import get_mutant_name

        return {
            file: [
                get_mutant_name(Path(file), name)
                for name in mutate_file_contents(file, Path(file).read_text("utf-8")).mutant_names
            ]
            for file in files
        }


def draw(mutants: dict[str, list[str]], most: int) -> list[str]:
    """Draw mutants from each file in proportion to how many it has, the same each time."""
    total = sum(map(len, mutants.values()))
    if not 0 < most < total:
        return [name for names in mutants.values() for name in names]
    chance = random.Random(SEED)
    return [
        name
        for names in mutants.values()
        for name in chance.sample(names, round(len(names) * most / total))
    ]


# mutmut runs all tests without a mutant before each run; they passed when it found out which
# tests reach a function, and on these very sources.
_RUN = """
from mutmut.__main__ import cli
from mutmut.workers.isolation import ForkRunner
ForkRunner.run_clean_tests = lambda self, tests: 0
cli()
"""


def _mutmut(folder: Path, names: Sequence[str], children: int) -> None:
    environment = {
        **os.environ,
        ORIGINALS: str(folder.resolve()),
        # pytest starts anew for each mutant; some plugins take seconds to wake.
        "PYTEST_DISABLE_PLUGIN_AUTOLOAD": "1",
    }
    environment.pop("PYTHONPATH", None)
    subprocess.run(
        [sys.executable, "-c", _RUN, "run", "--max-children", str(children), *names],
        cwd=folder,
        env=environment,
        check=True,
    )


_CALLED_AT_IMPORT = """
import json, os, sys
sys.path.insert(0, "mutants")
os.environ["MUTANT_UNDER_TEST"] = "stats"
from mutmut.state import state
for name in sys.argv[1:]:
    __import__(name)
json.dump(sorted(state()._stats), sys.stdout)
"""


def prepare(folder: Path, files: Iterable[str], slowest: float) -> None:
    """Mend what mutmut found out about which tests reach a function.

    A function that is called while modules are imported serves every test; slow tests are
    left out.
    """
    modules = [".".join(Path(file).with_suffix("").parts) for file in files]
    environment = {name: value for name, value in os.environ.items() if name != "PYTHONPATH"}
    found = subprocess.run(
        [sys.executable, "-c", _CALLED_AT_IMPORT, *modules],
        cwd=folder,
        env=environment,
        check=True,
        capture_output=True,
        text=True,
    )
    at_import = json.loads(found.stdout)
    (folder / AT_IMPORT).write_text(json.dumps(at_import), "utf-8")
    path = folder / "mutants" / "mutmut-stats.json"
    stats = json.loads(path.read_text("utf-8"))
    reached, took = stats["tests_by_mangled_function_name"], stats["duration_by_test"]
    (folder / "tests.json").write_text(json.dumps(stats), "utf-8")
    quick = {name for name, seconds in took.items() if seconds <= slowest}
    # What a fixture of the whole session calls is counted for the first test alone.
    for name in [*at_import, *(reached if len(quick) <= FEW else ())]:
        reached[name] = sorted(quick)
    for name, tests in reached.items():
        reached[name] = sorted(quick.intersection(tests))
    path.write_text(json.dumps(stats), "utf-8")
    print(f"{len(quick)} of {len(took)} tests; functions called at import: {len(at_import)}")


def remember_tests(folder: Path) -> None:
    """Give mutmut back what it found out about slow tests, too."""
    kept = folder / "tests.json"
    if kept.exists():
        shutil.copyfile(kept, folder / "mutants" / "mutmut-stats.json")


def outcomes(folder: Path) -> dict[str, str]:
    """Return what became of every mutant that was drawn."""
    codes: dict[str, int | None] = {}
    for path in (folder / "mutants").rglob("*.meta"):
        codes |= json.loads(path.read_text("utf-8"))["exit_code_by_key"]
    drawn = json.loads((folder / DRAWN).read_text("utf-8"))
    return {name: _outcome(codes.get(name)) for name in drawn}


def _outcome(code: int | None) -> str:
    return "not run" if code is None else _OUTCOMES.get(code, f"exit code {code}")


def _file_of(mutant: str) -> str:
    return function_of(mutant).rpartition(".")[0].removeprefix("phonodrill.")


def report(found: dict[str, str]) -> Iterator[str]:
    """Yield the lines of a table: one for each file, and one for all."""
    found = {name: outcome for name, outcome in found.items() if outcome != "not run"}
    yield "| file | run | killed | timeout | no tests | survived | rate |"
    yield "|---|---|---|---|---|---|---|"
    files = Counter(map(_file_of, found))
    for file in [*sorted(files), "all"]:
        counts = Counter(
            outcome for name, outcome in found.items() if file in ("all", _file_of(name))
        )
        run = sum(counts.values())
        caught = counts["killed"]
        low, high = wilson(caught, run)
        numbers = [counts[name] for name in ("killed", "timeout", "no tests", "survived")]
        cells = " | ".join(map(str, [run, *numbers]))
        yield f"| {file} | {cells} | {caught / run:.1%} ({low:.1%}-{high:.1%}) |"


def show(folder: Path, names: Iterable[str]) -> Iterator[str]:
    """Yield each mutant as a difference from the source."""
    with _inside(folder):
        from mutmut.mutation.diff_apply import get_diff_for_mutant

        for name in names:
            module = function_of(name).rpartition(".")[0]
            lines = get_diff_for_mutant(name, path=Path(*module.split(".")).with_suffix(".py"))
            yield f"# {name}\n" + "\n".join(lines.splitlines()[2:])


def _read_arguments() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__, prog="python -m tests.mutation.run")
    parser.add_argument("room", choices=ROOMS)
    parser.add_argument("--sample", type=int, default=0, help="how many mutants (default: all)")
    parser.add_argument("--children", type=int, default=1, help="mutants run at the same time")
    parser.add_argument("--again", action="store_true", help="run only those that no test noticed")
    parser.add_argument("--show", action="store_true", help="show those that no test noticed")
    parser.add_argument("--folder", type=Path, default=ROOT / "build" / "mutation")
    return parser.parse_args()


def _unnoticed(folder: Path) -> list[str]:
    return [name for name, outcome in outcomes(folder).items() if outcome in UNNOTICED]


def _run(folder: Path, files: list[str], names: list[str], children: int, slowest: float) -> None:
    if not names:
        return
    (folder / AT_IMPORT).unlink(missing_ok=True)
    remember_tests(folder)
    _mutmut(folder, names[:1], 1)
    prepare(folder, files, slowest)
    _mutmut(folder, names, children)


def main() -> None:
    asked = _read_arguments()
    room = ROOMS[asked.room]
    folder = asked.folder / asked.room
    if asked.show:
        print("\n\n".join(show(folder, _unnoticed(folder))))
        return
    from phonodrill.lexicon.compile import fingerprint, stored_fingerprint
    from phonodrill.lexicon.schema import LEXICON_PATH

    if stored_fingerprint(LEXICON_PATH) != fingerprint(ROOT / "wordlists"):
        sys.exit("the lexicon is not made from these tables: python -m pip install .")
    if not asked.again:
        shutil.rmtree(folder, ignore_errors=True)
    files = lay_out(room, folder)
    if not asked.again:
        names = draw(mutants_of(files, folder), asked.sample)
        (folder / DRAWN).write_text(json.dumps(names), "utf-8")
        _run(folder, files, names, asked.children, SLOWEST)
    _run(folder, files, _unnoticed(folder), asked.children, math.inf)
    print("\n".join(report(outcomes(folder))))


if __name__ == "__main__":
    main()
