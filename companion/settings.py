"""Settings: environment variables, then an optional file, then defaults. The token never shows in a repr."""

from __future__ import annotations

import os
import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Final

DEFAULT_API_URL: Final = "https://api.telegram.org"
"""Telegram's own Bot API server; a self-hosted one replaces it."""

NAMES: Final = ("COMPANION_TOKEN", "COMPANION_DATABASE", "COMPANION_API_URL", "COMPANION_BACKUPS", "COMPANION_METRICS_PORT")


class BadSettings(Exception):
    """A setting that can't be used; the text says which, in one line, without its value where that is a secret."""


@dataclass(frozen=True, slots=True)
class Settings:
    """What a person who runs the bot can set."""

    database: Path
    token: str = field(default="", repr=False)
    api_url: str = DEFAULT_API_URL
    backups: str = ""
    metrics_port: int | None = None

    def backup_folder(self, database: Path) -> Path | None:
        """The folder of a database's daily backups; None where they are turned off."""
        if self.backups == "none":
            return None
        return Path(self.backups).expanduser() if self.backups else database.absolute().parent / "backups"


def default_database() -> Path:
    """Where the file lies unless told otherwise: the XDG data folder of this user."""
    base = os.environ.get("XDG_DATA_HOME") or Path.home() / ".local" / "share"
    return Path(base) / "squat-companion" / "companion.sqlite"


def read_settings(environment: Mapping[str, str], file: Path | None = None) -> Settings:
    """Settings from the environment over a TOML file (``file``, else ``companion.toml`` here if there is one).

    Raises BadSettings where a file that was named can't be read, or an address is none.
    """
    values = {name: str(value) for name, value in _from_file(file).items() if name in NAMES}
    values |= {name: environment[name] for name in NAMES if environment.get(name)}
    api_url = values.get("COMPANION_API_URL", DEFAULT_API_URL).rstrip("/")
    if not api_url.startswith(("http://", "https://")):
        raise BadSettings("COMPANION_API_URL must begin with http:// or https://")
    database = values.get("COMPANION_DATABASE")
    return Settings(Path(database).expanduser() if database else default_database(),
                    values.get("COMPANION_TOKEN", "").strip(), api_url,
                    values.get("COMPANION_BACKUPS", "").strip(), _port(values.get("COMPANION_METRICS_PORT", "").strip()))


def _port(text: str) -> int | None:
    if not text:
        return None
    if not re.fullmatch(r"[0-9]{1,5}", text) or not 1 <= int(text) <= 65535:
        raise BadSettings("COMPANION_METRICS_PORT must be a port, 1 to 65535")
    return int(text)


def _from_file(file: Path | None) -> Mapping[str, object]:
    path = file or Path("companion.toml")
    if file is None and not path.exists():
        return {}
    try:
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except OSError as error:
        raise BadSettings(f"can't read the settings file {path}: {error.strerror}") from None
    except tomllib.TOMLDecodeError as error:
        raise BadSettings(f"the settings file {path} is not TOML: {error}") from None
