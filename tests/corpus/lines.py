"""The files of the corpus, and which of their lines flags are learnt from."""

from __future__ import annotations

from functools import cache
from hashlib import sha256
from pathlib import Path

from companion.language.flags import rules
from companion.language.flags.flag import Flag

HERE = Path(__file__).parent
LANGUAGE = HERE.parent.parent / "companion" / "language"
FLAGGED = ("flags_seen.tsv", *sorted(path.name for path in HERE.glob("flags_more_*.tsv")))
UNFLAGGED = ("not_flags_seen.txt", *sorted(path.name for path in HERE.glob("not_flags_more_*.txt")))
# Lines of pain parts and of everyday use, none of which was written to carry a flag; those the rules hear one in are left out.
MOSTLY_UNFLAGGED = ("not_pain_seen.txt", "not_pain_more.txt", "not_pain_more_g.txt", "not_pain_more_h.txt", "not_flags_bot.txt")
_PAINED = ("pain_more_g.txt", "pain_more_h.txt")
_TURNS = "turns_seen.tsv"
OFFERED = "not_flags_offered.txt"
# How somebody may say the name of what is offered; not all of it is good English.
SAID_AS = ("{}", "i want {}", "i want to {}", "i'd like to {}", "can i {}", "can we do {}", "let's do {}", "how do i {}", "{} please",
           "no, {}", "what about {}", "i think {}", "{} i guess", "{} again", "it was {}", "not {}", "i dont have {}", "i have {}")
# What is typed to these is often a sign.
_ABOUT_SIGNS = {"safety_check", "pain", "signs", "crisis", "limits", "limit_over", "clearance", "morning", "since_pain", "setup_morning",
                "referral", "wrong_tap", "outcome"}


def lines_of(name: str) -> list[str]:
    """The messages of one file, a line each; a line that begins with # is a comment."""
    lines = (HERE / name).read_text("utf-8").splitlines()
    return [line for line in lines if line.strip() and not line.startswith("#")]


def flagged_lines(name: str) -> list[tuple[frozenset[Flag], str]]:
    """The messages of one file with the flags they carry: "flag,flag", a tab, the message."""
    parts = (line.partition("\t") for line in lines_of(name))
    return [(frozenset(map(Flag, names.split(","))), text) for names, _, text in parts]


@cache
def told() -> list[tuple[str, frozenset[Flag], str]]:
    """The part, the flags and the text of every line that tells something of flags."""
    flagged = [(name, flags, text) for name in FLAGGED for flags, text in flagged_lines(name)]
    none = [(name, text) for name in (*UNFLAGGED, *MOSTLY_UNFLAGGED, *_PAINED) for text in lines_of(name)]
    none += [(_TURNS, text) for text in _replies()] + [(OFFERED, text) for text in offered()]
    return flagged + [(name, frozenset[Flag](), text) for name, text in none]


def learnt_from() -> list[tuple[str, frozenset[Flag], str]]:
    """``told`` without what the rules hear a flag in though it was written for something else."""
    return [(part, flags, text) for part, flags, text in told() if part in (*FLAGGED, *UNFLAGGED) or not rules.by_the_rules(text)]


def offered() -> list[str]:
    """What the bot offers, said back to it: a bot that hears a sign in the name of its own button is not trusted with a real one."""
    return [way.format(name) for name in lines_of(OFFERED) for way in SAID_AS]


def _replies() -> list[str]:
    """Replies to what is asked at other places than about signs, which report none and no pain."""
    rows = (line.split("\t") for line in lines_of(_TURNS))
    return [text for state, act, _, text, *_ in rows if act not in ("flag", "pain") and state.partition("/")[0] not in _ABOUT_SIGNS]


def lines_hash() -> str:
    """The hash of what the network is learnt from; it stands with it."""
    return sha256("\n".join(f"{text}\t{sorted(flag.value for flag in flags)}" for _, flags, text in told()).encode()).hexdigest()


def writer_of(part: str) -> str:
    """Return who wrote a part for flags: what is behind "flags_more_"; "" for other parts."""
    return part.partition(".")[0].partition("flags_more_")[2]
