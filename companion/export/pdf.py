"""HTML pages as PDF, printed by an installed Chromium. No process outlives the call."""

from __future__ import annotations

import contextlib
import os
import shutil
import signal
import subprocess
import tempfile
from pathlib import Path
from typing import Final, Literal

PRINT_SECONDS: Final = 60.0
"""Seconds that printing may take; our choice. A log of a thousand answers takes a few."""
CHROMIUM_NAMES: Final = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable")
CHROMIUM_FLAGS: Final = (
    "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync", "--disable-extensions", "--disable-dev-shm-usage", "--no-pdf-header-footer")
"""No sandbox, since that needs more rights than a container has; the page is our own, allows no script and loads nothing."""

Paper = Literal["A4", "letter"]


class NoPdf(Exception):
    """No PDF could be made; the message is one line for the operator."""


def chromium_here() -> str:
    """Return the path of an installed Chromium. Raises NoPdf where there is none."""
    for name in CHROMIUM_NAMES:
        if found := shutil.which(name):
            return found
    raise NoPdf("no Chromium found: install it (Debian: apt-get install chromium), or leave out --pdf and print the page from a browser")


def write_pdf(html: str, path: Path, chromium: str | None = None, paper: Paper = "A4", seconds: float = PRINT_SECONDS) -> None:
    """Print an HTML page to a PDF file that only its owner can read. ``chromium``: path of the program, None for the installed one.
    Raises NoPdf where it is missing, fails, or takes longer than ``seconds``; OSError where the file can't be written."""
    program = chromium or chromium_here()
    if not os.access(program, os.X_OK):
        raise NoPdf(f"there is no Chromium at {program}")
    with tempfile.TemporaryDirectory(prefix="companion-pdf-", ignore_cleanup_errors=True) as folder:
        page, made = Path(folder, "page.html"), Path(folder, "page.pdf")
        sized = html.replace("</head>", f"<style>@page {{ size: {paper}; }}</style></head>", 1)
        page.write_text(sized, encoding="utf-8")
        _run([program, *CHROMIUM_FLAGS, f"--user-data-dir={folder}/profile", f"--print-to-pdf={made}", page.as_uri()], folder, seconds)
        if not made.exists() or not made.read_bytes().startswith(b"%PDF"):
            raise NoPdf(f"{program} printed nothing")
        write_private(path, made.read_bytes())


def _run(command: list[str], home: str, seconds: float) -> None:
    """Run a program to its end, in a process group that is killed if it takes too long. Our environment is not passed on, since it may
    hold the bot's token."""
    try:
        running = subprocess.Popen(command, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
                                   start_new_session=True,
                                   env={"PATH": os.environ.get("PATH", os.defpath), "HOME": home, "LANG": "C.UTF-8"})
    except OSError as error:
        raise NoPdf(f"{command[0]} can't be started: {error.strerror}") from None
    try:
        code = running.wait(seconds)
    except subprocess.TimeoutExpired:
        raise NoPdf(f"{command[0]} took longer than {seconds:g} seconds") from None
    finally:
        with contextlib.suppress(ProcessLookupError, PermissionError):
            os.killpg(running.pid, signal.SIGKILL)
        running.wait()
    if code:
        raise NoPdf(f"{command[0]} ended with code {code}")


def write_private(path: Path, data: bytes) -> None:
    """Write or replace a file atomically, readable by its owner only. Raises OSError."""
    part = path.with_name(f".{path.name}.part")
    part.unlink(missing_ok=True)
    with open(os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "wb") as out:
        out.write(data)
    part.replace(path)
