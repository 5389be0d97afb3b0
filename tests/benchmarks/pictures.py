"""How long a picture takes, in processor time of a process of its own: the first still, the first film of a loop, and all of them."""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Iterator
from statistics import median

from tests.benchmarks.measured import ROUNDS, Row

FIRST = """
from companion.pictures.cache import drawn, ending_of
from companion.pictures.poses import pose
drawing = pose({name!r})
drawn(drawing, ending_of(drawing, True))
import time; print(time.process_time())
"""
ALL = """
import json, time
from companion.pictures.cache import drawn, ending_of
from companion.pictures.poses import poses
def took(drawing):
    began = time.process_time()
    drawn(drawing, ending_of(drawing, True))
    return time.process_time() - began
print(json.dumps([took(drawing) for drawing in poses().values()]))
"""


def _run(code: str) -> list[float]:
    told = json.loads(subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout)
    return told if isinstance(told, list) else [told]


def rows() -> Iterator[Row]:
    """The first of a process, with Python's start and all imports; then the median over all drawings, which is that of a still."""
    for what, name, bound in (("the first picture of a process", "squat_bands", 0.4), ("the same, a loop as MP4", "squat_slow", 0.0)):
        took = median(_run(FIRST.format(name=name))[0] for _ in range(ROUNDS))
        yield Row(f"{what} (processor time)", "-", took * 1000, None, "ms", took * 1000, "at most" if bound else "told only", bound * 1000)
    took = median(_run(ALL))
    yield Row("a picture, median of all (processor time)", "-", took * 1000, None, "ms", took * 1000, "at most", 120)
