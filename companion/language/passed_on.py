"""Words of a lifter that may be passed on to somebody else: as they were written, cut between words, and none that may be of self-harm."""

from __future__ import annotations

from functools import lru_cache

from companion.language.flags import Flag, hear_flags


@lru_cache(64)
def in_whole_words(text: str, most: int) -> str:
    """Return a text in one line of at most ``most`` characters, cut between two words where it is longer."""
    clean = " ".join(text.split())
    if len(clean) <= most:
        return clean
    kept = clean[:most - 1]
    whole = kept if clean[most - 1] == " " else kept.rpartition(" ")[0] or kept
    return whole.rstrip(" ,;:–-") + "…"


def passed_on(text: str, most: int) -> str:
    """Return the words that may be passed on; "" where they may be of self-harm, which nobody hears of unasked."""
    if any(Flag.SELF_HARM in one.named for one in hear_flags(text)):
        return ""
    return in_whole_words(text, most)
