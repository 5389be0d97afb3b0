"""Reads from words what a clinician told somebody to leave out: "no hamstring stretching and no weights for 3 weeks".

Nothing is guessed: what is left over once all that is understood is taken away is given back (``rest``), and is asked about.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from functools import lru_cache
from typing import Final

from dateutil.relativedelta import relativedelta

from companion.language.days.dates import FEASTS, following, read_date, weekday
from companion.language.phrases import normalise
from companion.language.slips import begun_as, nearest_word
from companion.language.units import IMPERIAL, KG_PER_POUND

LATELY: Final = timedelta(days=60)
"""For so long after it a day is not taken for that of the next year; our choice."""
CLEARED: Final = "cleared"
"""The end of a limit that stands until somebody is cleared."""


@dataclass(frozen=True, slots=True)
class ToldLimit:
    """A limit as it was read. ``parts``: ids as in ``screening.limits.LimitPart``; ``kg``: nothing above it. ``until``: a date as text,
    ``CLEARED``, or "" where none was read. ``by``: who said so, "" unread. ``rest``: words that were not understood. ``none``: that
    there is no limit. ``elsewhere``: what the part of that name is, in its words: "jumping or twisting"."""

    parts: frozenset[str] = frozenset()
    kg: float | None = None
    until: str = ""
    by: str = ""
    rest: str = ""
    none: bool = False
    elsewhere: str = ""

    @property
    def read(self) -> bool:
        """True if it says what to leave out, and all of it was understood."""
        return bool(self.parts or self.kg is not None) and not self.rest


_UNITS: Final = r"(?:kgs?|kilos?|kilograms?|lbs?|pounds?)"


def _amount(name: str = "") -> str:
    return (rf"(?P<{name}kg>\d+(?:[.,]\d+)?)(?: ?(?P<{name}unit>{_UNITS})\b|"
            r"(?! ?(?:weeks?|wks?|days?|months?|years?|hours?|min|rep|set|time|%|percent|per|x\b)|[\d.:/-]))")


_AMOUNT: Final = _amount()
_NOT_SO_MUCH: Final = rf"(?:,? not (?:(?:over|above|up to) )?{_amount('not_')})"
"""What a weight is said in place of: "40 kg, not 60"."""
_LIFTED: Final = r"(?:lift(?:ing)?|squat(?:s|ting)?|weights?|loads?|carry(?:ing)?|bar(?:bell)?|anything|deadlift(?:s|ing)?)"
_KILOS: Final = tuple(map(re.compile, (
    rf"(?:(?:no|not|nothing|never|don't|dont|do not|can't|cant|cannot|avoid|stay|keep|only) )*(?:(?:to|be|it|the|my|any|{_LIFTED}) )*"
    r"(?:no more than|not more than|nothing more than|more than|heavier than|above|over|beyond|exceeding|exceed|max(?:imum)?(?: of)?|"
    rf"at most|up to|limit(?:ed)?(?: to| of| is|:)?|below|under|less than|only) {_AMOUNT}{_NOT_SO_MUCH}?",
    rf"{_AMOUNT}(?: is)?(?: the| my)? (?:max(?:imum)?|at most|or less|limit)\b{_NOT_SO_MUCH}?")))

_MANY: Final = r"\d{1,3}|two|three|four|five|six|seven|eight|nine|ten|twelve"
_SPAN: Final = re.compile(
    r"(?:for |over )?(?:at least |about |around |another |the )*(?:next |coming )?"
    rf"(?:(?P<many>{_MANY}|a couple of|an?|one)(?: ?(?:-|to|or) ?(?P<most>{_MANY}))?(?: more| further| extra)? ?(?P<unit>day|week|wk|month)"
    r"s?(?: more| longer)?|"
    r"(?P<fortnight>a fortnight))\b(?! ago\b)")
_UNTIL: Final = re.compile(r"\b(?:until|till?|untill|up to|before|(?:extended|prolonged)(?: (?:it|that|this))? to) (?P<when>.+)")
_CLEARED: Final = re.compile(
    r"\b(?:until|till?|untill|unless|before) (?:i'm |i am |i |he |she |they |the |my |next |a |an |it |im )*(?:doctor|gp|physio\w*|surgeon|"
    r"clinician|consultant|scan|mri|review|check ?-?up|appointment|follow ?-?up|further notice|clear\w*|told otherwise|"
    r"say\w* (?:so|otherwise|ok)|heals?|healed|better|sees?|seen)"
    r"(?: (?:clears?|cleared|me|says?|ok|so|otherwise|it's|its|it is|fine|again))*|for now|indefinitely|for good|permanently|forever|"
    r"for life|no end date")
_UNIT_BEFORE: Final = re.compile(
    rf"((?:{_MANY}|an?) ?(?P<unit>day|week|wk|month)s?\b.*\bfor )(?P<many>{_MANY})(?= ?(?:$|[,;.!)]|(?:and|but|or|said)\b))")
"""A span whose unit was said before it: "no squats for 2 weeks and no bending for 4"."""
_NUMBERS: Final = {"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9,
                   "ten": 10, "twelve": 12, "a couple of": 2}

CLINICIANS: Final = (
    ("a physiotherapist", r"physio\w*|pt\b|physical therapist"), ("a surgeon", r"surgeon\w*|orthop\w+"),
    ("a midwife", r"midwife|midwives"),
    ("a doctor", r"doctors?\b|doc\b|gp\b|dr\b\.?(?: \w+)?|physician|consultant|cardiologist|neurologist|rheumatologist|specialist|gyn\w+|"
                 r"obgyn|medic\b"),
    ("a hospital", r"hospital|clinic\b"), ("a nurse", r"nurse"), ("a chiropractor", r"chiro\w*"), ("an osteopath", r"osteopath\w*"))

_WHO: Final = "|".join(pattern for _, pattern in CLINICIANS)
_LEADS_IN: Final = r"""
    no nope oh sor+y ac\w+ly oops wait correction i i'm mean meant it it's its was is that that's thats should be make change changed to
    and only just now really instead said says told me he she they the my limit date end lasts"""
_PUTS_RIGHT: Final = rf"(?:(?:{'|'.join(_LEADS_IN.split())}|should have been|{_WHO})[,:;]* )"
_SAID_AFTER: Final = (r"(?:,? (?:ac\w+ly|instead|though|sor+y|really|now|please|i meant?|"
                      rf"not (?:(?:until|till?|for|just|only) )?[^, ]+(?: (?:weeks?|wks?|days?|months?))?|"
                      rf"(?:(?:said|says|by) )?(?:my |the |a )?(?:{_WHO})(?: said| says| told me)?))")
_ENDS: Final = (r"(?:(?:until|untill|till?|(?:extended|prolonged) to) (?:(?!not\b).)+?|(?:for )?(?:another |about |at least |a further )?"
                rf"(?:{_MANY}|a couple of|an?|one)(?: ?(?:-|to|or) ?(?:{_MANY}))?(?: more| further| extra)? ?(?:day|week|wk|month)s?"
                r"(?: more| longer)?|(?:for )?a fortnight)")
_LENGTHENED: Final = (
    rf"(?:{_PUTS_RIGHT})*(?:(?:my |the |a )?(?:{_WHO})|he|she|they|it|that|(?:my |the )?(?:limit|restriction))"
    r"(?: (?:has|have|had|was|is|been|got|just|now|then|only|also)|'s)* (?:extended|prolonged|lengthened|pushed|moved|put|added|changed|"
    r"wants?|wanted|gave|gives?|given|needs?|likes?|keeps?|kept)(?: (?:it|that|this|(?:the|my) (?:limit|restriction)|me|back|out|on|by|to|"
    r"for|up|longer|off|wait|rest))* ")
_TO_A_DAY: Final = r"to (?:(?!not\b).)+?"
NEW_END: Final = rf"(?:{_PUTS_RIGHT}+{_ENDS}{_SAID_AFTER}*|{_ENDS}{_SAID_AFTER}+|{_LENGTHENED}(?:{_ENDS}|{_TO_A_DAY}){_SAID_AFTER}*)"
"""Whole messages that may put the end of a limit right, as a pattern; ``new_end`` reads them."""
_NEW_END: Final = re.compile(rf"(?:{_PUTS_RIGHT}*(?P<end>{_ENDS})|{_LENGTHENED}(?P<then>{_ENDS}|{_TO_A_DAY})){_SAID_AFTER}*")
_LONGER: Final = re.compile(r"\b(?:more|another|further|extra|longer|added|by (?:a|an|another|\d+|two|three|four|six|one))\b")
_OF_A_LIMIT: Final = rf"\b(?:limit|(?:he|she|they|{_WHO}) (?:said|says|told me))\b"
_WEIGHT: Final = (rf"(?:{_PUTS_RIGHT}|(?:and|can|may|lift|max(?:imum)?|at most|up to|nothing|over|above|weight|load) )*{_AMOUNT}"
                  rf"(?:(?: is)?(?: the| my)? (?:max(?:imum)?|limit))?(?:{_NOT_SO_MUCH}|{_SAID_AFTER})*")
_NEW_KILOS: Final = re.compile(_WEIGHT)
_MAY: Final = rf"(?=.*(?:{_OF_A_LIMIT}|\bnot \d))"
NEW_KILOS: Final = rf"{_MAY}{_WEIGHT}"
"""Whole messages that may put the weight of a limit right, as a pattern; ``new_kilos`` reads them, and a weight alone."""
_UNIT_LEADS: Final = rf"(?:{_PUTS_RIGHT}|(?:in|as|weight|number|all) )*"
NEW_UNIT: Final = (rf"{_UNIT_LEADS}(?:not (?:in )?{_UNITS}(?:,| but)? {_UNIT_LEADS})?(?P<unit_meant>{_UNITS})"
                   rf"(?:,? (?:and |but )?not (?:in )?{_UNITS})?{_SAID_AFTER}*")
"""Whole messages that may put the unit of a limit's weight right, as a pattern; ``in_the_unit`` reads them."""
_NEW_UNIT: Final = re.compile(NEW_UNIT)
NEW_KILOS_UNIT: Final = rf"(?=.*\d ?{_UNITS})(?!.*\b(?:nothing|over|above|max\w*|at most|up to|limit)\b){_WEIGHT}"
"""Whole messages that may say a limit's weight again with another unit, as a pattern; ``new_kilos`` reads them."""
_TILL: Final = re.compile(rf",? {_ENDS}(?=,| not\b|$)")
NEW_KILOS_TILL: Final = rf"{_MAY}(?=.*{_TILL.pattern})(?:{_PUTS_RIGHT})*{_amount('till_')}.*"
"""Whole messages that may put a limit's weight and end right, as a pattern; ``new_kilos_till`` and ``new_end_beside`` read them."""


def _stretching(of: str) -> str:
    return rf"(?:(?:{of}) stretch(?:es|ing)?|stretch(?:es|ing)? (?:of |for |out )?(?:the |my )*(?:{of}))"


_PARTS: Final = (
    ("stretch_hamstrings", _stretching(r"hamstrings?|hammys?|hammies|back of (?:the|my) (?:legs?|thighs?)")),
    ("stretch_hip", _stretching(r"hips?|hip flexors?|glutes?|buttocks?|piriformis")),
    ("stretch_calf", _stretching(r"calf|calves|achilles|ankles?")),
    ("stretch_all", r"stretch(?:es|ing)?(?: (?:of )?(?:anything|at all))?"),
    ("load", r"(?:any |added |extra |external |heavy |heavier |free )*(?:weights?|loads?|loading|loaded (?:squats?|work|exercises?)|"
             r"lift(?:ing|s)?(?: (?:weights?|anything|heavy(?: things?)?|things?))*|barbells?|bars?\b|dumbbells?|kettlebells?|"
             r"heavy (?:squats?|stuff|things?)|deadlift(?:s|ing)?|carry(?:ing)?(?: anything)?|resistance|body ?-?weight only|"
             r"(?:only|just) body ?-?weight|weight training|weight ?lifting|back squats?|front squats?|leg press|press(?:es|ing))"),
    ("bending", r"(?:bend(?:s|ing)?(?: (?:over|forwards?|down|my back|the back|of the back|at the waist))*|forward bends?|forward folds?|"
                r"flexion|flex(?:ing)?(?: (?:my |the )?(?:back|spine))?|stoop(?:ing)?|hing(?:es?|ing)|toe touch(?:es|ing)?)"),
    ("squats", r"(?:deep |full |low |any )*(?:squats?|squatting|knee bends|lunges?)"),
    ("training", r"(?:any |all |hard |heavy )*(?:training|train|exercis(?:e|es|ing)|work(?:ing)? ?outs?|gym|sports?|"
                 r"physical activit(?:y|ies)|activit(?:y|ies)|bed rest|complete rest|full rest|rest(?! (?:is|of|are))|leg day|legs)"),
    ("elsewhere", r"(?:runn?(?:s|ing)?|jump(?:s|ing)?|jogg?(?:ing)?|swim(?:ming)?|cycl(?:e|ing)|bik(?:e|ing)|football|rugby|tennis|driving|"
                  r"drive|twist(?:s|ing)?|skiing|ski|impact|contact|alcohol|overhead (?:work|press(?:ing|es)?)|bench(?: press(?:ing|es)?)?|"
                  r"sitting(?: long)?|sex|flying|baths?|horse riding|riding)"),
)
_COMPILED: Final = tuple((part, re.compile(rf"\b{pattern}(?!\w)")) for part, pattern in _PARTS)
_ELSEWHERE: Final = dict(_COMPILED)["elsewhere"]
_ALL_OF_IT: Final = re.compile(r"\b(?:movements?|moving|anything|everything)\b")
"""What says nothing beside something that it is said of, and may mean all that moves where a clause forbids nothing else."""
_STRETCHES: Final = frozenset(("stretch_hip", "stretch_hamstrings", "stretch_calf"))

_NOT: Final = re.compile(
    r"\b(?:no|not|never|nothing|none|nor|neither|without|avoid\w*|stop(?:ped)?|don't|dont|do not|can't|cant|cannot|mustn't|mustnt|must not|"
    r"shouldn't|shouldnt|should not|won't|forbid\w*|forbade|forbidden|ban(?:ned)?|stay (?:off|away)|lay off|keep off|leave out|off|skip|"
    r"quit|refrain\w*|ruled out|against|hold off|rest|only|just)\b")
_MISSPELT: Final = {"fysio": "physio", "fisio": "physio", "fizio": "physio", "docter": "doctor", "weks": "weeks", "skwats": "squats",
                   "nothin": "nothing", "nuthin": "nothing", "nuffin": "nothing", "nowt": "nothing", "ovr": "over", "abv": "above",
                   "untl": "until", "til": "till"}
_SLIPS_OF: Final = """
    squats squatting lifting weights bending stretch stretching stretches hamstring hamstrings training exercise exercises deadlift
    deadlifts running jumping twisting physio physiotherapist doctor surgeon consultant specialist weeks months nothing barbell"""
_MEANT: Final = tuple(_SLIPS_OF.split())
"""What a misspelt word may mean: one letter off, from nine letters two, with the same beginning."""
_MEANT_LEAST: Final = 5
"""Letters from which a word may be a misspelt one; our choice."""
_NO_SLIP: Final = frozenset((
    "squad", "squads", "banding", "bonding", "binding", "blending", "trailing", "tracing", "weighs", "stretched", "stretcher", "ruining"))
"""Words of their own that are as near to one of these."""

_ALLOWED: Final = re.compile(r"\b(?:fine|ok|okay|allowed|may|can|could|good|safe|free|cleared|encouraged|light \w+ (?:is|are))\b")
_NOTHING_SET: Final = re.compile(
    r"(?:(?:he|she|they|the \w+|my \w+) (?:said |set |gave |put |told me )?)?(?:(?:there (?:are|is|were|was) )?(?:no|none|nothing|nope|"
    r"not any|not really|no (?:limits?|restrictions?|problems?|worries|issues?|need)(?: (?:at all|set|to worry|found))?|"
    r"(?:it'?s |it is |it was |that's )?nothing(?: (?:serious|wrong|special|bad|to worry about|new|at all))?|"
    r"(?:to )?(?:carry on|keep (?:going|moving|training|active)|stay active)(?: as (?:usual|normal|before)| normally)?|"
    r"all (?:good|clear|fine|ok|okay)|i'm (?:fine|ok)|"
    r"(?:i )?(?:can|may) (?:train|lift|squat|do everything|carry on|go on)(?: as (?:usual|normal|before)| normally| again| fully)?|"
    r"train(?:ing)? (?:as (?:usual|normal)|normally|is (?:fine|ok|okay))|everything (?:is )?(?:fine|ok|okay|allowed)|fully cleared|"
    r"(?:i'm |it's |all )?(?:fine|ok|okay|good|safe|clear|cleared) to (?:train|lift|squat|exercise|go on|carry on|go)"
    r"(?: as (?:usual|normal|before)| normally| again| fully)?|cleared(?: for everything)?|"
    r"(?:nobody|no ?one|no doctor|they never|he never|she never)(?: has| ever| have)* (?:told|said|set|gave)(?: (?:me|us))?"
    r"(?: (?:that|this|it|so|anything|to|any limits?|any restrictions?))*|i was never told(?: (?:that|this|it|so|anything))*))"
    r"(?: (?:at all|set))?")
_SOFTENED: Final = re.compile(r"\b(?:light|easy|gentle|careful|slow)")
ALLOWED_MOST: Final = 6
"""Words of a clause that allows something unnamed, above which it is asked about; our choice."""
_SPLIT: Final = re.compile(r"\s*(?:[,;.!?()]|\band\b|\bbut\b|\bor\b|\bnor\b|&|\+|\bplus\b|\bthen\b)\s*")
_FILLERS: Final = """
    the a an my me i i've im i'm it's its that's he she they it we you him her them was were is are be been being has have had to of for
    from in on at with by as that this these those there so also too still just only again please now today yesterday said says say told
    tells tell advised advises advice wants want wanted asked asks set sets gave put orders order doctors doctor's strict strictly
    saw seen went visited actually oh wait sorry correction
    medical medically under any anything at all really completely total totally absolutely definitely than then more do doing does done
    did go going keep use using get not no never nothing none neither nor without avoid avoiding avoided don't dont can't cant cannot
    must mustn't shouldn't should forbidden forbid forbade banned ban off stay away allowed out leave skip stop stopped rest until till
    til limit limits restriction restrictions yes ok okay well because my back will would if time being while week weeks next last few
    kind sort type exercise exercises movement movements"""
_FILLER: Final = frozenset(_FILLERS.split())
"""Words that say nothing of what to leave out beyond what was read."""


@lru_cache(64)
def read_limit(text: str, today: date, system: str = "") -> ToldLimit:
    """Return what words say of a limit. ``system``: the lifter's units, for a weight without its unit."""
    if sets_none(text):
        return ToldLimit(none=True)
    by, line = _who(f" {_spelt(text)} ")
    if (kilos := new_kilos_till(text, system)) and (end := new_end_beside(text, today)):
        return ToldLimit(kg=kilos.kg, until=end, by=by)
    until, line = _end(line, today)
    ends = [until, *_ends(line, today)]  # of two, the later: one is kept; the words of the second are left, so that the parts are asked
    until = CLEARED if CLEARED in ends else max(ends)
    kg, line = _kilos(line, system)
    parts, elsewhere, rest = _left_out(line)
    return ToldLimit(parts, kg, until, by, rest, elsewhere=elsewhere)


@lru_cache(64)
def read_limits(text: str, today: date, system: str = "") -> tuple[ToldLimit, ...]:
    """Return the limits that words tell: one for each end, where every end follows what it is the end of, "no squats for 2 weeks and no
    bending for 4", and one clinician said so; else what ``read_limit`` makes of them, which is asked about where they name two ends.
    ``system``: as there."""
    whole = (read_limit(text, today, system),)
    by, line = _who(f" {_spelt(text).replace(_PLACE, '')} ")
    ends = list[str]()
    while (found := _end(line, today, f" {_PLACE}{len(ends)}{_PLACE} , "))[0]:
        ends.append(found[0])
        line = found[1]
    *told, last = re.split(rf"{_PLACE}(\d+){_PLACE}", line)
    limits = dict[str, ToldLimit]()
    for said, place in zip(told[::2], map(int, told[1::2]), strict=True):
        kg, left = _kilos(said, system)
        parts, elsewhere, rest = _left_out(left)
        one = ToldLimit(parts, kg, ends[place], by, rest, elsewhere=elsewhere)
        again = any(parts & before.parts or None not in (kg, before.kg) for before in limits.values())
        if again or not one.read:
            return whole
        limits[one.until] = _both(limits[one.until], one) if one.until in limits else one
    kg, left = _kilos(last, system)
    more = kg is not None or _left_out(left) != (frozenset(), "", "")
    return whole if more or not limits or len(clinicians_in(text)) > 1 else tuple(limits.values())


_PLACE: Final = "\ue000"
"""What the place of an end is marked with, which nobody types."""


def _both(one: ToldLimit, other: ToldLimit) -> ToldLimit:
    return replace(one, parts=one.parts | other.parts, kg=other.kg if one.kg is None else one.kg,
                   elsewhere=" or ".join(filter(None, (one.elsewhere, other.elsewhere))))


def by_each(text: str) -> list[str]:
    """Return the parts of a message in each of which another clinician says what to leave out, "my doctor said no squats and my physio said
    no stretching", in normal form; the message alone where that is not so."""
    return list(_grouped(_spelt(text))) or [text]


@lru_cache(64)
def _grouped(line: str) -> tuple[str, ...]:
    groups, whose, closed = [""], [""], False
    for part in _PARTS_OF_IT.split(line):
        if not part.strip(" ,.;"):
            groups[-1] += part
            continue
        named = clinicians_in(_CLEARED.sub(" ", part))
        if len(named) > 1:
            return ()
        who = named[0] if named else ""
        if (who and whose[-1] and who != whose[-1]) or (not who and closed):
            groups.append("")
            whose.append("")
        closed = bool(who and groups[-1]) and not _left_out(_who(f" {part} ")[1])[0]  # "no squats, said my doctor"
        groups[-1] += part
        whose[-1] = who or whose[-1]
    told = [group.strip(" ,.;") for group in groups]
    reads = [read_limit(group, _ANY_DAY) for group in told]
    each = len(told) > 1 and len(set(whose)) == len(whose) and all(one.by and one.read for one in reads)
    return tuple(re.sub(r"^(?:and|but|plus|then)\b,? ", "", group) for group in told) if each else ()


_PARTS_OF_IT: Final = re.compile(r"(?<=[,.;] )|(?= (?:and|but|plus)\b)")


def told_more(text: str, today: date, system: str = "") -> str:
    """Return what a message adds to the limit told before it, "oh and no bending either", as it would be told by itself; "" for none."""
    line = _line_of(text)
    said = _TOO.sub("", _AND.sub("", _ALSO_SAID.sub(r"and \1 ", line)))
    told = read_limit(said, today, system)
    return said if said != line and told.read and forbids(said) else ""


_LEADS_ON: Final = r"(?:(?:oh|ah|um|sorry|wait|yes|yeah|i forgot|forgot|right|ok)[,:]* )*"
_AND: Final = re.compile(rf"^{_LEADS_ON}(?:and|also|plus|another thing|one more thing|additionally)[,:]*(?: also)? ")
_ALSO_SAID: Final = re.compile(rf"^{_LEADS_ON}(?:and )?((?:(?:my |the )?(?:{_WHO})|he|she|they)(?: has)?) also ")
_TOO: Final = re.compile(r"(?:,? (?:either|too|as well|also))+$")
TOLD_MORE: Final = (rf"{_LEADS_ON}(?:(?:and|also|plus|another thing|one more thing|additionally)[,:]* .+|"
                    rf"(?:(?:my |the )?(?:{_WHO})|he|she|they)(?: has)? also .+|"
                    r"(?:no|not|nothing|don't|dont|avoid) .+,? (?:either|too|as well|also))")
"""Whole messages that may add to the limit told before them, as a pattern; ``told_more`` reads them."""


def sets_none(text: str) -> bool:
    """True if words say, and say no more than, that there is no limit."""
    return bool(_NOTHING_SET.fullmatch(normalise(text).strip(" .!,")))


def split_up(text: str) -> list[str]:
    """Return the parts of what was said, each of which forbids or allows by itself."""
    return [part for one in _SPLIT.split(normalise(text)) if (part := one.strip())]


def forbids(part: str) -> bool:
    """True if a part of what was said forbids something, or may."""
    return bool(_NOT.search(part))


def sets_one(text: str, today: date) -> bool:
    """True if words say what to leave out and also until when, or who said so: they are no wish."""
    told = read_limit(text, today)
    return bool(told.parts or told.kg is not None) and bool(told.by or told.until)


_NOT_SAID: Final = re.compile(
    rf"(?:(?:i'm |i am )?not sure|i (?:do not|don't|dont) (?:know|remember)|don'?t know|dunno|idk|no idea|unknown|unclear|open[- ]ended|"
    rf"(?:(?:(?:my |the )?(?:{_WHO})|he|she|they|nobody|no one|it) )?(?:did not|didn't|didnt|never|hasn't|hasnt|has not|haven't|wouldn't|"
    r"not|wasn't|couldn't)(?: (?:say|said|tell|told|give|gave|given|name|know|been|set|mention|mentioned|actually|really|me|us|an?|any|"
    r"the|end|date|day|until|when|how|long|anything|that|it|yet))+|nobody (?:said|told me|knows)(?: (?:until )?when)?|"
    r"no (?:end(?: date)?|date)(?: (?:yet|given|set|said))?)")
"""Answers to "until when?" that nobody said so: it stands until they are cleared."""


def read_end(text: str, today: date) -> str:
    """Return the end of a limit from an answer to "until when?": a date as text, ``CLEARED``, or "" where none was read."""
    line = _line_of(text)
    if _NOT_SAID.fullmatch(line):
        return CLEARED
    found = _end(f" {line} ", today)[0] or _end(f" until {line} ", today)[0]
    if not found and (day := read_date(line, today)) and not _passed(line, day, today):
        return day.isoformat()
    return found


def past_end(text: str, today: date) -> str:
    """Return the end that words name where it was lately, as text; "" for none: on 2 March "until 1 March" is a slip, or over."""
    if not (found := _UNTIL.search(f" {_spelt(text)} ")):
        return ""
    words = found["when"].split()
    named = (" ".join(words[:count]).strip(" .,!") for count in range(min(len(words), 6), 0, -1))
    name, day = next(((name, day) for name in named if (day := _day(name, today))), ("", today))
    return (day - relativedelta(years=1)).isoformat() if name and _passed(name, day, today) else ""


def _passed(named: str, day: date, today: date) -> bool:
    """True if a day that is named without its year was lately, so that next year's is hardly meant."""
    return not re.search(r"\d{4}", named) and today - LATELY <= day - relativedelta(years=1) <= today


def new_end(text: str, today: date) -> str:
    """Return the end of a limit in words that put it right and say no more: "no, till monday", "physio said 3 weeks actually", "doctor
    extended it till may"; a date as text, ``CLEARED``, or "" for no such words."""
    found = _NEW_END.fullmatch(_line_of(text))
    said = re.sub(r"^to ", "until ", found["end"] or found["then"]) if found else ""
    end, rest = _end(f" {said} ", today)
    return end if not rest.strip(" ,") else ""


_STILL_ON: Final = re.compile(
    r"^(?:(?:no|nope|nah|(?:it(?:'?s| is)? )?(?:not|isn't|isnt)(?: (?:over|done|quite|finished))?(?: yet)?|"
    r"(?:it(?:'?s| is) )?still(?: on)?)\b[ ,.;]*(?:but|as|because|since|so)?[ ,]*)+(?=\S)")


def still_until(text: str, today: date) -> str:
    """Return the end in words that say, or may, that a limit is still on: "not yet, physio wants one more week"; as ``new_end`` does."""
    line = _line_of(text)
    return new_end(line, today) or new_end(_STILL_ON.sub("", line), today)


def says_longer(text: str) -> bool:
    """True if an end in words is counted from the one that stands: "one more week"."""
    return bool(_LONGER.search(_line_of(text)))


@dataclass(frozen=True, slots=True)
class NewKilos:
    """The weight of a limit as it is put right, in kg. ``was``: the one it is said in place of; ``named``: true if the words say that they
    are of a limit, or that somebody set it; ``number``: as it was typed, with a unit."""

    kg: float
    was: float | None
    named: bool
    number: float | None = field(default=None, compare=False)


def new_kilos(text: str, system: str = "") -> NewKilos | None:
    """Return the weight in words that put that of a limit right and say no more: "the limit is 40 kg, not 60"; None for no such words.
    ``system``: as for ``read_limit``."""
    return _new_kilos(_line_of(text), system)


def new_kilos_till(text: str, system: str = "") -> NewKilos | None:
    """Return the same of words that also say until when: "it's 40 kg till monday, not 60"."""
    line = _line_of(text)
    beside = _TILL.sub("", line, count=1)
    return _new_kilos(beside, system) if beside != line else None


def new_end_beside(text: str, today: date) -> str:
    """Return the end in such words, as ``new_end`` does."""
    return new_end(re.sub(rf"{_AMOUNT} ?", "", _line_of(text), count=1), today)


def _line_of(text: str) -> str:
    return _spelt(text).strip(" .!")


def _new_kilos(line: str, system: str) -> NewKilos | None:
    if not (found := _NEW_KILOS.fullmatch(line)):
        return None
    was = _in_kilos(found["not_kg"], found["not_unit"] or found["unit"], system) if found["not_kg"] else None
    unit = found["unit"] or found["not_unit"]
    return NewKilos(_in_kilos(found["kg"], unit, system), was, bool(re.search(_OF_A_LIMIT, line)), _number(found["kg"]) if unit else None)


def in_the_unit(text: str, kg: float, words: str, system: str = "") -> float | None:
    """Return the weight of a limit, in kg, where a message only puts its unit right: "sorry, pounds not kilos"; None for no such message.
    ``kg``: its weight as it was read; ``words``: those that told it; ``system``: as for ``read_limit``."""
    found = _NEW_UNIT.fullmatch(_line_of(text))
    return _in_kilos(f"{number_said(kg, words, system)}", found["unit_meant"], system) if found else None


def number_said(kg: float, words: str, system: str = "") -> float:
    """Return the number by which a weight was told: as the words have it, else in the person's own units."""
    said = map(_number, re.findall(r"\d+(?:[.,]\d+)?", words))
    own = kg / KG_PER_POUND if system == IMPERIAL else kg
    return next((one for one in said if any(abs(one * factor - kg) < _ROUNDED for factor in (1.0, KG_PER_POUND))), round(own, 1))


_ROUNDED: Final = 0.05
"""How far two weights in kg differ at most that are the same, since they are kept rounded."""


def _number(amount: str) -> float:
    return float(amount.replace(",", "."))


def is_end(text: str, today: date) -> bool:
    """True if words name an end and say nothing else: "3 weeks", not "3 weeks pregnant"."""
    end, rest = _end(f" {normalise(text).strip(' .!')} ", today)
    return bool(end) and not rest.strip(" ,")


def kilos_alone(text: str, system: str = "") -> str:
    """Return the weight of a sentence that tells of nothing else, in kg and as it would be typed; "" for none. ``system``: as there."""
    told = read_limit(text, _ANY_DAY, system)
    return f"{told.kg} kg" if told.read and told.kg is not None and not told.parts else ""


_ANY_DAY: Final = date(2000, 1, 1)


def only_part(text: str) -> str:
    """Return the one thing that a sentence says to leave out: a part, "kg" for what is above a weight, "" where it tells none, or more."""
    told = read_limit(text, _ANY_DAY)  # its end is not asked for
    if new_kilos(text) or new_kilos_till(text):
        return "kg"
    parts = [*told.parts, *(["kg"] if told.kg is not None else [])]
    return parts[0] if told.read and len(parts) == 1 else ""


def parts_named(text: str) -> frozenset[str]:
    """Return the parts that words name, whatever they say of them: "cleared me for lifting" names the load."""
    return _named(f" {normalise(text)} ")[0]


def _spelt(text: str) -> str:
    """Return a message in normal form, its misspelt words put right."""
    line = _UNIT_BEFORE.sub(r"\1\g<many> \g<unit>s", normalise(text))
    return re.sub(r"[^\W\d_]+", lambda word: _meant(word[0]), line)


@lru_cache(4096)
def _meant(word: str) -> str:
    if word in _MISSPELT or len(word) < _MEANT_LEAST or word in _FILLER or word in _NO_SLIP or word in _MEANT or _named(word)[0]:
        return _MISSPELT.get(word, word)
    return nearest_word(word, begun_as(word, _MEANT)) or word


def clinicians_in(text: str) -> list[str]:
    """Return the kinds of clinician that words name, such as "a surgeon"."""
    return [name for name, pattern in CLINICIANS if re.search(rf"\b(?:{pattern})(?!\w)", _spelt(text))]


def _who(line: str) -> tuple[str, str]:
    """Return the kind of clinician that a line names, and the line without it; of several the one who is not only to clear them, and ""
    where that leaves more than one."""
    named = clinicians_in(_CLEARED.sub(" ", line)) or clinicians_in(line)
    for _, pattern in CLINICIANS:
        line = re.sub(rf"\b(?:my |the |a |our )?(?:{pattern})(?:'s|s')?(?!\w)", " ", line)
    return named[0] if len(named) == 1 else "", re.sub(" +", " ", line)


def _end(line: str, today: date, mark: str = " , ") -> tuple[str, str]:
    """Return the end that a line names and the line with ``mark`` in its place; the longer of two spans."""
    if found := _CLEARED.search(line):
        return CLEARED, line.replace(found[0], mark)
    if found := _UNTIL.search(line):
        words = found["when"].split()
        for count in range(min(len(words), 6), 0, -1):
            named = " ".join(words[:count]).strip(" .,!")
            if day := _day(named, today):
                return "" if _passed(named, day, today) else day.isoformat(), line[:found.start()] + mark + " ".join(words[count:]) + " "
        return "", line
    if found := _SPAN.search(line):
        many = "2" if found["fortnight"] else found["most"] or found["many"]
        count, unit = _NUMBERS.get(many) or int(many), "week" if found["fortnight"] else found["unit"]
        day = today + (relativedelta(months=count) if unit == "month" else relativedelta(days=count * (1 if unit == "day" else 7)))
        return (day.isoformat(), line.replace(found[0], mark, 1)) if count else ("", line)
    return "", line


def _ends(line: str, today: date) -> Iterator[str]:
    while (found := _end(line, today))[0]:
        yield found[0]
        line = found[1]


_OF_MONTH: Final = re.compile(
    r"(?:(?:the )?(?:(?P<part>start|beginning|early|middle|mid|end|late)(?: in| of|-)? ?)|in )?"
    r"(?P<month>jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)")
_PARTS_OF_MONTH: Final = {"middle": 15, "mid": 15, "end": 31, "late": 31}
"""The day of the month that a part of it ends on, of a limit; of any other part the first."""


def _day(named: str, today: date) -> date | None:
    name = named.removeprefix("after ").strip()
    if name in FEASTS:
        month, day = FEASTS[name]
        this_year = date(today.year, month, day)
        return this_year if this_year > today else date(today.year + 1, month, day)
    if found := _OF_MONTH.fullmatch(name):  # "until may" is until it begins
        first = read_date(f"1 {found['month']}", today)
        return first and first + relativedelta(day=_PARTS_OF_MONTH.get(found["part"] or "", 1))
    if found := re.fullmatch(r"(?:the )?end of (?:the|this) month", name):
        return today + relativedelta(day=31)
    if found := re.fullmatch(r"(?:the )?end of (\w+)", name):
        first = read_date(f"1 {found[1]}", today)
        return first + relativedelta(day=31) if first else None
    if (day_named := weekday(name)) and day_named.days == (today.weekday(),) and not day_named.many:
        return following(today.weekday(), today)  # a limit that is told today doesn't end today
    return read_date(name, today)


def _kilos(line: str, system: str) -> tuple[float | None, str]:
    lowest = None
    while found := next(filter(None, (pattern.search(line) for pattern in _KILOS)), None):
        kilos = _in_kilos(found["kg"], found["unit"], system)
        lowest = kilos if lowest is None else min(lowest, kilos)
        line = f"{line[:found.start()]} , {line[found.end():]}"
    return lowest, line


def _in_kilos(amount: str, unit: str | None, system: str) -> float:
    pounds = unit.startswith(("lb", "pound")) if unit else system == IMPERIAL
    return round(_number(amount) * (KG_PER_POUND if pounds else 1.0), 2)


def _named(clause: str) -> tuple[frozenset[str], str]:
    parts: set[str] = set()
    for part, pattern in _COMPILED:
        clause, count = pattern.subn(" ", clause)
        parts |= (_STRETCHES if part == "stretch_all" else {part}) if count else set()
    return frozenset(parts), clause


def _left_out(line: str) -> tuple[frozenset[str], str, str]:
    """Return the parts to leave out, what of them is done elsewhere, and the words that were not understood; "no squats or bending"
    forbids both."""
    parts, elsewhere, rest, forbids = set[str](), list[str](), list[str](), False
    for clause in map(str.strip, _SPLIT.split(line)):
        if not clause or _NOTHING_SET.fullmatch(clause):
            continue
        named, left = _named(f" {clause} ")
        says_no, says_yes = bool(_NOT.search(clause)), bool(_ALLOWED.search(clause))
        if says_yes and not says_no:
            forbids = False
            rest += [clause] if _SOFTENED.search(clause) or (not named and len(clause.split()) > ALLOWED_MOST) else []
            continue
        forbids = says_no or forbids
        unknown = [word for word in re.findall(r"[^\W_][\w'’%-]*", _ALLOWED.sub(" ", left)) if word not in _FILLER]
        if forbids and named:
            parts |= named
            elsewhere += [found[0] for found in _ELSEWHERE.finditer(clause)]
        elif named:
            rest.append(clause)  # named, but neither forbidden nor allowed
            continue
        elif says_no:
            unknown += _ALL_OF_IT.findall(clause)
        if unknown:
            rest.append(" ".join(unknown))
    return frozenset(parts), " or ".join(dict.fromkeys(elsewhere)), " ".join(rest).strip()
