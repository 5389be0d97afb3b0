"""The tables of ``words.toml``: words that stand for each other, readings, ordinary wording, denials, other people, the past, hard work."""

import tomllib
from importlib.resources import files

from companion.language.flags.flag import Flag

_TABLES = tomllib.loads((files(__package__) / "words.toml").read_text("utf-8"))


def _table(name: str) -> str:
    return str(_TABLES[name])


SIGN_WORDS: dict[str, str] = _TABLES["sign_words"]
SIGN_SPELLINGS: dict[str, str] = _TABLES["sign_spellings"]
ORDINARY_SIGNS: dict[str, str] = _TABLES["ordinary_signs"]
CONCERNS = {heading: tuple(map(Flag, flags)) for heading, flags in _TABLES["concerns"].items()}
READ_AS, MISTYPED_SIGNS, REAL_WORDS = map(_table, ("read_as", "mistyped_signs", "real_words"))
NO, NOT_WORDS, UNDER_DENIAL, NOUNS, THOUGHT = map(_table, ("no", "not_words", "under_denial", "nouns", "thought"))
TOLD_AFTERWARDS, ANSWERED_AFTER, SUPPOSITIONS, EFFORT = map(_table, ("told_afterwards", "answered_after", "suppositions", "effort"))
OTHERS, FAMILY, FAMILY_BEFORE, ME_TOO, ONES_OWN = map(_table, ("others", "family", "family_before", "me_too", "ones_own"))
FAILING, STILL_TO_COME, UNSUSPECTED, PRESENT = map(_table, ("failing", "still_to_come", "unsuspected", "present"))
YEARS_AGO, CHILDHOOD, PAST_WORDS, LASTING, OVER_NOW = map(_table, ("years_ago", "childhood", "past_words", "lasting", "over_now"))
