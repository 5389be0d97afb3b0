"""Limits: what a clinician told somebody to leave out, by whom and until when; said back in one line before it counts."""

from dataclasses import replace

from companion.conversation.condition import ALWAYS, Fact, fact
from companion.conversation.day_kinds import LimitEnd
from companion.conversation.effects import Alert, Find, Remind
from companion.conversation.flow import Ask, Do, Flow, Jump, Run, Tell
from companion.conversation.kinds import Option, YesNo, choice
from companion.conversation.limit_words import LimitWords
from companion.conversation.number_kinds import LimitKilos
from companion.conversation.policy import Policy
from companion.language.clearances import NOT_CLEARED as NOT_CLEARED_YET
from companion.language.clearances import SIGNED_OFF
from companion.language.findings import tells_no_limit
from companion.language.limits import ASKS_END, NEW_END, NEW_KILOS, NEW_KILOS_TILL, NEW_KILOS_UNIT, NEW_UNIT, TOLD_MORE, only_part
from flows.limit_facts import (
    end_read,
    first_told,
    how_read,
    left_open,
    limit_facts,
    limits_beside,
    limits_open,
    past_read,
    same_words,
    second_end_read,
    second_told,
    told_words,
    who_read,
    words_beside,
)
from flows.limit_right_facts import before_right, may_put_right, right_read
from flows.limit_then_facts import (
    NO_MORE,
    asked_then,
    asks_more,
    end_then,
    has_been,
    kilos_then,
    kilos_told,
    left_out,
    limits_then,
    sooner,
    stands_then,
    understood,
)
from flows.safety_facts import tomorrow
from flows.shared import WELCOMED

YES_NO = ("yes", "no")
SAID = ("no hamstring stretching and no weights for 3 weeks", "nothing over 60 kg until they clear me, said my physio",
        "no squats, said my doctor", "no bending", "no, till friday", "take it easy", "take it easy for two weeks", "none",
        "no squats until 1 march, said my doctor", "no squats until today, said my doctor",
        "the limit is 40 kg, not 60", "the limit is 80 kg, not 60",
        "my doctor said no squats until june and my physio no bending", "my doctor said no squats and my physio no bending")
"""Examples of what may be said: with and without an end, one that has come, and who said so; part unread; no limit; two clinicians'."""
GIVEN = Fact("given", values=SAID)
CUT = Fact("cut", values=("my doctor told me on the phone this morning that",))
READ = Fact("read", values=("all", "part", "none"), of=how_read)
PUTS_RIGHT = Fact("put_right", values=("end", "lower", "kept"), of=right_read)
END_READ, WHO_READ = Fact("end_read", values=YES_NO, of=end_read), Fact("who_read", values=YES_NO, of=who_read)
STANDING = ('[{"parts": ["load"], "kg": null, "until": "2026-03-02", "by": "a surgeon", "words": "no weights"}]',
            '[{"parts": ["squats", "stretch_hip"], "kg": 60.0, "until": "", "by": "", "words": "no squats"}]')
"""Examples of what may stand."""

WHAT = (("load", "No weights", "weights", "no weight", "lifting", "no lifting"),
        ("kg", "Nothing over a weight", "a weight", "nothing over"),
        ("squats", "No squats", "squats", "squatting"), ("bending", "No bending", "bending"), ("stretching", "No stretching", "stretching"),
        ("training", "No training at all", "training", "everything", "all", "rest"), ("other", "Something else", "other"))
NOW, WRONG = fact("now"), fact("right").is_("no")
LOWER, KEPT, NEW_END_READ = map(PUTS_RIGHT.is_, ("lower", "kept", "end"))
SAYS = Fact("says", values=("not_cleared", "adds", "signed_off"))
"""That they are not cleared yet of what stands, so that nothing changes; that one more thing is to be left out; that they were signed
off, which may be either."""
NOT_CLEARED, ADDS, SIGNED = map(SAYS.is_, ("not_cleared", "adds", "signed_off"))
SIGNED_IS, SAME = fact("signed_off"), fact("same")
NO_LIMIT_MEANT = SIGNED_IS.one_of("cleared", "neither")
TELLS = ~NOW.one_of("fine", "cleared", "over") & ~LOWER & ~KEPT & ~NOT_CLEARED & ~NO_LIMIT_MEANT
SOME = TELLS & ~READ.is_("none") & ~fact("past").is_("over") & ~SAME.is_("no")
SECOND_ENDS = Fact("second_ends", values=YES_NO, of=second_end_read)
PAST = Fact("past_end", of=past_read)
TAPPED_PARTS = SOME & (READ.is_("part") & ~PAST.known | WRONG) & ~NEW_END_READ
MORE = fact("what").known & ~fact("what").one_of(*NO_MORE)
MORE_2 = MORE & fact("also").known & ~fact("also").is_("enough")
PICKED = {name: fact("what").is_(name) | (MORE & fact("also").is_(name)) | (MORE_2 & fact("also_2").is_(name))
          for name in ("kg", "stretching")}
SETS_LIMIT = SOME & ~fact("what").is_("none")
DONE = SETS_LIMIT & fact("right").is_("yes")
NEVER_TOLD = TELLS & ~SETS_LIMIT & NOW.is_("wrong")
NONE_NEW = TELLS & ~SETS_LIMIT & ~fact("never").is_("no")
TOLD_OR_NONE = DONE | NONE_NEW | NEVER_TOLD
ASKED_ON = Fact("asked_on", values=("2026-03-16",), of=asked_then)
ENDS, STANDS, HAS_BEEN = fact("end").known, fact("stands").known, fact("has_been").is_("yes")
UNTIL_SAID = Do(Find("safety.limits", "{open}", "told, questions open"), SOME & ~NEW_END_READ & (
    fact("given").known | fact("words").known | CUT.known | NOW.is_("new")))
"""Until it is answered, what was told by a clinician closes everything that moves, also where it is not said yet what it was; not where
only the end of what stands is put right, which stands as it was meanwhile."""


ASK_TOMORROW = Do(Remind("limit", "limits", "{tomorrow}"), UNTIL_SAID.only_if)
"""Somebody who puts the phone away is asked again the next day; once it is answered, on the date of what stands."""


TO_NOTE = (
    Do(Find("safety.limits", "{then}", "told by a clinician, in the lifter's words", "{understood}"), DONE),
    Do(Find("load.told", "{kilos}", "a clinician's limit"), TOLD_OR_NONE | LOWER),
    Do(Remind("limit", "limit_over", ""), TOLD_OR_NONE & ~ASKED_ON.known),
    Do(Remind("limit", "limit_over", "{asked_on}"), TOLD_OR_NONE & ASKED_ON.known),
    Do(Alert("", "was told by a clinician: {understood}"), DONE & ~NOW.is_("wrong") & ~NEW_END_READ),
    Do(Alert("", "put right until when a clinician's limit holds: {understood}. Before: {before}"), DONE & NEW_END_READ),
    Do(Alert("", "put right what a clinician told them. What stands now: {stands}"), DONE & NOW.is_("wrong") & ~NEW_END_READ),
)
"""What is noted once a limit was told, or that there is none."""

TOLD_BESIDE = ("until", "words")
"""What may be told beside the answer to another question: until when, and what else is to be left out."""


def _part_told(text: str) -> str:
    """Return the answer to what was to be left out in a sentence that says so, "nothing over 40 kg", or that there is no such thing, "all
    fine, go ahead she said"; "" for none."""
    if tells_no_limit(text, courtesies=False):
        return "none"
    part = only_part(text)
    return "stretching" if part.startswith("stretch") else part if part in {value for value, *_ in WHAT} else ""


def _also(key: str, *before: str) -> Ask:
    """Return the question for one thing more; what was named already is not offered again."""
    rest = [Option(value, label, tuple(more), only_if=~fact("what").is_(value) & ~fact("also").is_(value) if len(before) > 1
                   else ~fact("what").is_(value)) for value, label, *more in WHAT[:-2]]
    return Ask(key, "Anything else that you were told to leave out?", choice(
        Option("enough", "That is all", ("no", "nothing", "all", "done")), *rest), safety=True, amends=TOLD_BESIDE,
        only_if=TAPPED_PARTS & (MORE if len(before) == 1 else MORE_2))


FLOW = Flow(
    "limits", version=1, title="My limits", policy=Policy.TOLD, gates=(WELCOMED,), at_start=limit_facts,
    command=("limit", "limits", "a limit", "restriction", "restrictions", "my restrictions"),
    sentences=(r"(?:what|which|show)(?:'s| is| are| me)? (?:all )?my (?:limit|restriction)s?(?: again| now)?\??",
               r"(?:i have |i've got |i got )?(?:a |my )?(?:new )?(?:limit|restriction)s?(?: is|:)? "
               r"(?P<asked>(?:no|nothing|not|max|only|at most) .+)",
               r"(?P<asked>(?:i'm |i am )?not (?:allowed|supposed) to .+)",
               r"(?P<asked>(?:no|nothing) (?:weights?|load|lifting|bending|(?:hamstring |calf |hip )?stretching|over \d+|"
               r"above \d+|heavier than).* (?:for|until|till) .+)",
               rf"(?P<asked>{NEW_END})", rf"(?P<asked>{NEW_KILOS})", rf"(?P<asked>{NEW_KILOS_TILL})",
               rf"(?P<asked>{NEW_UNIT})", rf"(?P<asked>{NEW_KILOS_UNIT})",
               rf"(?P<asked>{NOT_CLEARED_YET})",
               rf"(?P<asked>{ASKS_END})",
               rf"(?P<asked>{SIGNED_OFF})", rf"(?P<asked>{TOLD_MORE})"),
    fits=may_put_right,
    facts=(Fact("tomorrow", of=tomorrow), PAST,
           GIVEN, CUT, SAYS, Fact("last_by", values=("a surgeon",)), Fact("last_until", values=("2026-03-16", "cleared")),
           SECOND_ENDS, Fact("first_told", of=first_told), Fact("second_told", of=second_told),
           Fact("same_words", of=same_words), Fact("left_out", of=left_out),
           Fact("stood_beside", values=STANDING, of=limits_beside), Fact("beside", of=words_beside), READ, PUTS_RIGHT, END_READ, WHO_READ,
           Fact("open", values=STANDING, of=limits_open),
           Fact("then", values=STANDING, of=limits_then), Fact("stands", of=stands_then), Fact("understood", of=understood),
           Fact("sooner", of=sooner), Fact("before", of=before_right), Fact("told_kg", of=kilos_told), Fact("told_words", of=told_words),
           Fact("asks_more", values=YES_NO, of=asks_more),
           Fact("kilos", values=("60",), of=kilos_then), Fact("end", values=("2026-03-16",), of=end_then), ASKED_ON,
           Fact("has_been", values=YES_NO, of=has_been),
           Fact("left_open", of=left_open)),
    invite="You told me of a limit, and I am not sure yet that I understood it. Until you have answered, nothing that moves opens here.",
    parked="All right. {left_open}",
    steps=(
        Ask("now", "What stands: {limit.words}. What about it?", choice(
            Option("over", "It is over", ("over", "it is over", "its over", "it's over", "yes"), only_if=fact("limit.due").is_("yes")),
            ("new", "There is a new one", "new", "another", "add"), ("wrong", "It is not right", "wrong", "not right", "change"),
            ("cleared", "I was cleared", "cleared"), ("fine", "Leave it", "fine", "nothing", "ok")), safety=True,
            only_if=fact("limit.words").known & ~fact("given").known & ~CUT.known & ~NOT_CLEARED),
        Run("limit_over", NOW.is_("over"), then=(Jump(ALWAYS),)),
        UNTIL_SAID,
        ASK_TOMORROW,
        Ask("words", "What were you told to leave out, until when, and by whom? A few words.",
            LimitWords(limit=200, example_text="my physio said no weights and no bending for three weeks", tried=SAID), safety=True,
            free=True, signs=("restriction",), only_if=TELLS & ~fact("given").known),
        UNTIL_SAID,
        ASK_TOMORROW,
        Ask("signed_off", "You wrote “{given}”. Are you off work or training? Or may you train again?", choice(
            ("limit", "Off work or training", "off", "limit", "off work", "off training", "stay off"),
            ("cleared", "I may train again", "cleared", "train again", "may train"), ("neither", "Neither", "neither", "no")),
            safety=True, only_if=TELLS & SIGNED & fact("given").known),
        Do(Find("safety.limits", "{stood_beside}", "nothing new was told"), NO_LIMIT_MEANT),
        Do(Remind("limit", "limit_over", ""), NO_LIMIT_MEANT & ~ASKED_ON.known),
        Do(Remind("limit", "limit_over", "{asked_on}"), NO_LIMIT_MEANT & ASKED_ON.known),
        Run("clearance", NOW.is_("cleared") | SIGNED_IS.is_("cleared"), then=(Jump(ALWAYS),)),
        Ask("same", "One more, then: {left_out}. Did {same_words}?", choice(
            ("yes", "Yes, the same", "yes", "same"), ("other", "Somebody else, or another end", "somebody else", "another end", "other"),
            ("no", "Nobody told me that", "no", "nobody")), safety=True, only_if=SOME & ADDS & fact("given").known),
        Ask("past", "{past_end:date} has been. Is the limit over, or did you mean another day?", choice(
            ("over", "It is over", "over", "yes", "done"), ("other", "Another day", "another day", "no")), safety=True, amends=("until",),
            only_if=SOME & PAST.known & END_READ.is_("no") & ~WRONG),
        Ask("what", "I want to be sure. What were you told to leave out? Tap one; I ask for more after it.", replace(choice(
            *WHAT, ("none", "There is no limit", "no limit", "none", "nothing")), told_by=_part_told), safety=True,
            amends=TOLD_BESIDE, only_if=TAPPED_PARTS),
        _also("also", "what"),
        _also("also_2", "what", "also"),
        Ask("kg", "Nothing above how many {unit}?", LimitKilos("kg", 1, 500, usual=(1, 300), example_value=40), safety=True,
            amends=TOLD_BESIDE, only_if=TAPPED_PARTS & PICKED["kg"]),
        Ask("which", "No stretching of what?", choice(
            ("all", "Nothing at all", "all", "everything"), ("stretch_hip", "Hips", "hip"),
            ("stretch_hamstrings", "Hamstrings", "hamstring"), ("stretch_calf", "Calves", "calf")),
            safety=True, amends=TOLD_BESIDE, only_if=TAPPED_PARTS & PICKED["stretching"]),
        Ask("until", "{first_told}Until when? Tap, or type a date.", LimitEnd(), safety=True, amends=("words",),
            only_if=SETS_LIMIT & (END_READ.is_("no") & ~NEW_END_READ & ~SAME.is_("yes") | WRONG)),
        Ask("until_2", "{second_told} Until when? Tap, or type a date.", LimitEnd(), safety=True,
            only_if=SETS_LIMIT & READ.is_("all") & SECOND_ENDS.is_("no") & ~WRONG & ~PAST.known & ~fact("what").known,
            then=(Jump(ALWAYS, "right"),)),
        Ask("by", "Who told you?", choice(
            ("doctor", "A doctor", "doctor", "gp"), ("physio", "A physiotherapist", "physio"), ("surgeon", "A surgeon", "surgeon"),
            ("other", "Somebody else", "other")), safety=True, amends=TOLD_BESIDE,
            only_if=SETS_LIMIT & (WHO_READ.is_("no") & ~SAME.is_("yes") | WRONG) & ~NEW_END_READ),
        Ask("right", "I understand: {understood}.{sooner} Is that right?", YesNo(yes="Yes, that is right", no="No, ask me again"),
            safety=True, amends=("until", "kg", "words"), only_if=SETS_LIMIT,
            then=(Jump(WRONG & NEW_END_READ, "until"), Jump(WRONG, "what"),
                  Jump(DONE & HAS_BEEN, "run_limit_over", "Noted, and a coach of yours sees it. One more question.", does=TO_NOTE))),
        Ask("never", "What stands: {beside}. So nobody told you that?", choice(
            ("yes", "Nobody told me that", "yes", "nobody", "never"), ("no", "It was said", "no", "it is over")), safety=True,
            only_if=NEVER_TOLD & fact("limit.words").known & ~fact("past").is_("over")),
        Do(Find("safety.limits", "{then}", "no limit was told"), TOLD_OR_NONE & ~DONE),
        Do(Find("safety.limits", "{then}", "a lower weight, put right by the lifter", "{understood}"), LOWER),
        Do(Find("safety.limits", "{then}", "nothing new was told"), ~TELLS & ~LOWER),
        *TO_NOTE,
        Do(Alert("", "put right the weight of a clinician's limit: {understood}. Before: {before}"), LOWER),
        Do(Alert("", "took a limit back, as nobody had told them that"), fact("never").is_("yes")),
        Tell("Noted. I keep to it in everything here, and a coach of yours sees it. On its date I ask whether it is over.",
             DONE & ENDS, must_arrive=True),
        Tell("Noted. I keep to it in everything here, and a coach of yours sees it. Once somebody has cleared you, say “cleared”.",
             DONE & ~ENDS, must_arrive=True),
        Tell("Good: no limit, then.", TOLD_OR_NONE & ~DONE & ~STANDS),
        Tell("Then nothing new. What stands: {stands}. Once a doctor or physiotherapist has cleared you, say “cleared”.",
             TOLD_OR_NONE & ~DONE & STANDS),
        Tell("Noted: {understood}, and no longer {before}. That counts from now, and a coach of yours sees it. If it is not right, say “my "
             "limits”.", LOWER, must_arrive=True),
        Tell("Your limit stays as it is: {stands}. It goes up only once a doctor or physio has cleared you. Then say “cleared”.",
             KEPT, must_arrive=True),
        Tell("It stays as it is.", NOW.is_("fine")),
        Tell("Then nothing changes.", SIGNED_IS.is_("neither")),
        Tell("Then it stays as it is: {limit.words}. Once they have cleared you, say “cleared”.", NOT_CLEARED),
    ),
)
