"""Telegram, by long polling or, where one is set, a webhook. The only package that imports python-telegram-bot.

An update is confirmed to Telegram only once its turn is committed: the next poll, which confirms, waits for it. What
was taken and not yet committed when the process dies is given again at the next start.
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
