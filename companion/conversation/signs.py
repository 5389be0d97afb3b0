"""Signs that matter as much as pain, in any typed message: the flows they interrupt, and the questions they lead to."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from companion.conversation.acting import control
from companion.conversation.asking import aside_options, ask_again
from companion.conversation.cards import understood
from companion.conversation.corrections import correction
from companion.conversation.draft import Draft
from companion.conversation.flow import Ask
from companion.conversation.kinds import Answer, ReadingContext, YesNo, pick
from companion.conversation.moves import SAID_MOST, SIGN_MOST, answer, begin_anew, hurt, move_again, record, to_come
from companion.conversation.sign_runs import (
    ASKED_WITH_PAIN,
    ask_about,
    ask_of,
    begin_crisis,
    beside_signs,
    stop_for_pain,
    without_signs,
)
from companion.conversation.what_meant import (
    is_option,
    leave_unasked,
    says_not_what,
    take_meaning_back,
    take_meant,
    taken_back,
    tells_what_meant,
)
from companion.conversation.whole import read_whole
from companion.language.acts import Asks, hear_act
from companion.language.being_seen import saw_somebody
from companion.language.clauses import Mood, clauses, flat
from companion.language.clearances import signs_off, tells_of_clearance
from companion.language.findings import tells_no_limit
from companion.language.flags import URGENT, Flag, Heard, hear_flags
from companion.language.flags.put_right import THE_CHECK, hurt_more, of_the_check, puts_right
from companion.language.limits import told_more
from companion.language.pain import Pain, hear_pain
from companion.language.passed_on import in_whole_words
from companion.language.phrases import Phrase
from companion.language.questions import is_question

SIGN_THERE: Final = "so"
"""The key of the question whether what was heard is there."""

def heard_sign(draft: Draft, text: str, own: bool = False, in_doubt: bool = False) -> bool:
    """Act on the signs that a message reports; return True if nothing more is to be read from it.

    Thoughts of self-harm end everything. A sign that the open question asks about is an answer to it. If the answer is in the lifter's own
    words, it is stored unchanged, and the questions about other signs follow; with pain they follow the pain questions. Doubtful words that
    also report pain are left to the pain questions if these ask about the sign; where the flow asks what a clinician said, to its question.
    What the open questions are about is no new sign; another one is asked about before they go on. ``own``: it is known that they write
    of themselves, at a question where a coach writes of somebody else; ``in_doubt``: the words are those of several messages, so that
    they are asked about, unless they are of self-harm.
    """
    stack = draft.session.stack
    if not draft.book.signs or draft.book.brings_code(text):
        return False
    if stack and not own and not draft.compiled.flow.policy.hears_signs:
        return _harm_among_others(draft, text)
    waiting = draft.ask if not own and stack and draft.top.state in draft.compiled.stops and not draft.session.aside else None
    if waiting and not in_doubt and (said := taken_back(waiting, text)):
        take_meaning_back(draft, text, said)
        return True
    every = hear_flags(text, weigh=not _understood(draft, waiting, text))
    if any(one.flag is Flag.RESTRICTION for one in every) and (_begins_with(draft, text) or _told_anew(draft, waiting, text)):
        every = tuple(one for one in every if one.flag is not Flag.RESTRICTION)
    every += _behind_the_limit(text, every)
    every = tuple(one if one.flag is Flag.SELF_HARM else replace(one, sure=False) for one in every) if in_doubt else every
    if not every and not in_doubt and not own:
        if _takes_back(draft, waiting, text):
            return True
        every = _put_right(draft, waiting, text)
    heard = tuple(one for one in every if not _asked_here(draft, one))
    if not heard and in_doubt:
        return False
    if not heard and not every and _added(draft, text):
        return True
    if not heard:
        return _said_again(draft, waiting, every, text) if every else says_not_what(draft, waiting, text)
    sure = any(one.sure for one in heard)
    if heard[0].flag is Flag.SELF_HARM:
        begin_crisis(draft, heard, text)
        return True
    if not (sure or Flag.SELF_HARM in heard[0].named) and _added(draft, text):
        return True
    hears_pain = not in_doubt and (not stack or draft.compiled.flow.policy.hears_pain)
    free = waiting is not None and waiting.free
    may_harm = Flag.SELF_HARM in heard[0].also
    if hears_pain and not (sure or may_harm) and {one.flag for one in heard} <= ASKED_WITH_PAIN and hear_pain(text) is Pain.YES:
        return False
    if waiting and draft.compiled.flow.policy.told and not sure and URGENT.isdisjoint(one.flag for one in heard):
        return False
    if waiting and _asks_about_signs(draft, waiting, heard, text):
        return False
    if draft.session.aside and isinstance(pick(text, aside_options(draft), ReadingContext(strict=True)), Answer):
        return True
    apart = waiting is None or in_doubt or waiting.key == SIGN_THERE
    others = heard if apart else tuple(one for one in heard if waiting and one.flag.value not in waiting.signs)
    if waiting and (is_option(draft, text) or not others):
        return _answered(draft, waiting, sure, text)
    left, meant = beside_signs(text, heard), tells_what_meant(draft)
    pain = hear_pain(left) if hears_pain and (meant or not free) else Pain.NO
    if pain is Pain.YES and not may_harm:
        if meant:
            take_meant(draft, text)
        return stop_for_pain(draft, heard, text)
    if pain is Pain.YES or (pain is Pain.ASK and _fell(heard) and hear_pain(left, body_at_work=False) is Pain.ASK):
        hurt(draft, "" if may_harm else text)
        ask_of(draft, heard, text)
        return True
    if waiting and free and _keeps(waiting, heard) and isinstance(read := waiting.kind.read(text, draft.context), Answer):
        answer(draft, read)
        leave_unasked(draft)
    ask_about(draft, others if free else heard, text)
    return True


_WHY: Final = re.compile(r"\b(?:after|because of|because|due to|following|since|on account of|with|cos of|bc of)\b (.+)", re.IGNORECASE)


def _behind_the_limit(text: str, heard: tuple[Heard, ...]) -> tuple[Heard, ...]:
    """Return the signs that are the reason of a limit: "no lifting after my c section"."""
    limited = any(one.flag is Flag.RESTRICTION for one in heard)
    why = _WHY.search(text) if limited else None
    told = {flag for one in heard for flag in one.named}
    return tuple(one for one in hear_flags(why[1]) if told.isdisjoint(one.named) and one.flag is not Flag.SELF_HARM) if why else ()


def _takes_back(draft: Draft, waiting: Ask | None, text: str) -> bool:
    """Ask the question before again, where words say that its answer about safety was wrong and name no other; ask about pain, where they
    say that it was worse; return False for any other words."""
    if hurt_more(text) and _checked(draft, waiting):
        hurt(draft, text)
        return True
    if waiting is None or not waiting.safety or not draft.top.trail or puts_right(text) != () or is_option(draft, text):
        return False
    control(draft, Phrase.BACK)
    return True


def _put_right(draft: Draft, waiting: Ask | None, text: str) -> tuple[Heard, ...]:
    """Return the signs that somebody says they should have answered with yes in the safety check, before it is over or later that day; all
    that it asks about where they name none. () for any other words."""
    named = puts_right(text) if _checked(draft, waiting) else None
    if named:
        return tuple(Heard(flag, True, text) for flag in named)
    if named is None or waiting is None or not of_the_check(text) or correction(draft, text) or (
            isinstance(waiting.kind.read(text, draft.context), Answer)):
        return ()
    return (Heard(THE_CHECK[0], False, text, THE_CHECK[1:]),)


def _checked(draft: Draft, waiting: Ask | None) -> bool:
    """True if questions about safety were answered today, or are being answered."""
    return draft.known.facts.get("safety.checked.today") == "yes" or bool(waiting and waiting.safety and draft.top.trail)


def _begins_with(draft: Draft, text: str) -> bool:
    """True if a message only tells of a clearance, given or not yet, that they were signed off or seen, that nothing was found, or adds to
    the limit told before it, where that begins its conversation: it is asked about there."""
    seen = tells_of_clearance(text) or signs_off(text) or tells_no_limit(text) or saw_somebody(text)
    adds = not (draft.session.stack and draft.compiled.flow.policy.holds) and told_more(text, draft.known.now.date())
    said = seen or adds
    return bool(said) and draft.book.sentence(text, draft.known.facts) is not None


def _told_anew(draft: Draft, waiting: Ask | None, text: str) -> bool:
    """True if a message puts an answer right that the open question may, such as one more thing to leave out."""
    kinds = (stop.kind for stop in map(draft.compiled.stops.get, waiting.amends) if isinstance(stop, Ask)) if waiting else ()
    return any(kind.anew(text, draft.context) for kind in kinds)


def _harm_among_others(draft: Draft, text: str) -> bool:
    """Ask whoever writes of somebody else whether they think of harming themselves, if their words may be of that; none of them is passed
    on. What is surely told of the body with it waits beneath."""
    heard = hear_flags(text)
    if Flag.SELF_HARM not in {one.flag for one in heard}:
        return False
    begin_crisis(draft, tuple(replace(one, sure=False, also=()) for one in heard if one.sure or one.flag is Flag.SELF_HARM), text)
    return True


def _added(draft: Draft, text: str) -> bool:
    """Add what is told of a sign, where the open questions are about such, to the words they were begun with: what rests on these is noted
    at once, and the next question that is left is asked; return False for any other words. Where they deny an answer, all begins anew."""
    adds = draft.compiled.flow.adds if draft.asking else None
    if adds is None or not adds(text):
        return False
    said, kind = str(draft.top.got.get("said", "")), draft.ask.kind
    read = kind.told(text) or kind.read(text, draft.context)
    more = said if adds(said) else in_whole_words(f"{said}. {text}".strip(". "), ADDED_MOST)
    if more != said and isinstance(kind, YesNo) and kind.denies:
        record(draft, draft.ask, text, None, status="in_pain")
        begin_anew(draft)
    draft.top = draft.top._replace(got={**draft.top.got, "said": more})
    if draft.top.state and isinstance(read, Answer):
        answer(draft, read)
    elif draft.top.state:
        record(draft, draft.ask, text, None, status="in_pain")
        move_again(draft)
    return True


ADDED_MOST: Final = 2 * SAID_MOST
"""Most characters of the words told of pain together; our choice."""


def _keeps(waiting: Ask, heard: tuple[Heard, ...]) -> bool:
    """True if words with these signs are kept as an answer: not what may be of self-harm, nor a limit alone as a note, nor anything of
    them where a wish is asked for and not how somebody is."""
    limit = {one.flag for one in heard} == {Flag.RESTRICTION} and not waiting.safety
    tells = waiting.safety or waiting.doubts or bool(waiting.signs)
    return tells and not limit and Flag.SELF_HARM not in heard[0].also


def _said_again(draft: Draft, waiting: Ask | None, heard: tuple[Heard, ...], text: str) -> bool:
    """Take a sign that is said again, where it is asked whether it is there, for a yes; what a clinician told is kept beside what they
    told before."""
    words = clauses(text)[0].words if waiting and clauses(text) else ()
    if waiting is None or waiting.key != SIGN_THERE or not words or words[0] in _NO or not any(one.sure for one in heard):
        return False
    said = str(draft.top.got.get("said", ""))
    if said and any(one.flag is Flag.RESTRICTION for one in heard) and flat(text).strip(" .!") != flat(said).strip(" .!"):
        draft.top = draft.top._replace(got={**draft.top.got, "said": f"{said}. {text}"[:SIGN_MOST]})
    return _answered(draft, waiting, True, text)


def _asked_here(draft: Draft, heard: Heard) -> bool:
    """True if the open questions are about a sign already: said again, it is read as an answer. In doubt nothing that is not urgent is
    asked about beside them."""
    flow = draft.top.flow if draft.session.stack else ""
    if flow == draft.book.crisis or (draft.asking and draft.ask.unread):  # where whatever is no answer is met with where help is
        return heard.flag is Flag.SELF_HARM and not heard.sure
    if flow != draft.book.signs or heard.flag is Flag.SELF_HARM:
        return False
    about = f"{draft.top.got.get('heard', '')} {draft.top.got.get('among', '')}".split()
    return heard.flag.value in about or not (tells_what_meant(draft) or heard.sure or heard.flag in URGENT)  # another may be meant there


def beside_the_asked(draft: Draft, text: str) -> str:
    """Return a message without the signs that the open questions are about: "chest pain" is no new pain there."""
    if not draft.session.stack or draft.top.flow != draft.book.signs:
        return text
    return without_signs(text, tuple(one for one in hear_flags(text, weigh=False) if _asked_here(draft, one)))


def _understood(draft: Draft, waiting: Ask | None, text: str) -> bool:
    """True if the whole message has another meaning here, such as a command; then a doubtful sign in it does not count."""
    if waiting and (is_option(draft, text) or waiting.kind.claims(text, draft.context) or read_whole(draft, text)):
        return True
    return bool(draft.book.command(text) or draft.book.sentence(text, draft.known.facts) or _ABOUT_DATA.fullmatch(flat(text)))


def _asks_about_signs(draft: Draft, waiting: Ask, heard: tuple[Heard, ...], text: str) -> bool:
    """True if a message asks what the open question means by the signs it asks about ("what is a prednisone tablet"): the question stays
    open, so nothing is lost. Not where a sign can be urgent."""
    return bool(draft.book.answers and is_question(text) and understood(draft.book.answers(), text)
                and all(one.flag.value in waiting.signs and one.flag not in ASKED_WITH_PAIN for one in heard))


_ABOUT_DATA: Final = re.compile(
    r"^(?:please |pls |can you |could you |i want (?:you )?to |actually |just )*(?:delete|erase|remove|wipe|stop|show|send|what)\b[a-z ]*\b"
    r"(?:my (?:data|account|answers|info|information|details)|you (?:have|keep|know|hold|store|got) (?:on|about|of) me|messages|reminders|"
    r"texting me)[a-z ]*[.!?]*")
"""Whole messages that are wishes about one's data or messages."""


def _answered(draft: Draft, waiting: Ask, sure: bool, text: str) -> bool:
    """Answer the open question, which asks about these signs, with yes or, if the words are doubtful, with unsure. Where it asks about
    several in one, those that were named are answered in the questions about each, and said back before these."""
    wanted, named = ("yes",) if sure else ("unsure", "yes"), {one.flag.value for one in hear_flags(text) if one.sure}
    value = next((value for value in wanted for option in waiting.kind.options if option.value == value), None)
    if value is None or is_option(draft, text) or only_asks(text):
        return False
    if not sure and (words := clauses(text)[0].words) and words[0] in _NO:
        ask_again(draft, waiting.kind.example(draft.context))  # "nope, chest and breathing are good": the words deny what is suspected
        return True
    if sure and len(waiting.signs) > 1 and waiting.key != SIGN_THERE:
        draft.say(f"You wrote “{in_whole_words(text, SAID_MOST)}”: that is noted.")
        each = {key: "yes" for key, ask in to_come(draft) if ask.safety and len(ask.signs) == 1 and ask.signs[0] in named}
        draft.top = draft.top._replace(noted={**draft.top.noted, **each})
    answer(draft, Answer(value, text))
    return True


_NO: Final = frozenset(("no", "nope", "nah", "none"))


def only_asks(text: str) -> bool:
    """True if a message only asks what the words of a safety question mean, or why it is asked: that answers nothing. What it says of the
    person beside it counts."""
    whole = clauses(text)
    spoken = hear_act(text)
    asked = [clause for clause in whole if clause.mood is Mood.ASKED]
    told = ", ".join(clause.raw for clause in whole if clause.mood is not Mood.ASKED)
    own = any(word in _OWN for clause in asked for word in clause.words) and not _TO_DO_WITH.search(flat(text))
    about = spoken.asks in (Asks.MEANS, Asks.WHY) or whole[-1].words[-1:] in (("count",), ("counts",))
    return bool(asked) and about and not own and not (told and hear_flags(told, weigh=False))


_TO_DO_WITH: Final = re.compile(r"^(?:what|whats|how)\b.*\bto do with\b")

_OWN: Final = frozenset(("i", "im", "ive", "my", "me", "mine", "id", "ill"))


def _fell(heard: tuple[Heard, ...]) -> bool:
    """True if a fall may be among the signs: what hurts since then is asked about too, also in doubt and once the fall is played down."""
    return any(Flag.FALL in one.named for one in heard)
