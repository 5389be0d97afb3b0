"""The doctor: runs every check, and turns the worst result into an exit code."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from datetime import datetime
from pathlib import Path

from companion.base.settings import Settings
from companion.operate.checks import CHECKS, findings_of
from companion.operate.inspection import Finding, Severity, looking
from companion.operate.integrity import free_bytes

WORDS = {Severity.FINE: "fine", Severity.LOOK: "look", Severity.BROKEN: "BROKEN"}


def examine(settings: Settings, database: Path, backups: Path | None, now: datetime,
            free: Callable[[Path], int] = free_bytes) -> list[Finding]:
    """Return the results of all checks on a bot, running or not, in the order of CHECKS. Changes nothing, and never raises because of
    the bot's state.

    ``backups``: the folder of daily backups, None if they are turned off.
    """
    with looking(settings, database, backups, now, free) as seen:
        return [finding for check in CHECKS for finding in findings_of(check, seen)]


def exit_code(findings: Iterable[Finding]) -> int:
    """Return 0 if all is fine, 1 if something needs a look, 2 if something is broken."""
    return int(max((finding.severity for finding in findings), default=Severity.FINE))


def told(finding: Finding) -> str:
    """Return a result as a line to print."""
    return f"{WORDS[finding.severity]:6}  {finding.about:9}  {finding.line}"
