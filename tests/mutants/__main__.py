"""``python -m tests.mutants [--changed [BASE]] [--workers N] [TARGET …]``: which guards no test would miss.

A target is a part of a file's path, or of path, blank and mutant (none: all). ``--changed``: only mutants on lines that differ from
BASE (HEAD~ where none is given). It ends with 1 where a mutant survives that is not in equivalent.toml, or a row there names none that
is there.
"""

from __future__ import annotations

import argparse
import json
import re
import shutil
import subprocess
import sys
import tempfile
import tomllib
from collections.abc import Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from queue import SimpleQueue
from time import monotonic

from tests.mutants.mutate import Mutant, mutants
from tests.mutants.numbers import number_mutants, stages_of
from tests.mutants.targets import TARGETS, Target

ROOT = Path(__file__).parents[2]
EQUIVALENT = Path(__file__).with_name("equivalent.toml")
LEAST_SECONDS = 20
"""A mutant may take six times what the tests take unchanged, and at least so long; our choice."""


@dataclass(frozen=True, slots=True)
class Told:
    """What became of one mutant: "killed", "equivalent" or "survived"."""

    target: Target
    mutant: Mutant
    became: str

    @property
    def name(self) -> str:
        return f"{self.target.file} {self.mutant.name}"


class Worker:
    """A process that runs tests in a copy of the tree of its own."""

    def __init__(self, tree: Path) -> None:
        self.tree = tree
        listed = subprocess.run(("git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"), cwd=ROOT, check=True,
                                capture_output=True, text=True).stdout
        for name in filter(None, listed.split("\0")):
            if (ROOT / name).is_file():
                (tree / name).parent.mkdir(parents=True, exist_ok=True)
                shutil.copy2(ROOT / name, tree / name)
        self.process: subprocess.Popen[str] | None = None
        self.warm: Target | None = None
        self.seconds: dict[str, int] = {}

    def tests(self, target: Target, mutant: Mutant) -> bool:
        """Whether a test misses what the mutant takes out."""
        self._warm(target)
        try:
            return any(self._run(target, stage, mutant.source) for stage in (*near(target, mutant), *target.stages))
        finally:
            shutil.copy2(ROOT / target.file, self.tree / target.file)

    def end(self) -> None:
        if self.process and self.process.stdin:
            self.process.stdin.close()
            self.process.wait()
        self.process = None

    def _warm(self, target: Target) -> None:
        """A process for this target, which has seen its tests hold unchanged."""
        if self.warm is target:
            return
        self.end()
        self.process = subprocess.Popen((sys.executable, "-m", "tests.mutants.worker"), cwd=self.tree, text=True,
                                        stdin=subprocess.PIPE, stdout=subprocess.PIPE)
        self.warm, self.seconds = target, {}
        for stage in target.stages:
            began = monotonic()
            if code := self._run(target, stage, (ROOT / target.file).read_text(encoding="utf-8"), warm=True):
                raise SystemExit(f"{stage} does not hold as it is (pytest ended with {code})")
            self.seconds[stage] = max(LEAST_SECONDS, int(6 * (monotonic() - began)))
        for stale in (self.tree / target.file).parent.glob(f"__pycache__/{Path(target.file).stem}.*"):
            stale.unlink()  # a mutant of the same length, written in the same second, would be taken for what was compiled

    def _run(self, target: Target, stage: str, source: str, warm: bool = False) -> int:
        assert self.process
        assert self.process.stdin
        assert self.process.stdout
        job = {"file": target.file, "source": source, "tests": stage.split(), "seconds": self.seconds.get(stage, 600), "warm": warm}
        print(json.dumps(job), file=self.process.stdin, flush=True)
        return int(json.loads(self.process.stdout.readline())["code"])


def chosen(targets: Sequence[Target], base: str | None) -> Iterator[tuple[Target, Mutant]]:
    """The mutants of the targets, in the order of the table and of the text."""
    for target in targets:
        lines = changed_lines(target.file, base) if base else None
        if lines == set():
            continue
        for mutant in mutants_of(target):
            scope = mutant.name.partition(":")[0].split(".")[0]
            guard = scope not in target.but and (not target.only or scope in target.only)
            if guard and (lines is None or lines & set(range(mutant.line, mutant.last + 1))):
                yield target, mutant


def mutants_of(target: Target) -> list[Mutant]:
    """The mutants of a target, in the order of the text: of a table of numbers, or of code."""
    text = (ROOT / target.file).read_text(encoding="utf-8")
    return number_mutants(text) if target.file.endswith(".toml") else mutants(text, target.compared)


def near(target: Target, mutant: Mutant) -> tuple[str, ...]:
    """The tests of one mutant that are tried before those of its target."""
    return stages_of(mutant) if target.file.endswith(".toml") else ()


def changed_lines(file: str, base: str) -> set[int]:
    """The lines of a file that are not as they were."""
    diff = subprocess.run(("git", "diff", "-U0", base, "--", file), cwd=ROOT, check=True, capture_output=True, text=True).stdout
    return {line for first, many in re.findall(r"^@@ -\S+ \+(\d+)(?:,(\d+))? @@", diff, re.MULTILINE)
            for line in range(int(first), int(first) + int(many or 1))}


def main(argv: Sequence[str] | None = None) -> int:
    asked = argparse.ArgumentParser(prog="python -m tests.mutants", description=__doc__)
    asked.add_argument("--changed", nargs="?", const="HEAD~", metavar="BASE")
    asked.add_argument("--workers", type=int, default=2)
    asked.add_argument("target", nargs="*")
    given = asked.parse_args(argv)
    same = {row["mutant"]: row["reason"] for row in tomllib.loads(EQUIVALENT.read_text(encoding="utf-8")).get("equivalent", [])}

    def asked_for(name: str) -> bool:
        return not given.target or any(part in name for part in given.target)

    began = monotonic()
    jobs = [(target, mutant) for target, mutant in chosen(TARGETS, given.changed) if asked_for(f"{target.file} {mutant.name}")]
    targets = [one for one in TARGETS if any(target is one for target, _ in jobs)]
    with tempfile.TemporaryDirectory(prefix="mutants-") as place:
        free: SimpleQueue[Worker] = SimpleQueue()
        for n in range(given.workers):
            free.put(Worker(Path(place, str(n))))

        def judged(job: tuple[Target, Mutant]) -> Told:
            target, mutant = job
            if f"{target.file} {mutant.name}" in same:
                return Told(target, mutant, "equivalent")
            worker = free.get()
            try:
                told = Told(target, mutant, "killed" if worker.tests(target, mutant) else "survived")
            finally:
                free.put(worker)
            if told.became == "survived":
                print(f"survived  {target.file}:{mutant.line}  {mutant.name}", flush=True)
            return told

        with ThreadPoolExecutor(given.workers) as pool:
            told = list(pool.map(judged, jobs))
        while not free.empty():
            free.get().end()
    for line in table(told, targets):
        print(line)
    print(f"{len(told)} mutants in {monotonic() - began:.0f} s")
    stale = [] if given.changed else [name for name in same if asked_for(name) and name not in {one.name for one in told}]
    for name in stale:
        print(f"equivalent.toml names one that is not there: {name}")
    return int(bool(stale) or any(one.became == "survived" for one in told))


def table(told: Sequence[Told], targets: Sequence[Target]) -> Iterator[str]:
    """How many of each file, as the README has it."""
    yield "| file | mutants | killed | equivalent | survived |"
    yield "|---|---|---|---|---|"
    for target in targets:
        became = [one.became for one in told if one.target is target]
        counts = (len(became), *map(became.count, ("killed", "equivalent", "survived")))
        yield f"| {target.file} | {' | '.join(map(str, counts))} |"


if __name__ == "__main__":
    sys.exit(main())
