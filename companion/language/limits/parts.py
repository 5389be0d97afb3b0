"""Parts of what somebody may be told to leave out, and the words that forbid or allow them."""

from __future__ import annotations

import re
from typing import Final

from companion.language.phrases import normalise


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
    r"shouldn't|shouldnt|should not|won't|wont|wouldn't|forbid\w*|forbade|forbidden|ban(?:ned)?|stay (?:off|away)|lay off|keep off|"
    r"leave out|off|skip|quit|refrain\w*|ruled out|against|hold off|rest|only|just)\b")
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
_GO_ON: Final = re.compile(
    r"(?:(?:that )?(?:he|she|they) )?(?:(?:said|says|told me|wants me)(?: that)? )?(?:to |i (?:can|may|should) )?"
    r"(?:carry on(?: training| lifting)?|keep (?:on )?(?:going|moving|training|active|lifting|squatting)|stay active|train|go on)"
    r"(?: as (?:usual|normal|before)| normally)?")
"""A clause that allows to go on and names no more."""
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
    must mustn't shouldn't should won't wont wouldn't let lets letting me forbidden forbid forbade banned ban off stay away allowed out
    leave skip stop stopped rest until till til limit limits restriction restrictions yes ok okay well because my back will would if time
    being while week weeks next last few
    kind sort type exercise exercises movement movements"""
SAYS_NOTHING: Final = frozenset(_FILLERS.split())
"""Words that say nothing of what to leave out beyond what was read."""


def sets_none(text: str) -> bool:
    """True if words say, and say no more than, that there is no limit."""
    return bool(_NOTHING_SET.fullmatch(normalise(text).strip(" .!,")))


def split_up(text: str) -> list[str]:
    """Return the parts of what was said, each of which forbids or allows by itself."""
    return [part for one in _SPLIT.split(normalise(text)) if (part := one.strip())]


def forbids(part: str) -> bool:
    """True if a part of what was said forbids something, or may."""
    return bool(_NOT.search(part))


def parts_named(text: str) -> frozenset[str]:
    """Return the parts that words name, whatever they say of them: "cleared me for lifting" names the load."""
    return parts_and_rest(f" {normalise(text)} ")[0]


def parts_and_rest(clause: str) -> tuple[frozenset[str], str]:
    """Return the parts that a clause names, and the clause without them."""
    parts: set[str] = set()
    for part, pattern in _COMPILED:
        clause, count = pattern.subn(" ", clause)
        parts |= (_STRETCHES if part == "stretch_all" else {part}) if count else set()
    return frozenset(parts), clause


def parts_left_out(line: str) -> tuple[frozenset[str], str, str]:
    """Return the parts to leave out, what of them is done elsewhere, and the words that were not understood; "no squats or bending"
    forbids both."""
    parts, elsewhere, rest, forbids = set[str](), list[str](), list[str](), False
    for clause in map(str.strip, _SPLIT.split(line)):
        if not clause or _NOTHING_SET.fullmatch(clause) or _GO_ON.fullmatch(clause):
            continue
        named, left = parts_and_rest(f" {clause} ")
        says_no, says_yes = bool(_NOT.search(clause)), bool(_ALLOWED.search(clause))
        if says_yes and not says_no:
            forbids = False
            rest += [clause] if _SOFTENED.search(clause) or (not named and len(clause.split()) > ALLOWED_MOST) else []
            continue
        forbids = says_no or forbids
        unknown = [word for word in re.findall(r"[^\W_][\w'’%-]*", _ALLOWED.sub(" ", left)) if word not in SAYS_NOTHING]
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
