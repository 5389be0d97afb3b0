"""Wishes of a coach about their lifters, as they are typed: “what's up with Maria”, “cap Tom at 80”, “who is quiet”. Pure."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import Final, NamedTuple, TypeVar
from unicodedata import category, normalize

from rapidfuzz.distance import OSA

from companion.language.phrases import hear, normalise

K = TypeVar("K")


class Wish(NamedTuple):
    """One wish of a coach: a state of ``STATES_ASKED``, a view of ``VIEWS_ASKED``, "see", "undo", "seen" or an act; of whom, and the value
    that goes with it, as typed; "" where there is none. ``tail``: other words."""

    what: str
    name: str = ""
    value: str = ""
    tail: str = ""


_NAME: Final = r"(?P<name>\S.{0,58}?)"
_WHOM: Final = _NAME.replace("name", "told")
_THEM: Final = _NAME.replace("name", "third")
_TAIL: Final = r"(?P<tail>.+)"
"""Words of the coach's own, which may tell of the coach too."""
_IS: Final = r"(?:'s|s| is| are| has| have|'ve| got| went| gone| been)*"
_WHO: Final = rf"(?:(?:who|(?:is |has )?any(?:one|body)){_IS}|(?:show|list)(?: me)?(?: the| all| those)*)"
_LOAD: Final = r"(?P<value>\d[\d.,]*(?: ?(?:kg|kgs|kilos?|lbs?|pounds))?)"
_DEPTH: Final = r"(?P<value>(?:(?:well |a little |a bit |just )?above|below)(?: parallel)?|parallel)"
_KEEP: Final = r"(?:cap|limit|pin|hold|keep|restrict|set|drop|lower|reduce)"
_AT: Final = r"(?: (?:at|to|on|under|with|max|from))*"
_STATES: Final = (
    ("since", r"(?:what(?:'s|s| is| has)?|anything|any) (?:new|changed|news)|who (?:do|should) i (?:need to )?(?:look at|see|check|call)"
     r"(?: first| now| today)*|who needs (?:me|attention|help|a look)(?: first| now| today)*"),
    ("", r"(?:my |the )?list|(?:all )?my lifters|everybody|everyone"),
    ("hurt", rf"(?:{_WHO}|who told me (?:of|about))(?: with| an?| any| some| new)* (?:hurt|hurting|injured|in pain|(?:\w+ )?(?:pain|aches?|"
     r"numbness|injury)|(?:sore|numb|bad|painful) \w+)|any pain|any injuries"), ("referred", rf"{_WHO} (?:referred|closed)"),
    ("quiet", rf"{_WHO} (?:quiet|silent|missing|stopped answering|not answer(?:ed|ing))|who (?:hasn't|hasnt|haven't) answered"),
    ("over_load", rf"{_WHO} (?:over|above|too heavy)(?: (?:the|their))?(?: load)?(?: limit)?"),
    ("worse", rf"{_WHO} (?:getting )?worse"), ("better", rf"{_WHO} (?:getting )?better"),
    ("overdue", rf"{_WHO} (?:overdue|late)(?: (?:for|with) (?:a |the |their )?retests?)?|(?:late|overdue) retests?"),
    ("retest_due", rf"{_WHO} due(?: for a retest| to test again)?|(?:whose )?retests?(?: is| are)? due"),
    ("note", r"who wrote(?: to me| me)?|(?:any |new |unread )*notes(?: for me)?"),
    ("new_result", rf"{_WHO} (?:new )?results|new results"), ("fine", rf"{_WHO} (?:fine|ok|okay|well)"))
_ACTS: Final = (
    ("private", rf"(?:private )?note (?:on|about|for) {_NAME}"),
    ("retest", rf"ask {_NAME} (?:for|to do|to) (?:a |another |the )?(?:re-?test|test again)(?: {_TAIL})?|(?:set|plan|book) (?:a |the )?"
     rf"re-?test for {_WHOM}(?: on .+)?|re-?test {_THEM}(?: (?:on |next |this )?(?:\w+day|tomorrow|\d.*))?"),
    ("ask_for", rf"(?:ask|get) {_NAME} (?:for|to do|to send(?: me)?|to) (?:a |an |another |the )?(?P<value>\S.{{0,40}})"),
    ("pin_depth", rf"{_KEEP}(?: the)?(?: depth(?: of| for)?)? {_NAME}{_AT} {_DEPTH}|{_KEEP}(?: the)? depth (?:of|for) {_WHOM}"),
    ("pin_load", rf"{_KEEP}(?: the)?(?: load(?: of| for)?)? {_NAME}{_AT} {_LOAD}|(?:cap|limit|{_KEEP} (?:the )?load (?:of|for)) {_WHOM}"),
    ("pin_load", rf"{_NAME}:? (?:max|at most|no more than|up to) {_LOAD}"),
    ("pin_load", rf"(?:no more than|max|at most) {_LOAD} for {_NAME}"),
    ("raise_load", rf"(?:raise|increase)(?: the)?(?: load)?(?: limit)?(?: of| for)? {_NAME}(?:'s)?(?: limit| load)*(?: to \d.*)?|let "
     rf"{_WHOM} (?:go heavier|lift more|lift \d.*)"),
    ("reviewed", rf"(?:mark )?{_NAME} (?:as )?reviewed|(?:reviewed|review|mark|done with) {_WHOM}"),
    ("put_aside", rf"(?:snooze|dismiss|hide|put aside|park) {_NAME}(?: (?:until|for|till) {_TAIL})?|put {_WHOM} aside"),
    ("overrule", rf"overrule {_NAME}"), ("hand_over", rf"hand (?:over )?{_NAME}(?: over)?(?: to {_TAIL})?"),
    ("drill", rf"(?:choose|change|set|give)(?: a| the)? drill (?:of|for|to) {_NAME}"),
    ("group", rf"(?:add|put) {_NAME} (?:to|in|into) (?:a |the )?group(?: {_TAIL})?"),
    ("note", rf"(?:write|send|message|text|reply|answer)(?: a (?:message|note))?(?: back)?(?: to)? {_NAME}"),
    ("note", rf"(?:tell|text|message) {_NAME}[:,]? {_TAIL}"))
VIEWS_ASKED: Final[Mapping[str, str]] = {
    "numbers": "numbers", "results": "numbers", "squat days": "days", "days": "days", "charts": "charts", "messages": "thread",
    "thread": "thread", "alerts": "more", "orders": "more", "log": "log", "report": "report",
    "depth": "see", "load": "see", "limits": "see",
    "limit": "see", "plan": "see", "drill": "see"}
"""The view of a lifter, by the word for it."""
_VIEW: Final = rf"(?P<value>{'|'.join(VIEWS_ASKED)})"
_LOOKS: Final = (
    ("view", rf"(?:(?:show|open|send|give)(?: me)? |see )?{_NAME}(?:'s|'|s)? {_VIEW}"),
    ("view", rf"(?:(?:show|open|send|give)(?: me)? )?(?:the )?{_VIEW} (?:of |for |from |on )?{_NAME}"),
    ("days", rf"when did {_NAME} (?:last )?(?:squat|train|lift)(?: last)?"),
    ("see", rf"(?:and |so |ok )*(?:how{_IS}|what did|what{_IS} (?:up|new|going on|happening|wrong)(?: with)?|what about|how about|"
     r"tell me about|"
     r"check(?: in| up)? on|(?:any )?news (?:of|from|on|about)|see|go to|status(?: of)?|look at|find|show(?: me)?|open|look up|lifter) "
     rf"{_NAME}(?: doing| ok(?:ay)?| all ?right| say| write| today| getting on| going| right now| now| lately| this week)*"),
    ("see", rf"(?:is|has|did|does|was|what load is|how much does) {_NAME} {_TAIL}"))
STATES_ASKED: Final = frozenset(what for what, _ in _STATES)
"""States of the list that are asked for by “who is …”; "" for all, "since" for what is new."""
_ASKING: Final = "(?:please |pls |can you |could you )?"
_SENTENCES: Final = tuple((what, re.compile(f"{_ASKING}(?:{pattern})(?: please| pls)?")) for what, pattern in (
    ("undo", r"undo(?: that| it)?|take (?:that|it) back"),
    ("seen", r"(?:(?:ok|okay|yes|thanks|thank you|got it),? )*(?:i (?:have |just )?|i've |ive |just )?(?:seen|saw|read|noted)"
     r"(?: it| that| this| them| all| both| of it| of them| the alerts?)*"),
    *((what, f"(?:{said})(?: ones| lifters)?") for what, said in _STATES),
    *_ACTS, *_LOOKS))
_COMPARED: Final = re.compile(r"(?:please )?compare (.{1,60}?)(?: (?:and|with|to|vs) (.{1,60}))?")
_NOBODY: Final = frozenset(("me", "my", "us", "it", "this", "that", "them", "all", "you", "your", "the", "a"))
NAMES_SOMEBODY: Final = frozenset(("ask_for", "retest", "put_aside"))
"""Wishes in which nothing but a name can stand, so that it is said where nobody has it."""
_OF_NOBODY: Final = ("undo", "seen")
"""Wishes that name nobody: what was done last, and the alerts sent."""
_OF_ME: Final = frozenset(("i", "my", "me", "mine", "myself"))
_OF_ONESELF: Final = _OF_ME | {"im", "ive", "ill", "id", "we", "our", "us"}
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
        parts = {name: part or "" for name, part in found.groupdict().items()}
        name, tail = next((parts[one] for one in ("name", "told", "third") if parts.get(one)), ""), parts.get("tail", "").split()
        if not name and (what in _OF_NOBODY or what in STATES_ASKED):
            return Wish(what)
        name = "everybody" if name in ("everyone", "all") else name
        while tail and _is_part(f"{name} {tail[0]}", known):
            name = f"{name} {tail.pop(0)}".rstrip(":,")
        somebody = bool(called(name, known)) or bool(nearly_called(name, known))
        if name.split()[:1] and name.split()[0] not in _NOBODY and (
                somebody or (what in NAMES_SOMEBODY and len(name.split()) <= NAME_WORDS)):
            value = parts.get("value", "")
            return Wish(VIEWS_ASKED[value], name) if what == "view" else Wish(what, name, value, " ".join(tail))
    words = _words(said)
    alone = hear(said) is None and words and (_is_part(said, known) or (len(words) > 1 and any(_is_part(one, known) for one in words)
                                                                      and called(said, known)))
    return Wish("see", said) if alone else None


def _is_part(typed: str, names: Mapping[K, str]) -> bool:
    """True if all the words are whole words of one name."""
    return any(_words(typed) <= _words(name) for name in names.values())


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
    whole = [one for one in typed if _is_part(one, dict(enumerate(known)))]
    if not whole or len(whole) < len(typed):
        return text
    if wish is None or (wish.what == "see" and not _OF_ME & _words(wish.tail)):
        return ""  # a comparison, or a question about somebody else
    return wish.tail or (wish.value if wish.what == "ask_for" else "")


def lifters_in(facts: Mapping[str, object]) -> dict[str, str]:
    """Return the names of a coach's lifters and groups, by number, from the known facts."""
    return {fact.removeprefix("lifter."): str(name) for fact, name in facts.items() if fact.startswith("lifter.")}


_OPENING: Final = re.compile(
    r"\W*(?:(?:ok|okay|so|hey|hi|hello|fyi|btw|just|and|but|also|well|oh|heard|told|that|now|today|yesterday|this morning|seems|"
    r"apparently|sadly|update|news|worried|about|for|from|did|is|has|was)[ ,:;.?!]+)*")
_BEGINS_TOO: Final = frozenset(("will", "may", "can", "mark", "art", "do", "an", "no", "my", "in", "on", "hope", "joy", "grace"))
_OF_OTHERS: Final = re.compile(r"'?s\b|\W+(?:has|is|had|was|says|said|told|got|isn't|hasn't|wasn't|wrote)\b")
_TO_THE_COACH: Final = re.compile(r"\b(?:told|tells|texted|messaged|wrote|asked|showed|emailed|called|rang|said to|says to|sent) me\b")
_AS_OWN: Final = {"he": "i", "she": "i", "they": "i", "hes": "im", "shes": "im", "theyre": "im", "his": "my", "her": "my", "their": "my",
                  "him": "me", "them": "me", "himself": "myself", "herself": "myself", "themselves": "myself"}
_ONE_OF_THEIRS: Final = re.compile(
    r"\b(?:(?:i have|i've got|i got|ive got|there is|there's) )?(?:one of (?:my|our|the) |my |our |the |a |an |another |\w+'s )(?:\w+ )?"
    r"(?:lifters?|clients?|athletes?|trainees?|guy|girl|woman|man|lad|lady|person|kid)"
    r"(?: of (?:mine|ours)| (?:that |who )?i (?:train|coach)| from (?:my|our|the) \w+)?(?: called| named)?(?=\W|$)|"
    r"\bone of (?:mine|ours)\b|^\W*(?:who|which of them|any(?:one|body))\b(?= (?:has|had|is|was|said|says|told|got|with|in|feels?|can)\b)")
"""A lifter of theirs who is not named."""
_ASKS_WHAT_TO_DO: Final = re.compile(
    r"\W*\b(?:so |and )?(?:what|how) (?:should|do|can|must|shall|would) (?:i|we) (?:do|say|tell (?:him|her|them)|answer)\b"
    r"(?: now| here| if| when)?\W*|(?<=\w)\W+(?:and |but |so )?(?:i|we) (?:don'?t|do not) know (?:what|how) to (?:do|say|help)\b[^.!?]*|"
    r"(?<=\w)\W+(?:(?:so|and|or|but) )?(?:(?:what|how|who|where) )?(?:should|do|can|could|must|shall|would|may) (?:i|we)\b[^.!?]*[.!?]*$")
"""What a coach asks to do for somebody, before or after what they tell of them."""
_FRAMED: Final = re.compile(
    r"\W*(?:help(?: me)?\W+)?(?:(?:can|could|should|may|shall|must|do) (?:i|we) (?:let|have|make|allow|keep|tell|stop|leave|send|help)|"
    r"(?:i|we)(?:'?ve|'?m| have| am)?(?: just| only)? ?(?:think|thought|believe|guess|fear|see|saw|seen|noticed?|heard?|know|worry|"
    r"found(?: out)?|worried|scared|afraid|was told|got told|told|watched)(?: (?:that|about|for|of|how))*)\W+|\W*help(?: me)?\W+")
"""What a coach says of themselves before they tell of somebody: "i think he …", "can i let her …"."""
_QUOTES: Final = re.compile(r"\W+(?:just |has |have )?(?:texts?|texted|writes?|wrote|messaged?|says?|said)\b(?: me)?\W*")
_SAYS_OF_THEM: Final = re.compile(r"\W*[^\W\d_]+ (?:just |has )?(?:says?|said|texts?|texted|writes?|wrote|messaged?)(?: me)?\W+(?:that )?"
                                  r"(?=(?:he|she|they|his|her|their)\b)")
"""Somebody of any name who says something of themselves."""
_DOES: Final = re.compile(
    r"([^\W\d_]{2,})(?:'s\b|s (?=(?:left|right|lower|back|legs?|foot|feet|knee|hip|chest|heart|bladder)\b)|"
    r"(?= (?:just |now |also )?(?:has|hasn't|hasnt|had|is|isn't|isnt|was|says?|said|feels?|felt|gets|got|can't|cant|cannot|can|couldn't|"
    r"couldnt|keeps|lost|fell|wants|collapsed|fainted|passed|blacked|wet|dropped|told|texted|wrote|complains?|complained|reports?|"
    r"thinks?)\b))")
"""Somebody of a name that we don't know, and what is said of them."""
_PART: Final = re.compile(r"[,.;:!?\n]+|\b(?:and|but|so|because)\b")
SOMEBODY: Final = "?"
"""Whom a message tells of that begins with "he" or "her leg": a lifter who is not named."""


class ToldOf(NamedTuple):
    """Of whom a message tells, by number or ``SOMEBODY``, what they would have written themselves, and the parts of it that have words of
    the coach's own too."""

    who: str
    as_own: str
    own: str = ""


def told_of(text: str, names: Mapping[str, str]) -> ToldOf | None:
    """Return of which lifter a coach's message tells: it names one, passes on what one wrote, speaks of "my lifter", or begins with "he" or
    a name that we don't know; None for none. A name that begins other sentences too ("will faint if it goes on") counts only with
    such a word as "has" after it. ``names``: number → name."""
    if not names:
        return None
    said = _TO_THE_COACH.sub("said", text.casefold().replace("’", "'"))
    said = _ASKS_WHAT_TO_DO.sub(" ", _FRAMED.sub("", _ONE_OF_THEIRS.sub("they", said), count=1)).strip()
    opening = _OPENING.match(said)
    rest = said[opening.end():] if opening else said
    named = [(who, part) for who, name in names.items() for part in dict.fromkeys((name.casefold(), name.casefold().split()[0]))]
    for who, part in (*named, (SOMEBODY, "they")):
        after = rest.removeprefix(part)
        if after != rest and part not in _BEGINS_TOO and (quoted := _QUOTES.match(after)) and _OF_ONESELF & _letters(after[quoted.end():]):
            return ToldOf(who, after[quoted.end():])
    own = ", ".join(part for one in _PART.split(said) if _OF_ONESELF & _letters(part := _FRAMED.sub("", one, count=1)))
    for who, part in named:
        after = rest.removeprefix(part)
        of = _OF_OTHERS.match(after)
        if after != rest and (of or not (after[:1].isalnum() or part in _BEGINS_TOO)):
            return ToldOf(who, _as_own(f"my{after[of.end():]}" if of and of[0] in ("s", "'s") else f"i{after}"), own)
    for who, part in named:
        if part not in _BEGINS_TOO and (there := re.search(rf"\b{re.escape(part)}\b", rest)):
            return ToldOf(who, _as_own(rest[there.end():].lstrip(" ,.:;")), own)
    first = _LETTERS.search(rest.split(" ", 1)[0].replace("'", ""))
    if first and first[0] in _AS_OWN:
        return ToldOf(SOMEBODY, _as_own(rest), own)
    says = _SAYS_OF_THEM.match(rest)
    if says:
        return ToldOf(SOMEBODY, _as_own(rest[says.end():]), own)
    does = None if own else _DOES.match(rest)
    if does and not _known_word(does[1]):
        theirs, what = "my" if does[0] != does[1] else "i", rest[does.end():].strip()
        return ToldOf(SOMEBODY, _as_own(f"{theirs} {what}"))
    return None


def _known_word(word: str) -> bool:
    """True if a word is none of a name: one of those that signs and pain are told in, which load with the first that is asked for."""
    from companion.language.flags.spelling import KNOWN_WORDS

    return word in KNOWN_WORDS


def _letters(said: str) -> set[str]:
    return set(_LETTERS.findall(said.replace("'", "")))


def _as_own(said: str) -> str:
    said = " ".join(_AS_OWN.get(word.replace("'", ""), word) for word in said.split())
    return re.sub(r"^i (?:is|has)\b", lambda found: "i am" if found[0] == "i is" else "i have", said)


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


@lru_cache(2_000)  # the names of a caseload are asked for again and again
def _words(text: str) -> frozenset[str]:
    letters = normalize("NFKD", normalise(text))
    return frozenset(_LETTERS.findall("".join(one for one in letters if category(one) != "Mn")))
