"""Updates as anybody may cause them: every optional field of the Bot API's Update and Message, of any kind of chat.

What a field may hold is read from the signatures of python-telegram-bot's own classes, so that a new field is there too.
"""

from __future__ import annotations

import inspect
import re
from collections.abc import Mapping
from functools import cache
from typing import Any, Final

import telegram
from telegram import Message, TelegramObject, Update

from tests.fakes.updates import EPOCH, content_of, private

DEEPEST: Final = 2
"""How deep inside an update optional fields are there; below stand the needed ones only."""

_NAMES: Final = {"from_user": "from"}
_USER: Final = {"id": 77, "is_bot": False, "first_name": "Any"}
_GIVEN: Final[Mapping[str, Any]] = {
    "User": _USER, "Chat": {"id": -5, "type": "group", "title": "Gym"}, "ChatMember": {"status": "member", "user": _USER},
    "Message": {"message_id": 1, "date": EPOCH, "chat": {"id": -5, "type": "group", "title": "Gym"}},
    "MaybeInaccessibleMessage": {"message_id": 1, "date": 0, "chat": private(77, "Any")},
    "MessageOrigin": {"type": "hidden_user", "date": EPOCH, "sender_user_name": "Any"},
    "Poll": content_of("poll"), "PollAnswer": {"poll_id": "1", "user": _USER, "option_ids": [1], "option_persistent_ids": ["1"]},
    "ReactionType": {"type": "emoji", "emoji": "👍"},
}
"""What stands for a class whose own fields would go round in a circle, or that is a family of others."""


def _fields(kind: type[TelegramObject], *, needed: bool) -> dict[str, str]:
    """Names and annotations of the fields that are always there, or of those that are not."""
    parameters = inspect.signature(kind.__init__).parameters.values()
    return {one.name: str(one.annotation) for one in parameters
            if one.name not in ("self", "api_kwargs") and (one.default is one.empty) is needed and one.kind is not one.VAR_KEYWORD}


def _sample(name: str, annotation: str, deep: int) -> Any:
    """A plausible value of a field, as JSON."""
    classes = [word for word in re.findall(r"[A-Z]\w+", annotation) if isinstance(getattr(telegram, word, None), type)]
    many = len(re.findall(r"\b(?:Sequence|tuple|list)\b", annotation))
    value: Any
    if classes:
        value = _object(classes[0], deep)
    elif "date" in name or "datetime" in annotation.lower():
        value = EPOCH
    elif re.search(r"\bbool\b", annotation):
        value = True
    elif re.search(r"\bint\b|TimePeriod", annotation):
        value = 1
    elif re.search(r"\bfloat\b", annotation):
        value = 1.0
    else:
        value = "x"
    for _ in range(many):
        value = [value]
    return value


def _object(name: str, deep: int) -> Any:
    if name in _GIVEN and (deep > 0 or name != "Message"):
        return _GIVEN[name]
    kind = getattr(telegram, name)
    have = {**_fields(kind, needed=True), **(_fields(kind, needed=False) if deep < DEEPEST else {})}
    return {_NAMES.get(field, field): _sample(field, annotation, deep + 1) for field, annotation in have.items()}


@cache
def message_fields() -> Mapping[str, Any]:
    """Every optional field of a message, with something in it; contents that the stand-in knows as it has them."""
    found = {_NAMES.get(name, name): _sample(name, annotation, 1) for name, annotation in _fields(Message, needed=False).items()}
    for kind in ("photo", "video", "video_note", "animation", "voice", "audio", "document", "sticker", "location", "contact", "dice",
                 "poll"):
        found[kind] = content_of(kind)
    for name in ("from", "text", "edit_date"):
        del found[name]  # drawn by whoever makes the message
    return found


@cache
def update_kinds() -> Mapping[str, Any]:
    """Every kind of update but the ones that are messages, with something in it."""
    kinds = {name: annotation for name, annotation in _fields(Update, needed=False).items() if not re.search(r"\bMessage\b", annotation)}
    return {name: _sample(name, annotation, 0) for name, annotation in kinds.items()}


def message_kinds() -> list[str]:
    """The kinds of update that are a message."""
    return [name for name, annotation in _fields(Update, needed=False).items() if re.search(r"\bMessage\b", annotation)]


CHATS: Final = ("private", "group", "supergroup", "channel", "sender", "", "a new kind", "PRIVATE")


def chat_of(kind: str, user: int, name: str) -> dict[str, Any]:
    """The private chat of a user, or some other chat, which has an id of its own."""
    return private(user, name) if kind == "private" else {"id": -1000 - user, "type": kind, "title": name}


def message_of(user: Mapping[str, Any], chat: Mapping[str, Any], **more: Any) -> dict[str, Any]:
    """A message of a user in a chat."""
    return {"message_id": 1, "date": EPOCH, "chat": chat, "from": user, **more}


def tap_of(user: Mapping[str, Any], data: str | None, **more: Any) -> dict[str, Any]:
    """A tap of a user; a game's carries no data."""
    whole = {"id": "1", "from": user, "chat_instance": "1", **more}
    return whole if data is None else {**whole, "data": data}
