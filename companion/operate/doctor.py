"""The doctor: runs every check, and turns the worst result into an exit code."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from datetime import datetime
from pathlib import Path

from companion.base.settings import Settings
from companion.operate.checks import CHECKS, results_of
from companion.operate.inspection import CheckResult, Severity, inspecting
from companion.operate.integrity import free_bytes

SEVERITY_WORDS = {Severity.FINE: "fine", Severity.LOOK: "look", Severity.BROKEN: "BROKEN"}


def examine(settings: Settings, database: Path, backups: Path | None, now: datetime,
            free: Callable[[Path], int] = free_bytes) -> list[CheckResult]:
    """Return the results of all checks on a bot, running or not, in the order of CHECKS. Changes nothing, and never raises because of
    the bot's state.

    ``backups``: the folder of daily backups, None if they are turned off.
    """
    with inspecting(settings, database, backups, now, free) as seen:
        return [finding for check in CHECKS for finding in results_of(check, seen)]


def exit_code(findings: Iterable[CheckResult]) -> int:
    """Return 0 if all is fine, 1 if something needs a look, 2 if something is broken."""
    return int(max((finding.severity for finding in findings), default=Severity.FINE))


def result_line(finding: CheckResult) -> str:
    """Return a result as a line to print."""
    return f"{SEVERITY_WORDS[finding.severity]:6}  {finding.about:9}  {finding.line}"
