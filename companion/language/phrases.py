"""General replies to any question: yes, no, unsure, skip, back, stop, again, help, ready.

A reply is decided in this order:

1. ``normalise``; a reply longer than any phrase is none.
2. Politeness ("please", "thanks", "mate") is removed.
3. The rest must consist *entirely* of table phrases with one meaning. A phrase inside a longer sentence does not
   count, nor does a mixed reply ("yes no", "no stop").
4. Only if the question is not a safety question: the looser table, signs such as a thumbs up, words run
   together ("gotit"), drawn-out letters ("nooo") and typing mistakes.

Typing mistakes are forgiven word by word. A word of up to three letters must be exact: half the dictionary is one letter away from "no".
A word of four letters may have two neighbours swapped or a letter doubled ("stpo"; never "step", which is one letter from "stop").
Longer words may have one edit, from nine letters two, but must begin alike. Real words that close to a phrase are listed in
``WORDS_NEAR_PHRASES`` and never corrected.

The caller reads the question's own values first: "back" may be the answer to what moved, "none" a choice.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Mapping
from enum import Enum
from functools import lru_cache
from itertools import chain, product

from rapidfuzz import process
from rapidfuzz.distance import OSA

# Two Telegram messages of 4096 characters (Bot API limit); nobody types a longer answer.
LONGEST_READ = 8192
# The longest table phrase with politeness around it is well below this (choice).
LONGEST_PHRASE = 120


class Phrase(Enum):
    """Meaning of a whole reply, whatever the question."""

    YES = "yes"
    NO = "no"
    UNSURE = "unsure"
    SKIP = "skip"
    BACK = "back"
    STOP = "stop"
    AGAIN = "again"
    HELP = "help"
    DESCRIBE = "describe"
    READY = "ready"


# Phrases, separated by commas: ``a|b`` is either word, ``a?`` is optional; no apostrophes.
FIRM: dict[Phrase, str] = {
    Phrase.YES: """
        yes|y|yep|yup|yeah|yea|yh|ya|ye|yas|aye, yes|yep|yeah? i do|have, yes|yep|yeah i did|am|was|can,
        yes|yep|yeah it is|did|does|was, yes|yep|yeah there is|was, yes|yep|yeah they do|did|are, yes? of
        course, yes? definitely|absolutely|totally|indeed, correct|affirmative|true, thats correct|true|right,
        yes? very much so?""",
    Phrase.NO: """
        no|n|nope|nah|naw|na|nay|negative|false, no way, no|nope|nah? not at all, no|nope? never, no|nope?
        none|neither|nothing, no|nope? none of these|those|them|that, none of the above, no|nope? neither of
        these|those|them, no|nope? not any, not any of these|those|them, no|nope? nothing like that, no|nope?
        i dont|didnt|havent|wasnt|cant, no|nope? im not, no|nope? it isnt|didnt|doesnt|hasnt|wasnt, no|nope?
        its|thats not, no|nope? there isnt|wasnt, no|nope they dont|didnt|arent, no|nope? i did|do|have|am
        not, no|nope? it did|does|is|was not, no|nope? definitely|absolutely|certainly not, of course not,
        no|nope|nah? never had any|none of that|those|these|them, no|nope|nah thank|thanks god|goodness,
        thank|thanks god no, no|nope|nah im fine|good|ok|okay|healthy, no|nope|nah im all good,
        no|nope|nah all good|fine|clear, no|nope|nah nothing at all, no|nope|nah not one|ever, no|nope|nah not
        one of these|those|them, no|nope|nah im sure, no|nope|nah im? 100 sure""",
    Phrase.UNSURE: """
        i? dunno, idk, i? dont|dunno know|no, i do not know, do not know, ive? no idea|clue, i have no
        idea|clue, i? havent a clue, not a clue, im? unsure, im? not too|really|entirely|100? sure|certain, i
        am not sure|certain, no sure, maybe|perhaps|possibly|probably, probably not, might|could|may be,
        hard|difficult to say|tell, i? cant|cannot|couldnt say|tell, can not tell, i? cant|dont remember, i?
        forget|forgot, a bit, a little bit?, kind|sort of, kinda|sorta|sometimes|ish, it? depends, who knows,
        yes and|or no, half and half, 50 50, so so, i guess|suppose""",
    Phrase.SKIP: """
        skip it|this|that|one?, skip this|that one|test, skip the? question|test, skip this question, skip for
        now, skip ahead, ill|lets|i skip it|this|that?, ill|lets skip this|that one, can|could i|we skip
        it|this|that?, can|could i|we skip this|that one|question|test, i want|need to skip it|this?, id like
        to skip it|this?, id? rather skip it|this?, hard? pass, ill|i pass, pass on this|that, pass on
        this|that one, next question|test, lets? move on, can we move on, id? rather not say?, i? prefer not
        to say?, id prefer not to say?, no comment, leave it|this out, leave this one, not this one, i? dont
        want to say|answer""",
    Phrase.BACK: """
        wait? go? back, go back one|up, one back, back one|up, step|take back, back to the? last one|question,
        can|could i|we go back, i want to go back, let me go back, lets go back, take me back, undo
        it|that|last?, previous one|question|answer?, last question, last one again, wait|no? i? meant
        something else|different, thats? not what i meant, wrong answer|button|one|number|key|tap, that was the|a?
        wrong answer|one|button|tap?, thats wrong, i? got it|that wrong, i? put|typed|entered the wrong
        thing|number|one|answer, i? put|typed it|that wrong, i? pressed|hit|tapped|clicked the? wrong
        button|one|thing?, misclick|misclicked|mistap|mistyped|typo, i mistyped, my? mistake, i? made a
        mistake, that was a mistake|typo, oops|whoops wrong? one|button?, scratch that, take it|that back, let
        me take it|that back, let me? change|correct|redo|fix it|that, change my|last answer, change my last
        answer, can|could i change|correct it|that, can|could i change my|the last? answer, i want to change
        it|that, i want to change my answer, correction, edit""",
    Phrase.STOP: """
        please|just|wait? stop now|it|this|that|here|there?, stop the|this test|bot, stop for now|today, i
        stop|stopped, ive stopped, i? want|need|have|wanna|gotta to? stop|quit|pause, i must stop|pause, ive?
        got to stop, id like to stop|pause, lets stop|pause now|here|there?, can|could i|we|you stop|pause
        now|here?, im? stopping now|here?, i am stopping, pause it|this|now?, pause the test, pause for now, i
        need a pause, i? quit it|now?, exit|abort|halt|timeout, time out, end it|this|now?, end the? test,
        cancel it|this|that?, cancel the test, thats? enough now?, enough for now|today, ive? had enough, no
        more for? today?, thats it|all for today|now, im? done|finished for today|now, call|calling it a day,
        lets call it a day, i? gotta|wanna go, i? have|need|got to go, ive got to go, i? need|want a break,
        lets? take a break, can i|we take|have a break, break, leave, lets? leave it there?, i? give up,
        stop|end|cancel|pause the|my|this|that? timer|clock|countdown|count|hold now?, stop counting now?,
        timer off|stop""",
    Phrase.AGAIN: """
        again, can|could? you? say that|it again, say again, can|could you say it|that one? more? time?, once
        more, one more time, can|could? you? repeat it|that?, can|could? you? repeat the question, come again,
        pardon me?, i? beg your pardon, sorry|wait|say|you? what, what now, what was that, what did you say,
        what do you mean, what does that|it mean, wdym, what do i do now?, what was|is the question, whats the
        question, huh|eh, i? dont|didnt understand, i do not understand, i? dont|didnt get|catch it|that, i?
        missed that, i? dont follow, im? confused|lost, confusing|unclear, not following|clear, thats not
        clear, that|it? makes no sense, that|it? doesnt make sense, show|send|read|tell me|it|that again, show
        me that again, resend, explain it|that|again?, can|could you explain it|that?""",
    Phrase.HELP: """
        help me|out?, i? need some? help, can|could you help me?, how do i?, how do i|you do it|this|that, how
        does it|this work, what can i do|say|type, what should i do|say|type, what do i say|type, what are my
        options, commands|menu|options|info, instructions, im? stuck""",
    Phrase.DESCRIBE: """
        describe it|this|that?, describe the? picture|photo|image|drawing|chart, can|could you describe it|this|that?,
        can|could you describe the picture|image|drawing|chart, picture|image description, alt text,
        what does the picture|image|drawing|chart show, what is in the picture|image, whats in the picture|image""",
    Phrase.READY: """
        im? all? ready now?, i am ready|done, ready when you are, ready to go|start, all? done it|that|now?,
        ive? done it|that?, thats me? done, im? all? finished, ive finished, complete|completed, im? all? set
        up?, i? got it, gotcha|understood|roger, i understand, im? in position, im here|there,
        ok|okay|k|kk|oki|okey, ok|okay then, go on|ahead?, go for it, lets go|start|begin, lets do it|this,
        lets get started, start|begin now?, continue|proceed|resume|next, carry on, next one, im? good to go,
        fire away, here we go""",
}

# Looser phrases: fine for "did the heel stay down", not for "any weakness in a leg".
LOOSE: dict[Phrase, str] = {
    Phrase.YES: """
        yess|yeh|yer|yah|yip|yessir|sure|obviously|mostly, yes sir, sure thing|is|did, for sure, yes|yeah|i?
        think|guess|suppose so, i? believe so, more or less, pretty much, i did|am|can|was, it
        did|does|was|is, they did|do, you bet, hell yes|yeah, why yes, sounds|looks right""",
    Phrase.NO: """
        noo|nop|nada|zero|zilch|nil|hardly, nuh uh, no|nah|nope? not really|much|quite|exactly|yet, no? not
        that i know|noticed|remember of?, no? not that i can tell|see, not so far, no|nope? i? dont think so,
        i think not, i? doubt it, im? not ready yet?, not this time, not today, hell no""",
    Phrase.UNSURE: "hmm|hm|umm|um|erm|er|uh|meh, i think",
    Phrase.STOP: """
        maybe? later, not right? now, another time|day, some other time, tomorrow, ill? do it later, can we do
        it|this later, ill come back later, bye|goodbye, im out""",
    Phrase.AGAIN: "wut|wat|wot",
    Phrase.READY: """
        alright|allright|aight|alrighty|cool|great|perfect|fine|good|nice|sorted|noted, all right|good, right
        then, thats fine|good, sounds good|fine, im good, will do, i? did it, bring it on, that? makes sense,
        i see, copy that, i am here, im back, still here""",
}

# Single signs. Beside words, the two must agree: a thumbs up may stand beside "done", not beside "no".
SIGNS: dict[Phrase, str] = {
    Phrase.YES: "👍👌💯🙆",
    Phrase.NO: "👎❌🚫🙅✖❎",
    Phrase.UNSURE: "🤷🤔😕",
    Phrase.SKIP: "⏭⏩",
    Phrase.BACK: "⬅◀🔙↩⏮⏪",
    Phrase.STOP: "🛑✋⏹⏸",
    Phrase.AGAIN: "🔁🔄",
    Phrase.HELP: "❓❔🆘",
    Phrase.DESCRIBE: "🖼",
    Phrase.READY: "✅✔🆗🏁▶🆒",
}

POLITE = """
    please pls plz plse thanks thank you thankyou thx tx ty ta cheers mate bot sorry soz buddy bud pal bro man dude
    coach friend sir madam"""
# Words without meaning in front of an answer; a safety question that gets one asks again.
LEAD_IN = "ok okay right well um uh er erm so hey hi hello just actually tbh lol haha"

# Real words one typing mistake away from a phrase.
WORDS_NEAR_PHRASES = """
    about absolute alight alter bask beak began begins begun being bleak brake bread breaks cancer chancel
    coll collection compete completely complex confusion connection consuming continued cook correlation
    corruption defends depend either explains fever forge forged gain greet greta group hardy heal heel held
    indexed instructor kinds laser late lateral latex lather latter layer lease leaves lever liter lots
    mistaken natural nature nerve newer note notes noting nuclear obvious option ounce parse part past
    possible post precious prefect probable proceeds quiet reader reads realy repeal repent repents resent
    rights rover rower scoot shook shoot shopping short shot shout smart snorted sora sore sorts spot stair
    star stare stark starr starts stat state steady stepping steps stick stock stomp stomping stoop stoops
    straight struck stuart suck understands undertook used"""

_STRAIGHT = str.maketrans(
    {
        **dict.fromkeys("‘’‚‛′´`ʼʹ＇", "'"),
        **dict.fromkeys("“”„‟″〝〞＂", '"'),
        **dict.fromkeys("‐‑‒–—―−﹣－", "-"),
        # The ordinal sign and ring that phones type for a degree; NFKC would make them a letter and a loose accent.
        **dict.fromkeys("º˚", "°"),
        "⁄": "/",
    }
)
_CONTROL = re.compile(r"[\x00-\x08\x0e-\x1b\x7f]")
# Invisible characters, and modifiers of a neighbour's looks: fillers, variation selectors, skin tones.
_DECORATION = re.compile("[\u034f\u115f\u1160\u3164\ufe00-\ufe0f\U0001f3fb-\U0001f3ff\U000e0100-\U000e01ef]")
_WORD = re.compile(r"[^\W_]+")
_PLAIN = re.compile(r"[\w\s.,!'\"()/-]*")
_DRAWN_OUT = re.compile(r"(.)\1{2,}")
_REPEAT = re.compile(r"(.)\1+")


def normalise(text: str) -> str:
    """Return a reply in normal form: NFKC, casefolded, without invisible or control characters, one space between words.

    Curly quotes and primes become straight, dashes become hyphens, ``º`` a degree sign. A fraction typed as one sign keeps apart from
    the digit before it ("4½" is "4 1/2", not "41/2"). Only the first ``LONGEST_READ`` characters are read. Never raises.
    """
    text = text[:LONGEST_READ]
    # Twice: the first pass may expose a sign that folds again.
    text = text.casefold() if text.isascii() else _folded(_folded(text))
    return " ".join(_CONTROL.sub("", text).split())


def label_key(text: str) -> str:
    """Return the words of a button, or a reply that may be them, in normal form without the signs at the end."""
    return normalise(text).strip(" .!?")


def _folded(text: str) -> str:
    text = _DECORATION.sub("", text.translate(_STRAIGHT))
    kept: list[str] = []
    for letter in text:
        kind = unicodedata.category(letter) if letter > "\x7f" else ""
        if kind in ("Cf", "Cs", "Co", "Cn") or (kind == "Cc" and not letter.isspace()):
            continue
        if kind == "No" and kept and kept[-1].isnumeric():
            kept.append(" ")
        kept.append(letter)
    folded = unicodedata.normalize("NFKC", unicodedata.normalize("NFKC", "".join(kept)).casefold())
    return folded.translate(_STRAIGHT)


def _spelt_out(pattern: str) -> Iterator[tuple[str, ...]]:
    """Yield every phrase of a table pattern, as a tuple of words."""
    choices: list[list[tuple[str, ...]]] = []
    for part in pattern.replace("'", "").split():
        words = [(word,) for word in part.removesuffix("?").split("|")]
        choices.append([*words, ()] if part.endswith("?") else [*words])
    for chosen in product(*choices):
        if phrase := tuple(chain.from_iterable(chosen)):
            yield phrase


def _phrases(table: dict[Phrase, str], before: Mapping[tuple[str, ...], Phrase]) -> dict[tuple[str, ...], Phrase]:
    """Return all phrases as tuples of words, with ``before`` first. Raises ValueError if a phrase has two meanings."""
    known = dict(before)
    for meaning, pattern in ((m, p) for m, lines in table.items() for p in lines.split(",")):
        for phrase in _spelt_out(pattern):
            if known.setdefault(phrase, meaning) is not meaning:
                raise ValueError(f"{' '.join(phrase)!r} is both {known[phrase].name} and {meaning.name}")
    return known


_FIRM = _phrases(FIRM, {})
_ALL = _phrases(LOOSE, _FIRM)
_LONGEST = max(len(phrase) for phrase in _ALL)
_RUN_TOGETHER = {"".join(phrase): meaning for phrase, meaning in _ALL.items() if len("".join(phrase)) > 4}
_BY_COUNT = {n: [phrase for phrase in _ALL if len(phrase) == n] for n in range(1, _LONGEST + 1)}
_VOCABULARY = sorted({word for phrase in _ALL for word in phrase})
_POLITE = frozenset(POLITE.split())
_LEAD_IN = frozenset(LEAD_IN.split())
_KNOWN = frozenset(_VOCABULARY) | _POLITE | _LEAD_IN | frozenset(WORDS_NEAR_PHRASES.split())
_LONG_WORDS = [word for word in _VOCABULARY if len(word) > 3]
_SQUEEZED: dict[str, list[str]] = {}
for _word in _VOCABULARY:
    _SQUEEZED.setdefault(_REPEAT.sub(r"\1", _word), []).append(_word)
_SIGN = {sign: meaning for meaning, signs in SIGNS.items() for sign in signs}
# With a question mark these are a question, not an answer.
_ANSWERS = (Phrase.YES, Phrase.NO, Phrase.READY)


def hear(text: str, *, strict: bool = False) -> Phrase | None:
    """Return the meaning of a whole reply; None for a value, a sentence, or a mixed or unclear reply.

    ``strict`` is for safety questions: only the firm phrases, exactly as in the tables; no signs, no forgiven typing. A thumbs up is
    YES, and YES answers "ready?" too; READY ("ok", "done") does not answer a yes/no question. Never raises.
    """
    plain = normalise(text)
    if not plain or len(plain) > LONGEST_PHRASE:
        return None
    words = _WORD.findall(plain.replace("'", "").removeprefix("/"))
    asks = "?" in plain
    if strict:
        if not _PLAIN.fullmatch(plain.replace("?", "")):
            return None
        heard = _one(_meanings(words, _FIRM, _POLITE))
    else:
        heard = _loosely(words, {_SIGN[sign] for sign in plain if sign in _SIGN})
    if not words and heard is None:
        return Phrase.HELP if plain.strip("?! ") == "" and asks else None
    if words and heard is None and asks and all(word in _POLITE for word in words):
        return Phrase.AGAIN  # "sorry?"
    return None if asks and heard in _ANSWERS else heard


def _loosely(words: list[str], signs: set[Phrase]) -> Phrase | None:
    """Return the meaning of words and signs together: of either alone, or of both if they agree."""
    if len(signs) > 1:
        return None
    sign = next(iter(signs), None)
    if not words:
        return sign
    answer = list(words)
    while len(answer) > 1 and answer[0] in _LEAD_IN:
        del answer[0]
    said = (
        _one(_meanings(words, _ALL, _POLITE), merge=True)
        or _one(_meanings(answer, _ALL, _POLITE), merge=True)
        or _mistyped(answer)
    )
    if sign is None or said is sign:
        return said
    if said is None:
        return sign if all(word in _POLITE for word in words) else None
    return said if {said, sign} == {Phrase.YES, Phrase.READY} else None


def _meanings(words: list[str], table: dict[tuple[str, ...], Phrase], filler: frozenset[str]) -> set[Phrase]:
    """Return the meanings of a reply made entirely of the table's phrases and filler; empty if anything else is in it."""
    if (whole := table.get(tuple(words))) is not None:
        return {whole}
    meanings: set[Phrase] = set()
    at = 0
    while at < len(words):
        for end in range(min(len(words), at + _LONGEST), at, -1):
            if (meaning := table.get(tuple(words[at:end]))) is not None:
                meanings.add(meaning)
                at = end
                break
        else:
            if words[at] not in filler:
                return set()
            at += 1
    return meanings


def _one(meanings: set[Phrase], *, merge: bool = False) -> Phrase | None:
    """Return the only meaning; with ``merge``, "yes, ready" is a yes."""
    if merge and meanings == {Phrase.YES, Phrase.READY}:
        return Phrase.YES
    return next(iter(meanings)) if len(meanings) == 1 else None


def _mistyped(words: list[str]) -> Phrase | None:
    """Return the one meaning within a typing mistake of the whole reply, or None."""
    words = [word for word in words if word not in _POLITE]
    if (glued := _RUN_TOGETHER.get("".join(words))) is not None:
        return glued
    near: list[frozenset[str]] = []
    for word in words if len(words) <= _LONGEST else ():
        near.append(_near(word))
        if not near[-1]:
            return None
    found = {
        _ALL[phrase]
        for phrase in _BY_COUNT.get(len(near), ())
        if all(word in close for word, close in zip(phrase, near, strict=True))
    }
    return _one(found)


@lru_cache(maxsize=2048)
def _near(typed: str) -> frozenset[str]:
    """Return the phrase words a typed word may stand for; a known word stands only for itself."""
    if typed in _KNOWN:
        return frozenset((typed,))
    drawn_out = _DRAWN_OUT.search(typed) is not None
    close = {
        word for word in _SQUEEZED.get(_REPEAT.sub(r"\1", typed), ()) if len(typed) > len(word) and (drawn_out or len(word) > 3)
    }
    if len(typed) > 3:
        nearest = process.extract(typed, _LONG_WORDS, scorer=OSA.distance, score_cutoff=2, limit=None)
        close.update(word for word, edits, _ in nearest if _slip(typed, word, int(edits)))
    return frozenset(close)


def _slip(typed: str, word: str, edits: int) -> bool:
    """True if that many edits between two words of four letters or more are a plausible typing mistake."""
    if edits == 1 and sorted(typed) == sorted(word):
        return True
    return len(word) > 4 and typed[0] == word[0] and edits <= (2 if len(word) > 8 else 1)
