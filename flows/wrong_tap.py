"""Wrong tap: undo, once and for some minutes, a tap on an answer that closed everything. Every red flag is asked again first, one at
a time, and soon; what else was told stands, and the coach's alert is amended, never withdrawn."""

from dataclasses import replace
from functools import reduce
from operator import and_, or_

from companion.conversation.condition import ALWAYS, Condition, Fact, Facts, Value, fact
from companion.conversation.effects import Alert, Find
from companion.conversation.flow import Ask, Do, Flow, Gate, Run, Tell
from companion.conversation.kinds import YesNo
from companion.conversation.policy import Policy
from companion.screening.levels import OPEN_LEVELS
from companion.screening.safety import Level, worst
from companion.screening.sources import with_numbers
from flows.level_parts import LEVEL_PARTS, level_of, text_of, why_of, without_tap
from flows.safety_check import LEVELS
from flows.shared import CLINICIAN, EMERGENCY, LEVEL, NOT_TODAY, SAME_DAY

NO_LONGER = Gate(~fact("safety.slip.open").is_("yes") & LEVEL.one_of("emergency", "same_day", "clinician"),
                 with_numbers("That can't be undone here: only a tap can, once, and within {undone_within:count minutes}. So it has to be "
                              "looked at first. If it was a mistake, they will soon see that."))
"""The gate for whoever has to be seen and comes too late, or wrote it."""
NOTHING_TO_UNDO = Gate(~fact("safety.slip.open").is_("yes"),
            with_numbers("That can't be undone here: only a tap on an urgent answer can, once and for {undone_within:count minutes}. If "
                         "nothing hurts after all, say “nothing hurts”."))
"""The gate for whoever tapped nothing wrong lately."""

FLAGS_AGAIN = {
    "bladder": ("New trouble passing or holding urine or stool?", Level.EMERGENCY),
    "saddle": ("Numbness, or an odd feeling, between the legs?", Level.EMERGENCY),
    "legs": ("Weakness in both legs?", Level.EMERGENCY),
    "sexual": ("A new loss of sexual function or feeling?", Level.EMERGENCY),
    "chest": ("Chest pain or pressure, now or today?", Level.EMERGENCY),
    "breath": ("Faintness, or being unusually short of breath, now or today?", Level.EMERGENCY),
    "weakness": ("A leg that is weak or getting weaker, or a foot that drops?", Level.SAME_DAY),
    "fall": ("A hard fall or blow lately?", Level.SAME_DAY),
    "leg_signs": ("Pain, tingling or numbness below a knee?", Level.CLINICIAN),
}
"""Each red flag by itself, and the level it asks for; sources as in ``screening.safety``."""


def level_again(got: Facts, side: str) -> Value:
    """Return the level of the flags told this time, never freer than the one that stands; where there are none, that without the tap."""
    told = [level for flag, (_, level) in FLAGS_AGAIN.items() if got.get(flag) in ("yes", "unsure")]
    return worst((Level(str(got.get("safety.level", "emergency"))), *told)).value if told else level_of(without_tap(got)).value


def parts_again(got: Facts, side: str) -> Value:
    """Return the parts of the level without the tap."""
    return text_of(without_tap(got))


def keys_again(got: Facts, side: str) -> Value:
    """Return the keys of the answers that weigh without the tap."""
    return " ".join(why_of(without_tap(got)))


def _all_no(flags: tuple[str, ...]) -> Condition:
    return reduce(and_, (fact(flag).is_("no") for flag in flags)) if flags else ALWAYS


_LEAD = r"(?:(?:oh|no|oops|whoops|sorry|wait|hang on|ah|argh|ugh|shit|damn|my bad|hey|but|actually),? )*"
_PRESSED = r"(?:pressed|tapped|hit|clicked|touched|chose|picked|selected|pushed|press|tap)"
_SLIP = r"(?:by mistake|by accident|accidentally|in error)"
_TAIL = r"(?:,? (?:sorry|please|oops|i meant no|my bad))*(?:, (?:but |and )?(?:it|that|i) .{1,60})?"
IN_WORDS = tuple(f"{_LEAD}(?:{said}){_TAIL}" for said in (
    r"(?:it was )?(?:my )?(?:fat|clumsy|big) (?:fingers?|thumbs?)",
    r"(?:(?:that|it|this) was |i (?:got|used) )?(?:a |an |the |my )?(?:wrong|accidental) (?:tap|button|one|answer|press|choice|thing)",
    rf"(?:i )?(?:have |just |must have )*{_PRESSED} (?:on )?(?:the |a )?wrong (?:one|button|thing|answer|option)",
    rf"(?:i )?(?:have |just |must have )*{_PRESSED} (?:it|that|this|yes|not sure|the button|that one) {_SLIP}",
    rf"(?:i )?(?:have |just |must have )*accidentally {_PRESSED} (?:it|that|this|yes|not sure|the button|that one|the wrong one)",
    rf"(?:i )?(?:did )?(?:it|that) (?:was )?{_SLIP}|{_SLIP}",
    rf"i (?:only |really )?mean(?:t)?(?: to (?:{_PRESSED}|say))? no",
    r"(?:please )?undo(?: (?:it|that|this))?|i take (?:it|that) back|take (?:it|that) back|false alarm(?:,? .{0,40})?",
    r"(?:(?:that|it|this) was )?(?:wrong|not right|a mistake|mistake)",
    r"(?:that|it|this) was (?:a |an |my )?(?:mistake|accident|mis-?tap|mis-?click|slip|typo)|mis-?(?:tap|click|press)(?:ped|ed)?"))
"""Whole messages that take back a tap, in other words than its button's."""

FLAGS = tuple(FLAGS_AGAIN)
IN_TIME = fact("safety.slip.in_time").is_("yes")
ALL_NO = _all_no(FLAGS) & IN_TIME
A_FLAG = reduce(or_, (fact(flag).one_of("yes", "unsure") for flag in FLAGS))
TOO_LATE = ~A_FLAG & ~IN_TIME
"""True once the time is over in which the tap could be taken back: no more is asked, and nothing changes."""
LEVEL_AGAIN = Fact("level", values=LEVELS, of=level_again)
SLIPPED_IN_PAIN = fact("safety.slip.of").is_("pain")
ELSE_TOLD = ALL_NO & ~LEVEL_AGAIN.one_of(*OPEN_LEVELS)
"""True if what else was told closes the day without the tap."""
CHECK_AGAIN = ALL_NO & ~SLIPPED_IN_PAIN & LEVEL_AGAIN.one_of(*OPEN_LEVELS)
AMENDED = "amended: says that an answer was a wrong tap. Each red flag was asked again and answered no. Please ask them yourself"


def _comes_to(level: str) -> Condition:
    """Return that this level holds now; too late, the one that stands does."""
    return TOO_LATE & LEVEL.is_(level) | ~TOO_LATE & LEVEL_AGAIN.is_(level)


FLOW = Flow(
    "wrong_tap", version=1, title="Wrong tap", policy=replace(Policy.SAFETY, counted=False),
    command=("wrong tap", "i tapped the wrong one", "that was a wrong tap", "wrong button"), gates=(NO_LONGER, NOTHING_TO_UNDO),
    sentences=IN_WORDS, said_by=fact("safety.slip.open").is_("yes"), at_rest=True,
    facts=(LEVEL_AGAIN, Fact("parts", of=parts_again), Fact("why", of=keys_again)),
    steps=(
        Tell(with_numbers("Then I ask each red flag again, one at a time. Please read them slowly. If in doubt, say not sure. It counts if "
                          "you finish within {undone_finished:count minutes} of the tap.")),
        *(Ask(flag, f"{words} ({at} of {len(FLAGS)})", YesNo(unsure=True), safety=True, only_if=_all_no(FLAGS[:at - 1]) & IN_TIME)
          for at, (flag, (words, _)) in enumerate(FLAGS_AGAIN.items(), 1)),
        Do(Find("safety.slip", "", "undone once")),
        Do(Find("safety.undone", "yes", "a wrong tap, asked again"), ALL_NO),
        Do(Find("safety.undone", "no", "a wrong tap, asked again"), A_FLAG),
        Do(Find(LEVEL_PARTS, "{parts}", "what the level is made of"), ALL_NO),
        Do(Find("safety.level", "{level}", "red flags asked again"), ~TOO_LATE),
        Do(Find("safety.checked", "undone", "the rest of the check is still open"), ALL_NO & ~SLIPPED_IN_PAIN),
        Do(Find("safety.why", "{why}", "a wrong tap"), ALL_NO),
        Do(Alert("{level}", AMENDED), ALL_NO & ~ELSE_TOLD),
        Do(Alert("{level}", f"{AMENDED}. What else they told stands"), ELSE_TOLD),
        Do(Alert("{level}", "said the last answer was a wrong tap; asked again, a red flag was answered yes or not sure"), A_FLAG),
        Tell(with_numbers("More than {undone_finished:count minutes} have passed since that tap, so it can't be undone any more. What I "
                          "told you then stands."), TOO_LATE, must_arrive=True),
        Tell("Noted as a wrong tap; it stays in your log. A coach who was told hears this too.", ALL_NO & ~ELSE_TOLD),
        Tell("Noted as a wrong tap; it stays in your log, and a coach who was told hears it. What else you told me stands.", ELSE_TOLD,
             must_arrive=True),
        Tell(NOT_TODAY, _comes_to("not_today"), must_arrive=True),
        Tell(EMERGENCY, _comes_to("emergency"), must_arrive=True, last=True),
        Tell(SAME_DAY, _comes_to("same_day"), must_arrive=True, last=True),
        Tell(CLINICIAN, _comes_to("clinician"), must_arrive=True),
        Run("safety_check", CHECK_AGAIN),
    ),
)
