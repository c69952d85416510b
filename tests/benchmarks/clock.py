"""What the benchmarks are timed by: other programs on the machine do not count."""

from __future__ import annotations

import resource
import time


def processor() -> float:
    """Return seconds of the processor used by this process and by those it has waited for."""
    children = resource.getrusage(resource.RUSAGE_CHILDREN)
    return time.process_time() + children.ru_utime + children.ru_stime
