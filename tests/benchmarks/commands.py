"""Whole commands as somebody who types them waits for them, in turn with ``import typer``.

pytest-benchmark times what happens in one process; what a process takes of the processor, and
the memory it held at most, only the system can tell.
"""

from __future__ import annotations

import os
import random
import re
import subprocess
import sys
import time
from collections.abc import Sequence
from pathlib import Path
from statistics import median
from typing import NamedTuple

from phonodrill.lexicon.store import Lexicon

BASELINE = "import typer"
TAUGHT = "s a t p i n m d g o c k ck e u r h b f l\nsh ch th\na_e\n-s\n"
PASSAGE_WORDS = 100_000
LESSON_FOCI = ("es,ies", "s", "sh", "a_e", "/k/", "i:e", "delete")
OTHER_TASKS = ("segment", "categorize", "substitute")


class Limits(NamedTuple):
    """What is asked of a command: times ``import typer``, seconds, MiB; 0 where nothing is."""

    times: float = 0.0
    seconds: float = 0.0
    memory: int = 0


class Command(NamedTuple):
    """A command to measure.

    Attributes:
        shown: how the page names it.
        arguments: as they are typed.
        limits: what is asked of it.
        share: of the rounds; long commands are run less often.
    """

    shown: str
    arguments: tuple[str, ...]
    limits: Limits = Limits()
    share: float = 1.0


class Run(NamedTuple):
    """What one process took: seconds by the clock and of the processor, and MiB at its peak."""

    clock: float
    processor: float
    memory: float


class Measured(NamedTuple):
    """A command measured; seconds and MiB.

    Attributes:
        shown: how the page names it.
        rounds: how often it was run.
        clock: the least and the median by the clock.
        processor: the least and the median of the processor's time.
        times: median of the rounds: its processor time over that of ``import typer``
            run just before.
        memory: the most it held.
        limits: what is asked of it.
    """

    shown: str
    rounds: int
    clock: tuple[float, float]
    processor: tuple[float, float]
    times: float
    memory: float
    limits: Limits


def list_commands(folder: Path) -> list[Command]:
    """List what is measured; files to read are made in a folder, files written go there."""
    taught = str(write(folder / "taught.txt", TAUGHT))
    passage = str(write(folder / "passage.txt", make_passage(PASSAGE_WORDS)))
    cold, lesson = Limits(times=1.6, memory=60), ("lesson", "--seed", "1", "--focus")
    pack = (*lesson, "es,ies", "--out")
    cards = ("print", "cards", "--ending", "s,es,ies", "--count", "40", "--out")
    return [
        Command("", ()),
        *[
            Command(f"warmup {options}", ("warmup", *options.split()), cold)
            for options in ("--drop first --ending es", "--drop first")
        ],
        *[Command(f"warmup --task {task}", ("warmup", "--task", task)) for task in OTHER_TASKS],
        Command("chain crab clam", ("chain", "crab", "clam")),
        Command("decodable --taught FILE", ("decodable", "--taught", taught), Limits(times=2)),
        Command(
            "pairs --sounds i:e --taught FILE",
            ("pairs", "--sounds", "i:e", "--taught", taught),
            Limits(times=2),
        ),
        *[
            Command(
                f"lesson --focus {focus} --format json",
                (*lesson, focus, "--format", "json"),
                Limits(seconds=0.5),
            )
            for focus in LESSON_FOCI
        ],
        Command(
            "lesson --focus es,ies --out lesson.pdf",
            (*pack, str(folder / "lesson.pdf")),
            Limits(seconds=1.5),
        ),
        *[
            Command(
                f"lesson --focus es,ies --out lesson.{kind}", (*pack, f"{folder}/lesson.{kind}")
            )
            for kind in ("docx", "pptx")
        ],
        Command(
            "print cards --ending s,es,ies --count 40 --out cards.pdf",
            (*cards, str(folder / "cards.pdf")),
            Limits(seconds=1.5),
        ),
        Command(
            f"passage FILE --taught FILE: a text of {PASSAGE_WORDS:,} words",
            ("passage", passage, "--taught", taught),
            Limits(seconds=3),
            0.2,
        ),
        Command(
            "bank --band 3: every item of every task",
            ("bank", "--band", "3", "--out", str(folder / "bank.csv")),
            Limits(seconds=60, memory=190),
            0,
        ),
    ]


def make_passage(count: int) -> str:
    """Make a text of so many words, seven of ten among those most used."""
    chance = random.Random(1)
    with Lexicon() as lexicon:
        rare = lexicon.words(highest_band=3)
        common = [frequent.word for frequent in lexicon.high_frequency()]
    return " ".join(chance.choice(common if chance.random() < 0.7 else rare) for _ in range(count))


def measure(commands: Sequence[Command], rounds: int) -> list[Measured]:
    """Run every command so often, in turn, each right after ``import typer``."""
    runs: list[list[Run]] = [[] for _ in commands]
    beside: list[list[float]] = [[] for _ in commands]
    for number in range(rounds):
        for place, command in enumerate(commands):
            if number < max(1, round(rounds * command.share)):
                if command.arguments:
                    beside[place].append(run(()).processor)
                runs[place].append(run(command.arguments))
    return [
        _sum_up(command, taken, typer)
        for command, taken, typer in zip(commands, runs, beside, strict=True)
    ]


_TELLS = (
    "import atexit; "
    "atexit.register(lambda: open({}, 'w').write(open('/proc/self/status').read())); "
)
"""What a command held at most; the system's own account of it begins with what its parent held."""


def run(arguments: Sequence[str]) -> Run:
    """Run a command, or ``import typer`` for none, and see what it took.

    The first run of all writes the bytecode, as an installation does; see :func:`warm`.
    """
    shown = f"sys.argv = {['phonodrill', *arguments]!r}"
    code = f"import sys; from phonodrill.cli.main import main; {shown}; main()"
    # As after an installation: the bytecode of the modules is there.
    environment = {k: v for k, v in os.environ.items() if k != "PYTHONDONTWRITEBYTECODE"}
    told, telling = os.pipe()
    started = time.perf_counter()
    process = subprocess.Popen(
        [sys.executable, "-c", _TELLS.format(telling) + (code if arguments else BASELINE)],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
        env=environment,
        pass_fds=[telling],
    )
    os.close(telling)
    _, status, used = os.wait4(process.pid, 0)
    clock = time.perf_counter() - started
    with os.fdopen(told) as said:
        peak = re.search(r"VmHWM:\s+(\d+) kB", said.read())
    process.returncode = os.waitstatus_to_exitcode(status)
    if process.returncode:
        raise RuntimeError(f"exit {process.returncode}: {' '.join(arguments)}")
    return Run(clock, used.ru_utime + used.ru_stime, int(peak[1]) / 1024 if peak else 0.0)


def warm(commands: Sequence[Command]) -> None:
    """Run the short commands once, unmeasured: modules are compiled, files come to memory."""
    for command in commands:
        if command.share == 1:
            run(command.arguments)


def write(path: Path, text: str) -> Path:
    """Write a file."""
    path.write_text(text, "utf-8")
    return path


def _sum_up(command: Command, runs: Sequence[Run], beside: Sequence[float]) -> Measured:
    clocks, processors, memories = zip(*runs, strict=True)
    pairs = zip(processors, beside, strict=True) if beside else ()
    return Measured(
        _named(command.shown) if command.shown else f"`{BASELINE}`",
        len(runs),
        (min(clocks), median(clocks)),
        (min(processors), median(processors)),
        median([taken / typer for taken, typer in pairs] or [1.0]),
        max(memories),
        command.limits,
    )


def _named(shown: str) -> str:
    line, colon, note = shown.partition(": ")
    return f"`phonodrill {line}`{colon}{note}"
