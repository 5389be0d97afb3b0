"""A page as PDF, printed by a Chromium that is already there. Nothing it starts outlives the call."""

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
"""Seconds that printing may take; a log of a thousand answers takes a few (choice)."""
CHROMIUM_NAMES: Final = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable")
CHROMIUM_FLAGS: Final = ("--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
                         "--disable-background-networking",
                "--disable-component-update", "--disable-sync", "--disable-extensions", "--disable-dev-shm-usage",
                "--no-pdf-header-footer")
"""The page is our own, allows no script and asks for nothing, so it may be printed without a sandbox (which needs more rights
than a container gives)."""

Paper = Literal["A4", "letter"]


class NoPdf(Exception):
    """No PDF could be made; the text says why, in one line."""


def chromium_here() -> str:
    """Return where a Chromium is. Raises NoPdf where there is none."""
    for name in CHROMIUM_NAMES:
        if found := shutil.which(name):
            return found
    raise NoPdf("no Chromium found: install it (Debian: apt-get install chromium), or leave out --pdf and print the page from a browser")


def write_pdf(html: str, path: Path, chromium: str | None = None, paper: Paper = "A4", seconds: float = PRINT_SECONDS) -> None:
    """Print a page of HTML into a file of this path, readable by its owner only. ``chromium``: the program, None for the one
    that is there. Raises NoPdf where it is not there, fails, or takes longer than ``seconds``."""
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
    """Run a program to its end, in a session of its own that is ended as a whole where it takes too long. It is given nothing
    of our environment, in which the bot's token may be."""
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
    """Write a file that only its owner may read, whole or not at all, in the place of one that was there. Raises OSError."""
    part = path.with_name(f".{path.name}.part")
    part.unlink(missing_ok=True)
    with open(os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "wb") as out:
        out.write(data)
    part.replace(path)
