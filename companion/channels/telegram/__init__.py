"""Telegram, by long polling or a webhook. The only package that imports python-telegram-bot.

An update is confirmed to Telegram only after its turn is committed: the next poll, which confirms it, waits for that. Updates that were
not committed when the process dies are delivered again at the next start.
"""

import os

# PTB warns at every flood wait unless its later behaviour is chosen; this is the switch it documents for that.
os.environ.setdefault("PTB_TIMEDELTA", "true")

from companion.channels.telegram.channel import run_telegram
from companion.channels.telegram.inbound import inbound_of
from companion.channels.telegram.sender import TelegramPost, outcome_of
from companion.channels.telegram.settings import CannotHook, SecondInstance, TelegramSettings, WrongToken

__all__ = [
    "CannotHook", "SecondInstance", "TelegramPost", "TelegramSettings", "WrongToken", "inbound_of", "outcome_of", "run_telegram",
]
