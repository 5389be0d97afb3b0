"""Pieces of updates, with the fields that the Bot API always gives."""

from __future__ import annotations

from typing import Any

BOT = {"id": 4242, "is_bot": True, "first_name": "Companion", "username": "companion_stand_in_bot"}
EPOCH = 1_790_000_000
"""The date of every message, in seconds since 1970."""


def private(chat_id: int, name: str) -> dict[str, Any]:
    """A private chat."""
    return {"id": chat_id, "type": "private", "first_name": name}


def person(chat_id: int, name: str) -> dict[str, Any]:
    """A person."""
    return {"id": chat_id, "is_bot": False, "first_name": name, "language_code": "en"}


def content_of(kind: str) -> Any:
    """What a message of this kind holds."""
    file = {"file_id": f"{kind}-file", "file_unique_id": f"{kind}-unique"}
    picture = {**file, "width": 90, "height": 160}
    contents: dict[str, Any] = {
        "photo": [{**picture, "file_id": "photo-small"}, picture],
        "video": {**picture, "duration": 6}, "video_note": {**file, "length": 240, "duration": 6},
        "animation": {**picture, "duration": 3}, "voice": {**file, "duration": 4}, "audio": {**file, "duration": 90},
        "document": file,
        "sticker": {**picture, "type": "regular", "is_animated": False, "is_video": False},
        "location": {"latitude": 47.0, "longitude": 8.0}, "contact": {"phone_number": "0", "first_name": "Kim"},
        "dice": {"emoji": "🎲", "value": 3},
        "poll": {"id": "1", "question": "?", "options": [], "total_voter_count": 0, "is_closed": False,
                 "is_anonymous": True, "type": "regular", "allows_multiple_answers": False, "allows_revoting": False,
                 "members_only": False},
    }
    return contents[kind]
