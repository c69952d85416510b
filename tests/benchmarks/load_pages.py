"""Many teachers at one server: python -m tests.benchmarks.load_pages [--requests N].

The server runs in a process of its own; each teacher here is one connection that asks
for a page, waits for all of it, thinks, and asks for the next. Warm-ups and lesson
previews differ in task, focus, band and seed, so that no page is asked for twice.
"""

from __future__ import annotations

import argparse
import asyncio
import os
import random
import tempfile
import time
from collections import Counter
from contextlib import ExitStack
from pathlib import Path
from statistics import mean, quantiles
from typing import NamedTuple
from urllib.parse import urlencode, urlsplit

from phonodrill.services.oral import ENDINGS
from phonodrill.tasks.registry import TASKS
from phonodrill.web.pages.today import USUAL
from tests.web.serving import running

TEACHERS = 30
THINK_SECONDS = 10.0
"""Mean time from one page to the next: a teacher reads what was asked for."""
FOCI = [focus for _, foci in USUAL for focus in foci]
LESSON_SHARE = 0.4
TARGETS = {"warm-up": 50, "lesson": 150}
TICKS = os.sysconf("SC_CLK_TCK")


class Answer(NamedTuple):
    """One page: which kind, its status, and how long it took in milliseconds."""

    kind: str
    status: int
    took: float


class Used(NamedTuple):
    """What a server process has used: seconds of processor time, and MiB it holds."""

    seconds: float
    memory: float


def address_for(chance: random.Random) -> tuple[str, str]:
    """Draw what a teacher asks for: its kind and address."""
    seed = chance.randrange(1_000_000)
    band = chance.choice([1, 2, 2, 3])
    if chance.random() < LESSON_SHARE:
        minutes = chance.choice([15, 25, 40])
        asked = {"focus": chance.choice(FOCI), "band": max(band, 2), "minutes": minutes}
        return "lesson", f"/today?{urlencode({**asked, 'seed': seed})}"
    asked = {"task": chance.choice(list(TASKS)), "band": band, "count": chance.choice([5, 8, 12])}
    if chance.random() < 0.2 and asked["task"] == "delete":
        asked["ending"] = chance.choice(ENDINGS)
    return "warm-up", f"/warm-up?{urlencode({**asked, 'seed': seed})}"


def used_by(process: int) -> Used:
    """Read what a process has used."""
    fields = Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()
    held = Path(f"/proc/{process}/statm").read_text().split()[1]
    memory = int(held) * os.sysconf("SC_PAGE_SIZE") / 2**20
    return Used((int(fields[11]) + int(fields[12])) / TICKS, memory)


async def teach(
    server: str, seed: int, think: float, left: list[int], answers: list[Answer]
) -> None:
    """Be one teacher until no request is left.

    Args:
        server: whom to ask.
        seed: makes the same teacher again.
        think: mean seconds between two pages; 0 for none.
        left: how many requests all teachers still make; shared.
        answers: where what came is noted.
    """
    chance = random.Random(seed)
    place = urlsplit(server)
    reader, writer = await asyncio.open_connection(place.hostname, place.port)
    await asyncio.sleep(chance.random() * think)
    while left[0] > 0:
        left[0] -= 1
        kind, address = address_for(chance)
        started = time.perf_counter()
        if writer.is_closing() or reader.at_eof():
            reader, writer = await asyncio.open_connection(place.hostname, place.port)
        writer.write(f"GET {address} HTTP/1.1\r\nHost: {place.netloc}\r\n\r\n".encode())
        status = await read_answer(reader)
        answers.append(Answer(kind, status, (time.perf_counter() - started) * 1000))
        if think:
            await asyncio.sleep(min(chance.expovariate(1 / think), 3 * think))
    writer.close()


async def read_answer(reader: asyncio.StreamReader) -> int:
    """Read an answer to its end; give its status."""
    head = (await reader.readuntil(b"\r\n\r\n")).decode("latin-1").lower()
    length = next(line for line in head.splitlines() if line.startswith("content-length:"))
    await reader.readexactly(int(length.partition(":")[2]))
    return int(head.split()[1])


async def run(servers: list[str], requests: int, think: float, seed: int) -> list[Answer]:
    """Let all teachers ask; those servers are taken in turn."""
    answers: list[Answer] = []
    left = [requests]
    async with asyncio.TaskGroup() as group:
        for number in range(TEACHERS):
            server = servers[number % len(servers)]
            group.create_task(teach(server, seed + number, think, left, answers))
    return answers


def describe(name: str, answers: list[Answer], seconds: float) -> None:
    """Print what was measured."""
    statuses = Counter(answer.status for answer in answers)
    print(f"\n{name}: {len(answers)} pages, statuses {dict(statuses)}")
    for kind, target in TARGETS.items():
        times = [answer.took for answer in answers if answer.kind == kind]
        if len(times) > 1:
            cuts = quantiles(times, n=100)
            print(
                f"  {kind}: {len(times)} pages, median {cuts[49]:.0f} ms, p95 {cuts[94]:.0f} ms"
                f" (target {target}), p99 {cuts[98]:.0f} ms, mean {mean(times):.1f} ms"
            )
    print(f"  {len(answers) / seconds:.1f} pages a second")


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("--requests", type=int, default=10_000, help="without think time")
    parser.add_argument("--thinking", type=int, default=600, help="requests with think time")
    parser.add_argument("--think", type=float, default=THINK_SECONDS)
    parser.add_argument("--servers", type=int, default=1)
    chosen = parser.parse_args()
    print(f"{TEACHERS} teachers, {chosen.servers} server(s), {os.cpu_count()} cores")
    print(f"load of the machine before: {os.getloadavg()[0]:.1f}")
    with tempfile.TemporaryDirectory() as folder, ExitStack() as stack:
        started = [stack.enter_context(running(Path(folder))) for _ in range(chosen.servers)]
        servers = [address for address, _ in started]
        measure("warming up", servers, started, 200, 0, 10_000)
        if chosen.thinking:
            name = f"think time {chosen.think:g} s"
            measure(name, servers, started, chosen.thinking, chosen.think, 20_000)
        part = chosen.requests // 5
        for number in range(5 if part else 0):
            measure(f"no think time, part {number + 1}", servers, started, part, 0, 31 * number)


def measure(
    name: str,
    servers: list[str],
    started: list[tuple[str, int]],
    requests: int,
    think: float,
    seed: int,
) -> None:
    """Let teachers ask, and print what it took."""
    before = [used_by(process) for _, process in started]
    begun = time.perf_counter()
    answers = asyncio.run(run(servers, requests, think, seed))
    describe(name, answers, time.perf_counter() - begun)
    for (_, process), was in zip(started, before, strict=True):
        now = used_by(process)
        each = (now.seconds - was.seconds) * 1000 * len(servers) / len(answers)
        print(f"  server: {each:.1f} ms of processor time a page, {now.memory:.0f} MiB")


if __name__ == "__main__":
    main()
