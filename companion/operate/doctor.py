"""The doctor: every check on what is seen, and the exit code of the worst."""

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
    """Everything found of a bot, running or not, in the order of CHECKS. Changes nothing, and never raises for how it is.

    ``backups`` is the folder of daily backups, None where they are turned off.
    """
    with looking(settings, database, backups, now, free) as seen:
        return [finding for check in CHECKS for finding in findings_of(check, seen)]


def exit_code(findings: Iterable[Finding]) -> int:
    """0 all fine, 1 something to look at, 2 something broken."""
    return int(max((finding.severity for finding in findings), default=Severity.FINE))


def told(finding: Finding) -> str:
    """A finding as a line to print."""
    return f"{WORDS[finding.severity]:6}  {finding.about:9}  {finding.line}"
