"""Greetings, thanks and praise: whole replies that answer nothing."""

from __future__ import annotations

from typing import Final

HELLOS: Final = frozenset(("hi", "hello", "hey", "hi there", "hello there", "hey there", "good morning", "good evening"))
PRAISE: Final = frozenset(("great", "cool", "good", "nice", "perfect", "fine"))
"""What answers "how", and else only acknowledges."""
THANKS: Final = PRAISE | frozenset((
    "thanks", "thank you", "thx", "ta", "cheers", "thanks a lot", "many thanks", "ok", "okay", "ok thanks", "okay thanks", "ok thank you",
    "got it", "will do", "alright", "all right", "understood", "\N{THUMBS UP SIGN}"))
"""Replies to a message without a question, such as the one on the evening before a squat day."""
