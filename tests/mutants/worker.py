"""Runs the tests of one mutant after the other, each in a fork of a process that has read everything but this project.

It reads jobs as lines of JSON: a file, its source, what pytest is given, and the seconds it may take; and answers with a line
each: how pytest ended (0: nothing was missed). It runs, and its tests write, in a copy of the tree. A baseline (``"warm"``) also leaves
the modules from outside behind, so that no fork reads them again.
"""

from __future__ import annotations

import importlib
import json
import os
import signal
import sys
import traceback
from contextlib import suppress
from pathlib import Path
from time import monotonic
from typing import Any

import pytest

OUTSIDE = "site-packages"
TIMED = "not milliseconds and not tenth_of_a_second"
"""All tests but those that hold a clock: on a machine at work they miss what is not there."""


def main() -> None:
    sys.dont_write_bytecode = True
    for line in sys.stdin:
        job = json.loads(line)
        began = monotonic()
        code = _run(job)
        if job.get("warm") and code == 0:
            _read_ahead()
        print(json.dumps({"code": code, "seconds": monotonic() - began}), flush=True)


def _run(job: dict[str, Any]) -> int:
    Path(job["file"]).write_text(job["source"], encoding="utf-8")
    child = os.fork()
    if not child:
        _be_the_test(job)
    _, status = os.waitpid(child, 0)
    return os.waitstatus_to_exitcode(status)


def _be_the_test(job: dict[str, Any]) -> None:
    """Never returns; ends by SIGALRM where it takes too long."""
    signal.alarm(job["seconds"])
    code = 3
    try:
        quiet = os.open(os.devnull, os.O_WRONLY)
        os.dup2(quiet, 1)
        if not job.get("warm"):
            os.dup2(quiet, 2)
        sys.dont_write_bytecode = not job.get("warm")
        code = int(pytest.main([*job["tests"], "-x", "-q", "-n0", "-p", "no:cacheprovider", "--no-header", "--tb=no", "-k", TIMED,
                                *("--basetemp", "written", "-W", "ignore::pytest.PytestAssertRewriteWarning")]))
        if job.get("warm"):
            names = sorted(name for name, module in sys.modules.items() if OUTSIDE in (getattr(module, "__file__", None) or ""))
            Path("ahead.json").write_text(json.dumps(names), encoding="utf-8")
    except BaseException:
        traceback.print_exc()
    os._exit(code)


def _read_ahead() -> None:
    for name in json.loads(Path("ahead.json").read_text(encoding="utf-8")):
        if "pytest" not in name and not name.startswith("xdist"):  # left to pytest, which rewrites and registers them itself
            with suppress(Exception):
                importlib.import_module(name)


if __name__ == "__main__":
    main()
