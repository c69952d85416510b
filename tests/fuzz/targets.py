"""What random bytes are fed to: each file that a teacher writes, from its bytes to its result.

A target takes bytes and returns; anything but a result or a fair refusal is raised. Beside
crashes, each target looks for what can be seen to be wrong without knowing the right answer.
"""

from __future__ import annotations

import atexit
import copy
import json
import random
import re
import shutil
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple
from unittest.mock import patch

from phonodrill import Lexicon, PhonodrillError, make_lesson, open_gate, read_lessons
from phonodrill.cli import passage as cli_passage
from phonodrill.cli.lesson import parse_lesson
from phonodrill.cli.series import keep_sets, read_series
from phonodrill.cli.words_file import read_words
from phonodrill.endings.sort import By, sort_words
from phonodrill.errors import MOST_LETTERS
from phonodrill.lesson import from_data
from phonodrill.lesson.as_data import as_data
from phonodrill.lesson.compose import Prepared, prepare
from phonodrill.lesson.request import Request
from phonodrill.lexicon.entry import Counted
from phonodrill.lexicon.wordlists import read_wordlists
from phonodrill.overlay import NO_OVERLAY, Overlay, Rule, change_overlay, read_overlay
from phonodrill.records.groups import read_codes
from phonodrill.records.results_file import read_results
from phonodrill.remembered import Remembered
from phonodrill.services import word_list
from phonodrill.services.passage import check_text
from phonodrill.services.word_list import usable_words
from phonodrill.taught.known import Known
from phonodrill.taught.steps import parse_steps
from phonodrill.text_file import read_text, without_mark

MOST_SAID = MOST_LETTERS + 10
"""Letters of a message or hint that is not cut off."""
KEPT_FOCI = 24
STUDENTS, ITEMS = ("A", "B"), 8
GULL = Rule("add", "gull", 2)
WORDLISTS = Path(__file__).parents[2] / "wordlists"
TABLE_LINES = 6
SOME_TABLES = ("names", "vocabulary", "correspondences", "high_frequency", "sentences")
SOME_WORDS = 60


class Target(NamedTuple):
    """A file that is read.

    Attributes:
        name: of the target.
        run: reads the bytes of the file; raises what should not be.
        seeds: files that are right, or nearly.
        words: pieces that such files are made of.
    """

    name: str
    run: Callable[[bytes], bool]
    seeds: Callable[[], list[bytes]]
    words: tuple[str, ...]


class WrongError(AssertionError):
    """A result or a message that cannot be right."""


def demand(holds: object, what: str) -> None:
    """Raise if something that must hold does not."""
    if not holds:
        raise WrongError(what)


@cache
def _lexicon() -> Lexicon:
    return Lexicon()


@cache
def _inventory() -> tuple[Counted, ...]:
    return tuple(_lexicon().correspondences())


@cache
def _place() -> Path:
    """A file that is written again and again, in memory where there is such a disk."""
    memory = Path("/dev/shm")
    folder = tempfile.mkdtemp(prefix="fuzz-", dir=memory if memory.is_dir() else None)
    atexit.register(clean)
    return Path(folder) / "file.txt"


def clean() -> None:
    """Take the file away again."""
    shutil.rmtree(_place().parent, ignore_errors=True)


@contextmanager
def refused_fairly() -> Iterator[list[PhonodrillError]]:
    """Take a refusal, and look at whether it says in one line what is wrong."""
    refused: list[PhonodrillError] = []
    try:
        yield refused
    except PhonodrillError as error:
        refused.append(error)
        for text in (error.message, error.hint):
            demand(len(text) <= MOST_SAID, f"{len(text)} letters are said")
            demand(text.isprintable(), f"{text!a} cannot be shown")
        demand(error.message, "nothing is said")


def _file(data: bytes) -> Path:
    path = _place()
    path.write_bytes(data)
    return path


def read_taught_file(data: bytes) -> bool:
    """Read a taught file: each line is a step or is reported, and what was read stays so."""
    inventory = _inventory()
    with refused_fairly():
        text = read_text(_file(data))
        lines = text.splitlines()
        taught = parse_steps(lines, inventory)
        numbers = [step.number for step in taught.steps]
        for problem in taught.problems:
            found = re.match(r"line (\d+) passed over: ", problem)
            demand(found, f"{problem!r} names no line")
            numbers.append(int(found[1]) if found else 0)
        said = [n for n, line in enumerate(lines, 1) if line.partition("#")[0].strip()]
        demand(sorted(numbers) == said, "a line is lost")
        again = parse_steps([step.text for step in taught.steps], inventory)
        demand(not again.problems, "a step cannot be read again")
        demand(again.known() == taught.known(), "steps read again teach something else")
        demand(taught.known(1).things <= taught.known().things, "a later step takes away")
        return True
    return False


def read_word_list(data: bytes) -> bool:
    """Read a teacher's own words and sort them: each is used or named with its line."""
    lexicon = _lexicon()
    # To look for words that are like another takes most of the time, in a library.
    with patch.object(word_list, "nearest_words", _no_words), refused_fairly():
        lines = read_words(_file(data))[:SOME_WORDS]
        usable, problems = usable_words(lexicon, lines)
        demand(len(usable) + len(problems) == len(lines), "a word is lost")
        gate = open_gate(lexicon)
        demand(all(gate.allows(word, [], alone=False) for word in usable), "an unfit word is used")
        numbers = [int(problem.removeprefix("line ").partition(":")[0]) for problem in problems]
        demand({*numbers} <= {line.number for line in lines}, "a line that is not there")
        for by in By:
            made = sort_words(lexicon, usable, by, random.Random(1), ("s", "ed", "ing"))
            sorted_ = [ending.word for group in made.groups for ending in group.words]
            left = [word for word, _ in made.left_out]
            demand(sorted([*sorted_, *left]) == sorted({*usable}), f"by {by}: words are lost")
        return True
    return False


def _no_words(*_: object) -> list[str]:
    return []


@cache
def _known() -> Known:
    tokens = ("s", "a", "t", "p", "i", "n", "sh", "a_e", "-es", "word: said")
    return parse_steps(tokens, _inventory()).known()


def read_passage(data: bytes) -> bool:
    """Check a passage: its pieces are the passage, and the parts of the count make the whole."""
    from phonodrill.reading.passage_check import Status

    with refused_fairly():
        text = cli_passage.read_passage(_file(data))
        report = check_text(_lexicon(), text, _known())
        demand("".join(piece.text for piece in report.pieces) == text, "the passage is changed")
        counted = sum(report.total(status) for status in Status)
        demand(counted == report.total() > 0, "words are lost")
        demand(0 <= report.share <= 1, "a share outside of 0 to 1")
        return True
    return False


_prepared: Remembered[object, Prepared] = Remembered(KEPT_FOCI)


def _remember_prepared(
    lexicon: Lexicon, request: Request, overlay: Overlay = NO_OVERLAY
) -> Prepared:
    """Gather the words of a focus once: a fresh search each time would be all that is tested."""
    key = (request.focus, request.band, request.taught, request.notation)
    return _prepared.recall(key, lambda: prepare(lexicon, request, overlay))


def read_lesson_file(data: bytes) -> bool:
    """Read an edited lesson: what is accepted is accepted again, as it was read."""
    with patch.object(from_data, "prepare", _remember_prepared), refused_fairly():
        reads = read_lessons(parse_lesson(_file(data)), _lexicon())
        written = {"lessons": [as_data(read.lesson) for read in reads]}
        again = read_lessons(json.loads(json.dumps(written)), _lexicon())
        demand(
            [read.lesson for read in again] == [read.lesson for read in reads],
            "a lesson read again is another",
        )
        return True
    return False


def read_own_words(data: bytes) -> bool:
    """Change the lists of own words: what is no rule stays, and the rules are as they were."""
    with refused_fairly():
        path = _file(data)
        before = read_overlay(path)
        for problem in before.problems:
            demand(re.match(r"file.txt, line \d+: ", problem), f"{problem!r} names no line")
        change_overlay(path, lambda own: own._replace(rules={**own.rules, "gull": GULL}))
        after = read_overlay(path)
        demand(after.rules == {**before.rules, "gull": GULL}, "a rule is lost")
        demand(len(after.problems) == len(before.problems), "a line is lost")
        text = without_mark(data.decode(errors="surrogateescape"))
        kept = path.read_bytes().decode("utf-8", "surrogateescape").splitlines()
        comments = [line for line in text.splitlines() if line.lstrip().startswith("#")]
        demand([line for line in kept if line in comments] == comments, "a comment is lost")
        return True
    return False


def read_series_file(data: bytes) -> bool:
    """Add a set to a series: the sets before it stay."""
    with refused_fairly():
        path = _file(data)
        before = read_series(path, 3)
        keep_sets(path, [("2026-11-25 delete first", ("gulls", "ropes"))])
        after = read_series(path, 3)
        demand(after.sets == (*before.sets, frozenset(("gulls", "ropes"))), "a set is lost")
        demand({"gulls", "ropes"} <= after.resting, "the words of the last set do not rest")
        return True
    return False


def read_results_file(data: bytes) -> bool:
    """Read a table of results: each is of a student and an item that there are."""
    with refused_fairly() as refused:
        results = list(read_results(read_text(_file(data)), STUDENTS, ITEMS))
        demand(all(result.student in STUDENTS for result in results), "a student is unknown")
        demand(all(1 <= result.position <= ITEMS for result in results), "an item is unknown")
        return True
    for error in refused:
        named = re.search(r"line \d+: |columns|UTF-8|no plain text|larger than", error.message)
        demand(named, f"{error.message!r} names no line")
    return False


@cache
def _tables() -> Path:
    """The beginning of each table that the lexicon is compiled from."""
    folder = _place().parent / "tables"
    folder.mkdir()
    for table in WORDLISTS.glob("*.tsv"):
        (folder / table.name).write_bytes(table_start(table.stem))
    return folder


def table_start(name: str) -> bytes:
    """The first lines of a table, the comments left out."""
    lines = (WORDLISTS / f"{name}.tsv").read_bytes().splitlines(keepends=True)
    return b"".join([lines[0], *[line for line in lines if line[:1] != b"#"][:TABLE_LINES]])


def read_word_tables(data: bytes) -> bool:
    """Read the file in the place of each table that the lexicon is compiled from."""
    taken = False
    for table in sorted(_tables().iterdir()):
        right = table.read_bytes()
        table.write_bytes(data)
        try:
            with refused_fairly() as refused:
                read_wordlists(_tables())
                taken = True
        finally:
            table.write_bytes(right)
        for error in refused:
            demand(re.match(rf"{table.name}:( |\d+: )", error.message), f"{error.message!r}")
    return taken


def read_student_codes(data: bytes) -> bool:
    """Read codes as typed for a group: what is taken is taken again."""
    with refused_fairly():
        codes = read_codes(data.decode("utf-8", "replace"))
        demand(read_codes(",".join(codes)) == codes, "codes read again are others")
        return True
    return False


def _texts(*texts: str) -> Callable[[], list[bytes]]:
    return lambda: [text.encode() for text in texts]


@cache
def lessons() -> tuple[dict[str, Any], ...]:
    """Some lessons as data, of each kind of focus."""
    wishes = (
        Request("es,ies", minutes=25, seed=3),
        Request(
            "sh",
            minutes=12,
            seed=1,
            band=1,
            taught=("s, a, t, p, i, n", "m, d, g, o, c, k, e, u, r, h, b, f, l, ll"),
        ),
        Request("/k/", minutes=10, seed=2, notation="ipa"),
        Request("segment", minutes=10, seed=4),
        Request("i:e", minutes=8, seed=5, review=("ship",)),
    )
    made = (as_data(make_lesson(_lexicon(), wish)) for wish in wishes)
    return tuple({"lesson": one} for one in made)


def _lesson_files() -> list[bytes]:
    listed = lessons()
    several = {"lessons": [one["lesson"] for one in listed[1:3]]}
    return [json.dumps(data).encode() for data in (*listed, several)]


TARGETS = {
    target.name: target
    for target in (
        Target(
            "taught",
            read_taught_file,
            _texts(
                "s\na, t\nc=s\nsh, ch\na_e\n-es\nword: said was\n# ours\nnk\ntion\n",
                "\ufeffs\r\na\r\n-s=z  # two sounds\r\nx=k+s\r\ny=ī\r\n-ed=ĭd\r\ngh=silent\r\n",
                "ff, ll, ss\nER=er\nword: don’t, the\nİ\nı\nﬁ\nba\u0301\nא\u202e\n",
            ),
            (
                *("s", "sh", "ch", "a_e", "-es", "-ed", "c=s", "=silent", "word:", "tion", "nk"),
                *("’", "#", "=", "+", "-", "_", "ə", "ĭ", "θ", "EH1"),
            ),
        ),
        Target(
            "words",
            read_word_list,
            _texts(
                "ferries\ntorches\n# ours\ngulls # two\nropes\r\nJELLIES\nhedges\n",
                "\ufeffgull’s\nhoped\nhopping\nzzxq\nice cream\nx-ray\n١\nİ\n\u202ecrabs\n",
            ),
            ("ferries", "torches", "ies", "es", "ing", "ed", "'s", "’", "#", "-", "\u00a0", "ß"),
        ),
        Target(
            "passage",
            read_passage,
            _texts(
                "The gull sat on the ferry's rail. “Ships!” said the 3 ladies at 10:30.\n",
                "Don’t rock-climb; 1st, 2nd: 1,000 shells’ 'tis the sailors' naïve café 😀.",
                "\ufeffאבג \u202egull\u202c ga\u0301p sh\u200dip İstanbul ılık ﬁsh\r\n",
            ),
            ("The", "'s", "’", "s'", "-", "1st", "10:30", "“", "”", "ﬁ", "\u0301", "\u200d", "I"),
        ),
        Target(
            "lesson",
            read_lesson_file,
            _lesson_files,
            ("lesson", "sections", "words", "word", "items", "null", "true", "1e400", "NaN", "[{"),
        ),
    )
}

READERS = {
    target.name: target
    for target in (
        *TARGETS.values(),
        Target(
            "own words",
            read_own_words,
            _texts(
                "add ferry 2\n# ours\nblock storm\nblock\nadd crab 9\n\nadd gull 3 # a name\n",
                "ADD Ferry\r\nadd ferry 3\r\nblock ferry\r\nadd it’s\r\n",
            ),
            ("add ", "block ", " 1", " 3", "#", "gull", "ferry"),
        ),
        Target(
            "series",
            read_series_file,
            _texts(
                "# ours\n2026-11-25 delete first: stop top\ngull, crab\n",
                "9999-12-31 lesson es,ies, day 1, oral 4 min: torches ropes\r\n: \r\nx:y:z\r\n",
            ),
            ("# ", ": ", ", ", "gulls", "oral 99999 min", "2026-11-25"),
        ),
        Target(
            "results",
            read_results_file,
            _texts(
                "student,item,right,said\nA,1,y,\nB,2,n,“ropes”\nA,3,,\n",
                "Student;Item;Right;Note\r\nB;0008;NOT YET;\r\nA;1;1;x;y\r\n",
            ),
            ("student", "item", "right", ",", ";", '"', "y", "0", "9" * 30, "A,1,y\n", "not yet"),
        ),
        Target(
            "tables",
            read_word_tables,
            lambda: [table_start(name) for name in SOME_TABLES],
            ("\t", "# phonodrill table 1\n", "word\t", "IH1", "EY", "9", "yes", "/", "²"),
        ),
        Target(
            "codes",
            read_student_codes,
            _texts("A,B,C", "A, B ,,Ca-2", "1,2,3.5"),
            (",", " ", "A", "AA", "-", "Ä", "9"),
        ),
    )
}
"""All that is read; the long runs are on the first four, which teachers write most."""

ODD_VALUES: tuple[Any, ...] = (
    *(None, True, False, 0, 1, -1, 3.5, float("inf"), float("nan"), 10**30, "", "a", "\x00"),
    *("\u202e", "é" * 300, [], {}, [[]], [None], [""], {"word": "gulls"}, {"": {}}, [1, "a"]),
)


def mutate_data(data: Any, chance: random.Random) -> Any:
    """Change one thing or a few somewhere in parsed JSON."""
    changed = copy.deepcopy(data)
    for _ in range(chance.choice((1, 1, 1, 2, 5))):
        places = list(_places(changed))
        if not places:
            return chance.choice(ODD_VALUES)
        holder, key = chance.choice(places)
        how = chance.randrange(6)
        if how == 0:
            holder[key] = copy.deepcopy(chance.choice(ODD_VALUES))
        elif how == 1:
            del holder[key]
        elif how == 2:
            other, place = chance.choice(places)
            holder[key] = copy.deepcopy(other[place])
        elif how == 3 and isinstance(holder, list):
            holder.insert(key, copy.deepcopy(holder[chance.randrange(len(holder))]))
        elif how == 4 and isinstance(holder, list):
            chance.shuffle(holder)
        else:
            holder[key] = _other_value(holder[key], chance)
    return changed


def _places(node: Any) -> Iterator[tuple[Any, Any]]:
    """Each place in a tree, as what holds it and its key there."""
    keys: Any = node if isinstance(node, dict) else range(len(node)) if type(node) is list else ()
    for key in list(keys):
        yield node, key
        yield from _places(node[key])


def _other_value(value: Any, chance: random.Random) -> Any:
    if isinstance(value, bool) or value is None:
        return not value
    if isinstance(value, (int, float)):
        return value + chance.choice((-1, 1, 2**31, 2**64))
    if isinstance(value, str):
        at = chance.randrange(len(value) + 1)
        put = chance.choice(
            ("", "s", " ", "\n", "gulls", "\u0301", "\u202e", "İ", "\x00", "x" * 99)
        )
        return value[:at] + put + value[at + chance.randrange(3) :]
    return chance.choice(ODD_VALUES)
