"""The kinds of question: how each is shown, read from a typed reply, and bounded.

Reading is pure: ``read(text, context)`` returns an Answer, or an Unclear with a short reason. No kind guesses; it asks again instead.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import datetime
from functools import cache, lru_cache
from typing import Final

from rapidfuzz.distance import OSA

from companion.conversation.condition import ALWAYS, Condition, Facts, Value
from companion.language.choosing import Options, choose, named
from companion.language.clauses import clauses, flat
from companion.language.half import half_denied, half_said, in_doubt
from companion.language.meanings import surely_meant
from companion.language.phrases import Phrase, hear, normalise
from companion.language.questions import is_question
from companion.language.units import METRIC


@dataclass(frozen=True, slots=True)
class ReadingContext:
    """The context for reading a reply: the lifter's units, the time, ``strict`` if guessing is forbidden, and a function for the facts,
    which few kinds need."""

    units: str = METRIC
    now: datetime | None = None
    strict: bool = False
    facts: Callable[[], Facts] = dict


@dataclass(frozen=True, slots=True)
class Answer:
    """A reply that was understood: the stored value, the text it came from, and its unit ("" for none). ``tapped``: by a button;
    ``more``: the text says more than the value, and is kept with it; ``beside``: what more it says may answer the questions that follow."""

    value: Value
    raw: str
    unit: str = ""
    tapped: bool = False
    more: bool = False
    beside: bool = False


@dataclass(frozen=True, slots=True)
class Unclear:
    """A reply that was not understood: a short reason, shown before the question is asked again."""

    reason: str


@dataclass(frozen=True, slots=True)
class Option:
    """One answer to a choice: its stored value, its label, other words for it, and the condition under which it is offered."""

    value: str
    label: str
    also: tuple[str, ...] = ()
    only_if: Condition = ALWAYS


@dataclass(frozen=True, slots=True)
class Kind:
    """The base of all kinds of question: the options that become buttons, and an example to show after an unclear reply."""

    @property
    def options(self) -> tuple[Option, ...]:
        """The answers to tap, in order; empty if the answer is typed."""
        return ()

    @property
    def unit(self) -> str:
        """The stored unit of a number, or ""."""
        return ""

    @property
    def typical(self) -> Value:
        """The answer assumed where the number of questions still to come is estimated."""
        return self.options[0].value if self.options else ""

    @property
    def samples(self) -> tuple[Value, ...]:
        """Answers to try when a flow is checked."""
        return tuple(option.value for option in self.options)

    def example(self, context: ReadingContext) -> str:
        """Return a line that shows a valid answer."""
        return "Tap one of the buttons, or type its words."

    def read(self, text: str, context: ReadingContext) -> Answer | Unclear:
        """Return the answer in a typed reply, or the reason there is none."""
        return pick(text, self.options, context)

    def take(self, kind: str, ref: str) -> Answer | None:
        """Return the answer in a photo, video or other non-text message; None for none. ``kind``: of the message; ``ref``: the channel's
        reference."""
        return None

    def tapped(self, option: Option, context: ReadingContext) -> Answer | Unclear:
        """Return the answer of an option's button."""
        return Answer(option.value, option.label)

    def declined(self, text: str) -> bool:
        """True if a reply says that there is nothing to give here, where nothing has to be given: then the question is skipped."""
        return False

    def claims(self, text: str, context: ReadingContext) -> bool:
        """True if a whole reply is an answer here although it might mean something else elsewhere: a control word, such as "tomorrow", or
        a number that a doubtful sign is heard in."""
        return False

    def told(self, text: str) -> Answer | None:
        """Return the answer in a sentence that says more than it; None for no such."""
        return None

    def told_before_pain(self, text: str) -> Answer | None:
        """Return the answer that a whole sentence tells, where it counts before pain and signs are looked for in it; None for no such."""
        return None

    def anew(self, text: str, context: ReadingContext) -> Answer | None:
        """Return the answer in a reply that only puts another one right, where this question was answered before; None for no such."""
        return None

    def unusual(self, value: Value) -> bool:
        """True if a value is possible but rare enough to be confirmed."""
        return False


@lru_cache(maxsize=512)
def _names(options: tuple[Option, ...]) -> Options:
    return named((option.value, (option.label, option.label.replace(",", ""), option.value.replace("_", " "), *option.also))
                 for option in options)


@lru_cache(maxsize=512)
def _surely(options: tuple[Option, ...], words: str) -> Answer | None:
    """Return the answer that a whole reply surely means, where it means one."""
    rows = surely_meant(tuple((option.value, option.label) for option in options))
    found = [(value, said) for value, pattern in rows if (said := pattern.fullmatch(words))]
    return Answer(found[0][0], words, beside=bool(found[0][1].lastindex)) if len(found) == 1 else None


_BETWEEN: Final = re.compile(r"[\s,;.!]+")


def pick(text: str, options: tuple[Option, ...], context: ReadingContext, beside: bool = False) -> Answer | Unclear:
    """Return the option that a text names by its label or another word for it or, unless strict, in other words that assert it alone;
    where it is strict, in those that surely mean it. ``beside``: more may be told with it."""
    wanted = flat(text).strip(" .")
    names = _names(options)
    for value, words in names:
        if wanted in words or wanted.replace(",", "") in words:
            return Answer(value, text)
    surely = _surely(options, _BETWEEN.sub(" ", f"{wanted} ")) if context.strict else None
    if surely and (beside or not surely.beside):
        return replace(surely, raw=text)
    if not context.strict and len(wanted) >= 4 and (chosen := choose(clauses(text), names)).sure:
        return Answer(chosen.values[0], text)
    return Unclear("I could not match that to one of the answers.")


_BARE: Final = (("no", re.compile(r"(?:nope|nah|naw|no)(?:,? (?:nope|nah|no|not at all|none|nothing))*")),
                ("yes", re.compile(r"(?:yep|yeah|yup|yea|yes)(?:,? (?:yep|yeah|yup|yes|it did))*")))
""""I didn't" is none of them: it may say that nothing was done."""


@dataclass(frozen=True, slots=True)
class Choice(Kind):
    """One of a few answers. ``later``: the one whose words, said later, answer it anew by themselves; any other needs "i meant" before
    it. ``doubt``: the one that any words for "not sure" are, where it is on offer. ``told_by``: returns the option that a whole sentence
    tells, "" for none; ``told_first``: that counts before pain and signs are looked for in it, so that it may hold none."""

    choices: tuple[Option, ...]
    later: str = ""
    doubt: str = "unsure"
    told_by: Callable[[str], str] | None = None
    told_first: bool = False

    @property
    def options(self) -> tuple[Option, ...]:
        return self.choices

    def read(self, text: str, context: ReadingContext) -> Answer | Unclear:
        """A bare yes or no of any wording is the option that "yes" or "no" names, also where nothing is guessed."""
        if self.told_by and (value := self.told_by(text)):
            return Answer(value, text, beside=True)
        bare = next((word for word, said in _BARE if context.strict and said.fullmatch(flat(text).strip(" ."))), text)
        read = pick(bare, self.options, context, beside=True)
        values = {option.value for option in self.options}
        if isinstance(read, Unclear) and context.strict and self.doubt in values:
            if in_doubt(text):
                return Answer(self.doubt, text)
            if "no" in values and (half_said(text) or half_denied(text)):
                return Unclear(HALF_COUNTS)
        return replace(read, raw=text) if isinstance(read, Answer) else read

    def told_before_pain(self, text: str) -> Answer | None:
        value = self.told_by(text) if self.told_by and self.told_first else ""
        return Answer(value, text) if value else None

    def anew(self, text: str, context: ReadingContext) -> Answer | None:
        meant = _MEANT.fullmatch(normalise(text).strip(" .!"))
        read = pick(meant["what"] if meant else text, self.options, replace(context, strict=True))
        return replace(read, raw=text) if isinstance(read, Answer) and (meant or read.value == self.later) else None


_MEANT: Final = re.compile(r"(?:(?:no|oh|oops|sorry|wait),? )*(?:i (?:only |just )?(?:meant|mean)|it(?:'?s| is| was))(?: in| it was)*"
                           r"(?: my| the)? (?P<what>.+)")


def choice(*rows: tuple[str, ...] | Option) -> Choice:
    """Return a choice from rows of (value, label, other words …)."""
    return Choice(tuple(row if isinstance(row, Option) else Option(row[0], row[1], row[2:]) for row in rows))


@cache
def _yes_no(yes: str, no: str, unsure: bool, also_yes: tuple[str, ...]) -> tuple[Option, ...]:
    both = (Option("yes", yes, ("yes", *also_yes)), Option("no", no, ("no",)))
    return (*both, Option("unsure", "Not sure", ("unsure",))) if unsure else both


HALF_COUNTS: Final = "A little of it counts too, or only at times: then say not sure. None of it at all: say no."
HALF_IS_YES: Final = "A little of it counts too: then say yes. None of it at all: say no."
"""Said of half an admission beside other words, and of half a denial: both answers are named, and neither is guessed."""

NO_TO_ALL: Final = "If that is no to all of it, say no. If any of it is so, say yes."
"""Said of a denial of something named, "no cancer", where a question that weighs asks of more than that."""
_DENIED: Final = re.compile(r"(?:no|nope|nah|naw|not|never|without)\b[^?]*")

_UNABLE: Final = re.compile(r"(?:(?:no|nope),? )?i can'?t")
"""No plain no where safety is asked about: to a question about the bladder it may be the sign itself."""


_AGE: Final = re.compile(r"(?:(?P<no>no|nope|nah)|yes|yeah|yep|yup|ya|sure|ofc|of course)?[,. ]*"
                        r"(?:(?:i am|i'm|im|i|am|just|only|turned|now|age|aged|over|above) )*"
                        r"(?P<age>[1-9]\d)(?: ?(?:years?(?: old)?|yrs?(?: old)?|yo|y/o|now|already))*")


@dataclass(frozen=True, slots=True)
class YesNo(Kind):
    """Yes or no; with ``unsure`` also "not sure", which in a safety question counts as the worse answer. ``also_yes``: other words for yes;
    ``partly``: the answer that "a bit" stands for, the careful one, where it is not "not sure"; where safety is asked about, also beside
    other words; ``from_age``: a stated age
    is yes from there on; ``tells``: true of a sentence that says yes and more, such as who and when; ``denies``: true of one that says
    no in other words."""

    unsure: bool = False
    yes: str = "Yes"
    no: str = "No"
    also_yes: tuple[str, ...] = ()
    partly: str = ""
    from_age: int = 0
    tells: Callable[[str], bool] | None = None
    denies: Callable[[str], bool] | None = None

    @property
    def options(self) -> tuple[Option, ...]:
        return _yes_no(self.yes, self.no, self.unsure, self.also_yes)

    @property
    def typical(self) -> Value:
        return "no"

    def read(self, text: str, context: ReadingContext) -> Answer | Unclear:
        heard = hear(text, strict=context.strict)
        if heard in (Phrase.YES, Phrase.READY) and not (context.strict and heard is Phrase.READY):
            return Answer("yes", text)
        if heard is Phrase.NO and not (context.strict and _UNABLE.fullmatch(normalise(text).strip(" .!"))):
            return Answer("no", text)
        if self.from_age and (stated := _AGE.fullmatch(normalise(text).strip(" .!"))):
            grown = int(stated["age"]) >= self.from_age
            return Unclear("I read two answers.") if grown and stated["no"] else Answer("yes" if grown else "no", text)
        if heard is Phrase.UNSURE and self.unsure:
            return Answer("unsure", text)
        if self.partly and half_said(text) and (context.strict or in_doubt(text)):
            return Answer(self.partly, text)
        if (self.unsure or (self.partly and context.strict)) and in_doubt(text):
            return Answer("unsure" if self.unsure else self.partly, text)
        read = pick(text, self.options, ReadingContext(context.units, context.now, strict=True), beside=True)
        if context.strict and isinstance(read, Unclear) and (self.unsure or self.partly) and (half_said(text) or half_denied(text)):
            return Unclear(HALF_COUNTS if self.unsure else HALF_IS_YES)
        if context.strict and self.unsure and isinstance(read, Unclear) and _DENIED.fullmatch(normalise(text)):
            return Unclear(NO_TO_ALL)
        return read

    def told(self, text: str) -> Answer | None:
        said = "yes" if self.tells and self.tells(text) else "no" if self.denies and self.denies(text) else ""
        return Answer(said, text, more=True) if said else None

    def claims(self, text: str, context: ReadingContext) -> bool:
        return self.told(text) is not None

    def example(self, context: ReadingContext) -> str:
        return "Please answer yes, no or not sure." if self.unsure else "Please answer yes or no."


_OVER: Final = ("done", "finished", "complete", "completed")


def _says_over(text: str) -> bool:
    """True if a reply that is heard as "ready" says that something is over, a slip of the finger allowed."""
    said = flat(text)
    return "did it" in said or any(len(word) >= 4 and OSA.distance(word, over) <= 1 for word in said.split() for over in _OVER)


@dataclass(frozen=True, slots=True)
class Ready(Kind):
    """One button, tapped when set up or, where its label begins with "Done", when a movement is over: then plain assent is no answer, as it
    may be to anything."""

    label: str = "Ready"

    @property
    def ends(self) -> bool:
        """True if the button says that a movement is over."""
        return self.label.startswith("Done")

    @property
    def options(self) -> tuple[Option, ...]:
        return (Option("ready", self.label, ("done",) if self.ends else ("ready", "done")),)

    def read(self, text: str, context: ReadingContext) -> Answer | Unclear:
        assents = hear(text) in (Phrase.READY, Phrase.YES)
        if assents and (not self.ends or _says_over(text)):
            return Answer("ready", text)
        return Unclear("That waits until you have done it.") if assents else pick(text, self.options, context)

    def example(self, context: ReadingContext) -> str:
        return f"Tap “{self.label}” when you are."


@dataclass(frozen=True, slots=True)
class Hold(Ready):
    """A timed hold or set: one start button, a count-in, then a message when the time is over, and the next question.

    ``seconds``: the duration, or the name of a fact that holds it; ``count_in``: seconds to get into place. ``go`` and ``over``: the
    messages at its start and end. No tap is needed in between.
    """

    seconds: int | str = 10
    count_in: int = 5
    label: str = "Start"
    go: str = "Hold: {seconds:g} seconds. Let go early if you need to."
    over: str = "Time. Come out of it slowly."

    @property
    def options(self) -> tuple[Option, ...]:
        return (Option("ready", self.label, ("start", "begin", "go", "ready", "ok", "yes", "now")),)

    def read(self, text: str, context: ReadingContext) -> Answer | Unclear:
        return pick(text, self.options, context)

    def held(self, facts: Facts) -> float:
        """Return the seconds it is held, without the count-in."""
        return float(self.seconds if isinstance(self.seconds, int) else facts.get(self.seconds, 0))


@dataclass(frozen=True, slots=True)
class Words(Kind):
    """A few words of the lifter's own, stored unchanged; ``limit``: the most characters. ``tried``: answers worth trying for who
    checks a flow that reads them. ``optional``: true if "no" means that there are none; ``must``: true if nothing comes of leaving them
    out, so that no button does; ``not_yes``: why a mere yes is no answer, "" where it is one."""

    limit: int = 500
    example_text: str = ""
    tried: tuple[str, ...] = ()
    optional: bool = False
    must: bool = False
    not_yes: str = ""

    @property
    def samples(self) -> tuple[Value, ...]:
        return ("some words", *self.tried)

    def declined(self, text: str) -> bool:
        return self.optional and hear(text) is Phrase.NO

    def read(self, text: str, context: ReadingContext) -> Answer | Unclear:
        clean = " ".join(text.split())
        if not clean:
            return Unclear("I need a few words.")
        if self.not_yes and _ONLY_YES.fullmatch(flat(text).strip(" .!")):
            return Unclear(self.not_yes)
        if len(clean) > self.limit:
            return Unclear(f"That is too long to keep: {self.limit} letters at most.")
        return Answer(clean, text)

    def example(self, context: ReadingContext) -> str:
        return f"For example: {self.example_text}."


_ONLY_YES: Final = re.compile(r"(?:yes|yeah|yep|yup|ok|okay|sure|of course)(?:,? (?:i|he|she|they|it) (?:did|does|do|has|have|was|is))?")
_NO_MEDIA: Final = re.compile(
    r"\b(?:no|nope|nah|naw|none|nothing|nobody|not|never|without|forgot|unable|cannot|pass|skip|rather|leave it|"
    r"(?:do|did|does|have|has|could|would|is|was)nt|cant|wont)\b")
_STILL_TO_COME: Final = re.compile(
    r"[?\d]|\b(?:yet|wait|sec|seconds?|minutes?|moment|later|soon|upload\w*|sending|coming|work\w*|load\w*)\b|"
    r"^(?:why|what|how|who|do|does|is|can) ")
"""What makes a "no" no refusal of a picture: it is on its way, or something is asked."""


@dataclass(frozen=True, slots=True)
class Media(Kind):
    """A photo or a video, stored as the channel's own reference to it."""

    accepts: tuple[str, ...] = ("video", "photo")

    def declined(self, text: str) -> bool:
        said = flat(text)
        asks = is_question(text) or _STILL_TO_COME.search(said)
        return bool(hear(text) is Phrase.NO or _NO_MEDIA.search(said)) and not asks

    @property
    def samples(self) -> tuple[Value, ...]:
        return ("file-1",)

    def read(self, text: str, context: ReadingContext) -> Answer | Unclear:
        return Unclear(f"I need a {' or a '.join(self.accepts)} here, not words.")

    def take(self, kind: str, ref: str) -> Answer | None:
        return Answer(ref, kind) if kind in self.accepts else None

    def example(self, context: ReadingContext) -> str:
        return "Send it here, or tap Skip."


_PATH: Final = re.compile(r"\S*/\S*|.*\.(?:mp4|mov|m4v|mkv|avi|webm|jpe?g|png)", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Film(Media):
    """A film or a photo to be measured, also as a file; in a terminal the path of one."""

    accepts: tuple[str, ...] = ("video", "document")

    def read(self, text: str, context: ReadingContext) -> Answer | Unclear:
        path = text.strip().strip("\"'").replace("\\ ", " ")  # as a terminal writes what is dropped on it
        return Answer(path, "path") if _PATH.fullmatch(path) else Unclear("I need a film here, not words.")

    def example(self, context: ReadingContext) -> str:
        return "Send it here, best as a file, or tap Skip. In a terminal, type its path."


@dataclass(frozen=True, slots=True)
class BeingRead(Media):
    """The outcome of a film that is being read, which no person gives: "onset", "none" (no rounding), "good" (a test shot that will do)
    or "mend" (it can't be read as it is)."""

    accepts: tuple[str, ...] = ("reading",)

    @property
    def samples(self) -> tuple[Value, ...]:
        return ("onset", "none", "good", "mend")

    def read(self, text: str, context: ReadingContext) -> Answer | Unclear:
        return Unclear("I am still reading your film.")

    def example(self, context: ReadingContext) -> str:
        return "If nothing comes within two minutes, say “back” and send it again."


@dataclass(frozen=True, slots=True)
class Zone(Kind):
    """A time zone: from a city, an offset from UTC, or the time on the lifter's clock now. Stored as an IANA name or UTC±hh:mm."""

    @property
    def samples(self) -> tuple[Value, ...]:
        return ("UTC+00:00", "UTC+05:30")

    def read(self, text: str, context: ReadingContext) -> Answer | Unclear:
        from companion.language.places import find_zone

        found = find_zone(text, context.now, slips=not context.strict)
        return Answer(found, text) if found else Unclear("I don't know that place.")

    def take(self, kind: str, ref: str) -> Answer | None:
        from companion.language.places import zone_at

        found = zone_at(ref) if kind == "location" else None
        return Answer(found, "a location") if found else None

    def example(self, context: ReadingContext) -> str:
        return "Try a bigger city, “UTC+1”, or the time on your clock now, such as 18:40."
