"""Settings from environment variables, then an optional file, then defaults. The token and the webhook's secret never show in a repr."""

from __future__ import annotations

import os
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Final
from urllib.parse import urlsplit

DEFAULT_API_URL: Final = "https://api.telegram.org"
"""Telegram's own Bot API server; a self-hosted one replaces it."""

SETTING_NAMES: Final = ("COMPANION_TOKEN", "COMPANION_DATABASE", "COMPANION_API_URL", "COMPANION_BACKUPS", "COMPANION_METRICS_PORT",
                "COMPANION_WEBHOOK_URL", "COMPANION_WEBHOOK_SECRET", "COMPANION_WEBHOOK_PORT", "COMPANION_WEBHOOK_HOST",
                "COMPANION_KEEP_MONTHS")

_SECRET_NAMES: Final = {"COMPANION_TOKEN", "COMPANION_WEBHOOK_SECRET"}

DEFAULT_FILE: Final = Path("companion.toml")
"""The settings file read from the working directory if no other file is named."""

WEBHOOK_PORT: Final = 8443
"""Default port of the webhook: our choice."""


class BadSettings(Exception):
    """An unusable setting. The message names it in one line, without the value of a secret."""


@dataclass(frozen=True, slots=True)
class Webhook:
    """The webhook: its public address, its secret, and the local host and port it is served on."""

    url: str
    secret: str = field(repr=False)
    port: int = WEBHOOK_PORT
    host: str = "127.0.0.1"

    @property
    def path(self) -> str:
        """The only path that is served."""
        return urlsplit(self.url).path


@dataclass(frozen=True, slots=True)
class Settings:
    """Settings of one bot. ``secrets_in``: the file that holds the token or a webhook's secret, if any."""

    database: Path
    token: str = field(default="", repr=False)
    api_url: str = DEFAULT_API_URL
    backups: str = ""
    metrics_port: int | None = None
    webhook: Webhook | None = None
    keep_months: int | None = None
    secrets_in: Path | None = None

    def backup_folder(self, database: Path) -> Path | None:
        """Return the folder of daily backups; None if they are turned off."""
        if self.backups == "none":
            return None
        return Path(self.backups).expanduser() if self.backups else database.absolute().parent / "backups"


def default_database() -> Path:
    """Return the default database path, in this user's XDG data folder."""
    base = os.environ.get("XDG_DATA_HOME") or Path.home() / ".local" / "share"
    return Path(base) / "squat-companion" / "companion.sqlite"


def read_settings(environment: Mapping[str, str], file: Path | None = None) -> Settings:
    """Read settings from the environment over a TOML file (``file``, else ``companion.toml`` in the working directory if present).

    Raises BadSettings if a named file can't be read or a value is invalid.
    """
    written = {name: str(value) for name, value in _from_file(file).items() if name in SETTING_NAMES}
    values = written | {name: environment[name] for name in SETTING_NAMES if environment.get(name)}
    api_url = values.get("COMPANION_API_URL", DEFAULT_API_URL).rstrip("/")
    if not _leads_to_a_host(api_url):
        raise BadSettings("COMPANION_API_URL must be http:// or https:// with a host")
    database = values.get("COMPANION_DATABASE")
    return Settings(Path(database).expanduser() if database else default_database(),
                    values.get("COMPANION_TOKEN", "").strip(), api_url,
                    values.get("COMPANION_BACKUPS", "").strip(), _port("COMPANION_METRICS_PORT", values), _webhook(values),
                    _months(values), file or DEFAULT_FILE if _SECRET_NAMES & written.keys() else None)


def _leads_to_a_host(url: str) -> bool:
    try:
        parts = urlsplit(url)
        return parts.scheme in ("http", "https") and bool(parts.hostname) and parts.port != 0
    except ValueError:  # brackets that don't close, a port above 65535
        return False


def _port(name: str, values: Mapping[str, str]) -> int | None:
    text = values.get(name, "").strip()
    if not text:
        return None
    if not re.fullmatch(r"[0-9]{1,5}", text) or not 1 <= int(text) <= 65535:
        raise BadSettings(f"{name} must be a port, 1 to 65535")
    return int(text)


def _months(values: Mapping[str, str]) -> int | None:
    text = values.get("COMPANION_KEEP_MONTHS", "").strip()
    if not text:
        return None
    if not re.fullmatch(r"[0-9]{1,3}", text) or int(text) < 1:
        raise BadSettings("COMPANION_KEEP_MONTHS must be a whole number of months, 1 to 999")
    return int(text)


def _webhook(values: Mapping[str, str]) -> Webhook | None:
    url = values.get("COMPANION_WEBHOOK_URL", "").strip()
    if not url:
        return None
    if not re.fullmatch(r"https://[^/?#\s]+/[!-~]+", url) or "?" in url or "#" in url:
        raise BadSettings("COMPANION_WEBHOOK_URL must be https:// with a host and a path, and nothing else")
    secret = values.get("COMPANION_WEBHOOK_SECRET", "").strip()
    if not re.fullmatch(r"[A-Za-z0-9_-]{1,256}", secret):  # Bot API, setWebhook, secret_token (read)
        raise BadSettings("COMPANION_WEBHOOK_URL needs COMPANION_WEBHOOK_SECRET: 1 to 256 letters, digits, _ and -")
    return Webhook(url, secret, _port("COMPANION_WEBHOOK_PORT", values) or WEBHOOK_PORT,
                   values.get("COMPANION_WEBHOOK_HOST", "").strip() or "127.0.0.1")


def _from_file(file: Path | None) -> Mapping[str, object]:
    path = file or DEFAULT_FILE
    if file is None and not path.exists():
        return {}
    import tomllib

    try:
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except OSError as error:
        raise BadSettings(f"can't read the settings file {path}: {error.strerror}") from None
    except tomllib.TOMLDecodeError as error:
        raise BadSettings(f"the settings file {path} is not TOML: {error}") from None
