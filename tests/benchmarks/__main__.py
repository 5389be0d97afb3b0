"""The benchmarks, as one table: ``python -m tests.benchmarks [--big] [ROW ...]``, from the project's root.

Each figure stands beside that of something a person would otherwise use, measured in the same run by turns, as the median of at
least seven rounds. Nothing here is a test: a busy machine makes figures, not failures. ``--big``: ten million rows instead of one
million where the log grows (some minutes and two GB in the temporary folder). ``suite`` is measured only when it is named.
"""

from __future__ import annotations

import sys
from importlib import import_module
from time import perf_counter

from tests.benchmarks.measured import Row, machine, table

NAMES = ("start_up", "engine", "estimate", "caseload", "throughput", "latency", "chain", "growth", "memory", "draining", "flood",
         "scheduling", "film", "pictures")
ONLY_NAMED = ("suite",)


def main(arguments: list[str]) -> None:
    """Measure the rows named, or all, and print the table."""
    big = "--big" in arguments
    named = [one for one in arguments if one != "--big"] or list(NAMES)
    if unknown := [one for one in named if one not in (*NAMES, *ONLY_NAMED)]:
        raise SystemExit(f"no row {', '.join(unknown)}; there are {', '.join((*NAMES, *ONLY_NAMED))}")
    print(machine(), flush=True)
    rows: list[Row] = []
    for name in named:
        begin = perf_counter()
        module = import_module(f"tests.benchmarks.{name}")
        for row in module.rows(big) if name == "growth" else module.rows():
            rows.append(row)
            print(table([row]).splitlines()[-1], file=sys.stderr, flush=True)
        print(f"{name}: {perf_counter() - begin:.0f} s", file=sys.stderr, flush=True)
    print(table(rows))
    print(machine())


if __name__ == "__main__":
    main(sys.argv[1:])
