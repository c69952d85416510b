"""Feed random files to phonodrill for as long as asked, and report what was found.

``python -m tests.fuzz lesson --minutes 10``. Guided by coverage where the package
``atheris`` is installed (``python -m pip install atheris``), else by chance alone.
Findings are written to a folder, one file each, with where they were raised.
"""

from __future__ import annotations

import argparse
import hashlib
import json
import os
import random
import signal
import sys
import tempfile
import time
import traceback
from collections import Counter
from pathlib import Path
from types import FrameType, ModuleType
from typing import Any, NoReturn

SLOW = 10.0
"""Seconds beyond which a small file takes too long."""
HANGS = 60
LARGEST = 30_000
SHOWN_EVERY = 60.0


class Run:
    """One run: calls the target, counts, keeps what was found, and ends in time."""

    def __init__(self, name: str, minutes: float, findings: Path) -> None:
        from tests.fuzz.targets import READERS

        self.target = READERS[name]
        self.findings = findings
        self.started = time.monotonic()
        self.ends = self.started + 60 * minutes
        self.shown = self.started
        self.executions = self.accepted = 0
        self.found: Counter[str] = Counter()
        self.slowest = 0.0
        findings.mkdir(parents=True, exist_ok=True)

    def once(self, data: bytes) -> None:
        """Call the target with one file."""
        began = time.monotonic()
        if began > self.ends:
            self.end()
        self.executions += 1
        signal.alarm(HANGS)
        try:
            self.accepted += self.target.run(data)
        except Exception as error:  # noqa: BLE001  # whatever it is, it is what is looked for
            self.keep(place_of(error), data)
        finally:
            signal.alarm(0)
        took = time.monotonic() - began
        self.slowest = max(self.slowest, took)
        if took > SLOW:
            self.keep(f"slow: more than {SLOW:.0f} s", data)
        if began - self.shown > SHOWN_EVERY:
            self.shown = began
            print(self.summary(), flush=True)

    def keep(self, what: str, data: bytes) -> None:
        """Count a finding; the first file that shows it is kept."""
        if what not in self.found:
            name = hashlib.sha256(what.encode()).hexdigest()[:12]
            (self.findings / f"{self.target.name}-{name}.bin").write_bytes(data)
            (self.findings / f"{self.target.name}-{name}.txt").write_text(what + "\n", "utf-8")
            print(f"FOUND {what}", flush=True)
        self.found[what] += 1

    def summary(self) -> str:
        """Write the figures as one line of JSON."""
        figures = {
            "target": self.target.name,
            "seconds": round(time.monotonic() - self.started),
            "executions": self.executions,
            "accepted": self.accepted,
            "slowest": round(self.slowest, 2),
            "findings": self.found,
        }
        return json.dumps(figures)

    def end(self) -> NoReturn:
        """Print the figures and leave."""
        from tests.fuzz.targets import clean

        print(self.summary(), flush=True)
        clean()
        os._exit(1 if self.found else 0)


def place_of(error: Exception) -> str:
    """Name an error by its kind and where it was raised, so that it counts once."""
    frames = traceback.extract_tb(error.__traceback__)
    ours = [frame for frame in frames if "phonodrill" in frame.filename or "fuzz" in frame.filename]
    where = " < ".join(f"{Path(f.filename).name}:{f.lineno}" for f in reversed(ours[-3:]))
    said = f" {error}" if isinstance(error, AssertionError) else ""
    return f"{type(error).__name__} {where}{''.join(c for c in said if not c.isdigit())[:200]}"


def _alarm(_: int, __: FrameType | None) -> NoReturn:
    raise TimeoutError("it hangs")


def guided(atheris: ModuleType, name: str, minutes: float, findings: Path, corpus: Path) -> None:
    """Let atheris choose the files by what they reach."""
    with atheris.instrument_imports(include=["phonodrill"], enable_loader_override=False):
        from tests.fuzz.targets import READERS, mutate_data
    run = Run(name, minutes, findings)
    seeds = corpus / "seeds"
    seeds.mkdir(parents=True, exist_ok=True)
    for number, seed in enumerate(READERS[name].seeds()):
        (seeds / str(number)).write_bytes(seed)
    words = corpus / "words.dict"
    texts = ("".join(f"\\x{byte:02x}" for byte in word.encode()) for word in run.target.words)
    words.write_text("".join(f'"{text}"\n' for text in texts), "ascii")
    kept = corpus / "kept"
    kept.mkdir(exist_ok=True)

    def mutate(data: bytes, most: int, seed: int) -> bytes:
        chance = random.Random(seed)
        if chance.random() < 0.1:
            return bytes(atheris.Mutate(data, most))
        try:
            return json.dumps(mutate_data(json.loads(data), chance)).encode()[:most]
        except (ValueError, RecursionError):
            return bytes(atheris.Mutate(data, most))

    options: dict[str, Any] = {"custom_mutator": mutate} if name == "lesson" else {}
    arguments = [
        f"-dict={words}",
        f"-max_len={LARGEST}",
        "-timeout=120",
        "-len_control=0",
        "-rss_limit_mb=3000",
    ]
    atheris.Setup([sys.argv[0], *arguments, str(kept), str(seeds)], run.once, **options)
    atheris.Fuzz()


def by_chance(name: str, minutes: float, findings: Path) -> NoReturn:
    """Change the seeds by chance alone."""
    from tests.fuzz.targets import READERS, mutate_data

    run = Run(name, minutes, findings)
    seeds = READERS[name].seeds()
    chance = random.Random()
    while True:
        seed = chance.choice(seeds)
        if name == "lesson" and chance.random() < 0.9:
            run.once(json.dumps(mutate_data(json.loads(seed), chance)).encode())
        else:
            run.once(change_bytes(seed, run.target.words, chance))


def change_bytes(data: bytes, words: tuple[str, ...], chance: random.Random) -> bytes:
    """Put in, take out, repeat or change some bytes."""
    for _ in range(chance.choice((1, 2, 4, 16))):
        at = chance.randrange(len(data) + 1)
        length = chance.choice((1, 1, 2, 8, 40))
        put = chance.choice(
            (
                b"",
                chance.randbytes(length),
                chance.choice(words).encode(),
                data[at : at + length] * 2,
                chance.choice("\n\r\t #,=\x00\x1b\u2028\u0301\u202e").encode(),
            )
        )
        data = data[:at] + put + data[at + chance.choice((0, length)) :]
    return data[:LARGEST]


def main() -> None:
    """Read the command line and run."""
    parser = argparse.ArgumentParser(prog="python -m tests.fuzz", description=__doc__)
    parser.add_argument(
        "target", help="taught, words, passage, lesson, own words, series, results, tables, codes"
    )
    parser.add_argument("--minutes", type=float, default=10)
    parser.add_argument("--findings", type=Path, default=Path("findings"))
    parser.add_argument("--corpus", type=Path, help="folder of files that reached something new")
    parser.add_argument("--by-chance", action="store_true", help="without atheris")
    asked = parser.parse_args()
    signal.signal(signal.SIGALRM, _alarm)
    if not asked.by_chance:
        try:
            import atheris
        except ImportError:
            print("atheris is not installed: by chance alone")
        else:
            with tempfile.TemporaryDirectory() as folder:
                corpus = asked.corpus or Path(folder)
                guided(atheris, asked.target, asked.minutes, asked.findings, corpus)
    by_chance(asked.target, asked.minutes, asked.findings)


if __name__ == "__main__":
    main()
