"""Wishes of a coach about their lifters, as they are typed: “what's up with Maria”, “cap Tom at 80”, “who is quiet”. Pure."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import Final, NamedTuple, TypeVar
from unicodedata import category, normalize

from rapidfuzz.distance import OSA

from companion.language.phrases import hear, normalise

K = TypeVar("K")


class Wish(NamedTuple):
    """One wish of a coach: a state of ``STATES_ASKED``, a view of ``VIEWS_ASKED``, "see", "undo" or an act; of whom, and the value that
    goes with it, as typed; "" where there is none."""

    what: str
    name: str = ""
    value: str = ""


_NAME: Final = r"(?P<name>\S.{0,58}?)"
_ASKS_OF: Final = r"(?:'s|s| is| are| has| have|'ve| got| went| gone| been)*"
_WHO: Final = rf"(?:who|(?:is |has )?any(?:one|body)){_ASKS_OF}"
_LOAD: Final = r"(?P<value>\d[\d.,]*(?: ?(?:kg|kgs|kilos?|lbs?|pounds))?)"
_DEPTH: Final = r"(?P<value>(?:(?:well |a little |a bit |just )?above|below)(?: parallel)?|parallel)"
_KEEP: Final = r"(?:cap|limit|pin|hold|keep|restrict|set)"
_AT: Final = r"(?: (?:at|to|on|under|with|max|from))*"
_WHOM: Final = _NAME.replace("name", "told")
_THEM: Final = _NAME.replace("name", "third")
_SAID: Final[tuple[tuple[str, str], ...]] = (
    ("undo", r"undo(?: that| it)?|take (?:that|it) back"),
    ("hurt", rf"{_WHO} (?:hurt|hurting|injured|in pain|pain)"),
    ("referred", rf"{_WHO} (?:referred|closed)"),
    ("quiet", rf"{_WHO} (?:quiet|silent|missing|stopped answering|not answer(?:ed|ing))|who (?:hasn't|hasnt|haven't) answered"),
    ("over_load", rf"{_WHO} (?:over|above|too heavy)(?: (?:the|their))?(?: load)?(?: limit)?"),
    ("worse", rf"{_WHO} (?:getting )?worse"), ("better", rf"{_WHO} (?:getting )?better"),
    ("overdue", rf"{_WHO} (?:overdue|late)(?: (?:for|with) (?:a |the |their )?retests?)?|(?:late|overdue) retests?"),
    ("retest_due", rf"{_WHO} due(?: for a retest| to test again)?|(?:whose )?retests?(?: is| are)? due"),
    ("note", r"who wrote(?: to me| me)?|(?:any |new |unread )*notes(?: for me)?"),
    ("new_result", rf"{_WHO} (?:new )?results|new results"), ("fine", rf"{_WHO} (?:fine|ok|okay|well)"),
    ("note to", rf"(?:write|send|message|text|reply|answer)(?: a (?:message|note))?(?: back)?(?: to)? {_NAME}|tell {_WHOM}"
     r" (?:to|that) .+"),
    ("private", rf"(?:private )?note (?:on|about|for) {_NAME}"),
    ("retest", rf"ask {_NAME} (?:for|to do|to) (?:a |another |the )?(?:re-?test|test again)(?: .+)?|(?:set|plan|book) (?:a |the )?re-?test "
     rf"for {_WHOM}(?: on .+)?|re-?test {_THEM}"),
    ("ask_for", rf"(?:ask|get) {_NAME} (?:for|to do|to send(?: me)?|to) (?:a |an |another |the )?(?P<value>\S.{{0,40}})"),
    ("pin_depth", rf"{_KEEP}(?: the)?(?: depth(?: of| for)?)? {_NAME}{_AT} {_DEPTH}|{_KEEP}(?: the)? depth (?:of|for) {_WHOM}"),
    ("pin_load", rf"{_KEEP}(?: the)?(?: load(?: of| for)?)? {_NAME}{_AT} {_LOAD}|(?:cap|limit|{_KEEP} (?:the )?load (?:of|for)) "
     rf"{_WHOM}"),
    ("raise_load", rf"(?:raise|increase)(?: the)?(?: load)?(?: limit)?(?: of| for)? {_NAME}(?:'s)?(?: limit| load)*(?: to .+)?|let "
     rf"{_WHOM} (?:go heavier|lift more|lift \d.*)"),
    ("reviewed", rf"(?:mark )?{_NAME} (?:as )?reviewed|(?:reviewed|review|mark|done with) {_WHOM}"),
    ("put_aside", rf"(?:snooze|dismiss|hide|put aside|park) {_NAME}(?: (?:until|for|till) .+)?|put {_WHOM} aside"),
    ("overrule", rf"overrule {_NAME}"), ("hand_over", rf"hand (?:over )?{_NAME}(?: over)?(?: to .+)?"),
    ("drill", rf"(?:choose|change|set|give)(?: a| the)? drill (?:of|for|to) {_NAME}"),
    ("group", rf"(?:add|put) {_NAME} (?:to|in|into) (?:a |the )?group.*"),
    ("see", rf"is {_NAME} (?:hurt|hurting|in pain|quiet|better|worse|well)"),
    ("see", rf"(?:and |so |ok )*(?:how{_ASKS_OF}|is|what did|what{_ASKS_OF} (?:up|new|going on|happening|wrong)(?: with)?|what about|"
     r"how about|tell me about|check(?: in| up)? on|(?:any )?news (?:of|from|on|about)|see|go to|status(?: of)?|look at|find|show(?: me)?|"
     rf"open|look up|lifter) {_NAME}(?: doing| ok(?:ay)?| all ?right| say| write| today| getting on| going| right now| now|"
     r" lately| this week)*"),
)
STATES_ASKED: Final = frozenset(("hurt", "referred", "quiet", "over_load", "worse", "better", "overdue", "retest_due", "note", "new_result",
                                 "fine"))
"""States of the list that are asked for by “who is …”."""
VIEWS_ASKED: Final[Mapping[str, str]] = {
    "numbers": "numbers", "results": "numbers", "squat days": "days", "days": "days", "charts": "charts", "messages": "thread",
    "thread": "thread", "alerts": "more", "orders": "more", "log": "log", "report": "report"}
"""The view of a lifter, by the word for it."""
_VIEW: Final = "|".join(VIEWS_ASKED)
_SENTENCES: Final = (*((what, re.compile(f"(?:please |pls |can you |could you )?(?:{pattern})")) for what, pattern in _SAID[:-1]),
                     *(("view", re.compile(f"(?:(?:show|open)(?: me)? |see )?(?:{pattern})")) for pattern in (
                         rf"{_NAME}(?:'s|'|s)? (?P<value>{_VIEW})", rf"(?:the )?(?P<value>{_VIEW}) (?:of|for|from) {_NAME}")),
                     (_SAID[-1][0], re.compile(_SAID[-1][1])))
_COMPARED: Final = re.compile(r"(?:please )?compare (.{1,60}?)(?: (?:and|with|to|vs) (.{1,60}))?")
_NOBODY: Final = frozenset(("me", "my", "us", "it", "this", "that", "them", "all", "you", "your", "the", "a"))
NAMES_SOMEBODY: Final = frozenset(("ask_for", "retest", "put_aside"))
"""Wishes in which nothing but a name can stand, so that it is said where nobody has it."""
NAME_WORDS: Final = 3
"""The most words of a name that nobody has; our choice."""
_LETTERS: Final = re.compile(r"\w+")


def wish_in(text: str, names: Iterable[str]) -> Wish | None:
    """Return the wish that a whole message is; None where it is none, or where it names nobody that is like one of ``names``
    (but ``NAMES_SOMEBODY``). A name
    alone is a wish to see whoever has it, unless it is a reply such as “skip”."""
    said, known = normalise(text).strip(" .!?,"), dict(enumerate(names))
    for what, pattern in _SENTENCES:
        if not (found := pattern.fullmatch(said)):
            continue
        parts = found.groupdict()
        name = next((parts[one] for one in ("name", "told", "third") if parts.get(one)), "")
        if not name and what in ("undo", *STATES_ASKED):
            return Wish(what)
        if name.split()[:1] and name.split()[0] not in _NOBODY and (
                called(name, known) or nearly_called(name, known) or (what in NAMES_SOMEBODY and len(name.split()) <= NAME_WORDS)):
            value = parts.get("value") or ""
            return Wish(VIEWS_ASKED[value], name) if what == "view" else Wish("note" if what == "note to" else what, name, value)
    alone = hear(said) is None and _words(said) and any(_words(said) <= _words(one) for one in known.values())
    return Wish("see", said) if alone else None


def of_oneself(text: str, names: Iterable[str], tapped: bool = False) -> str:
    """Return what a coach's message may tell of the coach: without the whole names in a sentence about lifters, one of which may be a word
    for pain ("find Ache"), and nothing of “who is hurt”; any other text as it is, a name alone too. ``tapped``: it is the label of a
    button of ours, of which only a name could be theirs."""
    said, known = normalise(text).strip(" .!?,"), list(names)
    compared, wish = _COMPARED.fullmatch(said), wish_in(text, known)
    if not known:
        return text
    if (tapped and all(normalise(name) != said for name in known)) or (wish and not wish.name and not compared):
        return ""
    typed = [one for one in compared.groups() if one] if compared else [wish.name] if wish and wish.name != said else []
    whole = [one for one in typed if any(_words(one) <= _words(name) for name in known)]
    if whole and wish and wish.what == "see":
        return ""  # nothing else is in such a sentence
    for name in whole:
        said = said.replace(name, "them")
    return said if whole else text


def called(typed: str, names: Mapping[K, str]) -> list[K]:
    """Return those whose name has all the words typed, or, if there is none, words that begin with them. Capitals and accents don't
    matter."""
    wanted, known = _words(typed), {one: _words(name) for one, name in names.items()}
    if not wanted:
        return []
    whole = [one for one, words in known.items() if wanted <= words]
    return whole or [one for one, words in known.items() if all(any(word.startswith(part) for word in words) for part in wanted)]


def nearly_called(typed: str, names: Mapping[K, str]) -> list[K]:
    """Return those whose name has each of the words typed with a letter or two changed: one in words of four letters or more, two in
    words of nine (our choice)."""
    wanted = _words(typed)
    return [one for one, name in names.items() if wanted and all(any(
        OSA.distance(part, word) <= (len(word) > 3) + (len(word) > 8) for word in _words(name)) for part in wanted)]


def _words(text: str) -> set[str]:
    letters = normalize("NFKD", normalise(text))
    return set(_LETTERS.findall("".join(one for one in letters if category(one) != "Mn")))
