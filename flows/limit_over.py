"""Limit over: on the date of a clinician's limit, is it over? Not being sure keeps it."""

from companion.conversation.condition import Fact, fact
from companion.conversation.day_kinds import LimitEnd, LimitOver
from companion.conversation.effects import Alert, Find, Remind
from companion.conversation.flow import Ask, Do, Flow, Run, Tell
from companion.conversation.kinds import YesNo, choice
from companion.conversation.policy import Policy
from companion.language.clearances import SEEN_TO
from flows.limit_over_facts import after_words, asked_after, end_given, kilos_after, limits_after, over_facts, waits_for_clearance
from flows.limits import STANDING
from flows.shared import WELCOMED

DUE, OVER = Fact("due", values=("yes", "no")), fact("over")
ENDED, AGAIN = DUE.is_("yes"), Fact("asked_on", values=("2026-03-16",), of=asked_after)
UNCLEARED = Fact("waits_words", values=("no squats, until cleared",))
"""What stands until they are cleared, where no other limit has come to its date: it is asked about now and then."""

UNTIL_GIVEN = Fact("end_given", of=end_given)
HURTS_NO_MORE = tuple(f"yes {it}{not_} hurt{more}" for it in ("it ", "") for not_ in ("doesn't", "doesnt", "does not")
                      for more in ("", " anymore", " any more", " now", " at all"))
"""Words for yes in which no pain is heard."""
IS_OVER = LimitOver(choice(
    ("over", "Yes, it is over", "yes", "over", "done", *HURTS_NO_MORE), ("still", "It is still on", "still", "still on", "no"),
    ("unsure", "Not sure", "unsure", "maybe", "don't know")).choices)

FLOW = Flow(
    "limit_over", version=1, title="Is my limit over", policy=Policy.TOLD, command=None, gates=(WELCOMED,), at_start=over_facts,
    sentences=(SEEN_TO,), fits=waits_for_clearance,
    facts=(DUE, Fact("over_said", values=("until 30 march",)), UNTIL_GIVEN, Fact("after", values=STANDING, of=limits_after),
           Fact("after_words", of=after_words), Fact("kilos", values=("60",), of=kilos_after),
           AGAIN, UNCLEARED),
    invite="It is time to ask about what you were told: {due_words}. Is it over?",
    parked="All right. Until you have told me, it still stands.",
    steps=(
        Tell("No limit of yours has come to its date.", ~ENDED & ~UNCLEARED.known),
        Ask("cleared", "You were told: {waits_words}. Has whoever set it cleared you since?", YesNo(unsure=True), safety=True,
            only_if=~ENDED & UNCLEARED.known),
        Do(Remind("limit", "limit_over", "{asked_on}"), ~ENDED & UNCLEARED.known & AGAIN.known),
        Run("clearance", fact("cleared").is_("yes")),
        Tell("Then it stays, and I ask again in four weeks. Once they have cleared you, say “cleared”.",
             fact("cleared").one_of("no", "unsure")),
        Ask("over", "You were told: {due_words}. Its date has come. Is it over?", IS_OVER, safety=True, only_if=ENDED),
        Ask("until", "Until when now? Tap, or type a date.", LimitEnd(), safety=True, only_if=OVER.is_("still") & ~UNTIL_GIVEN.known),
        Do(Find("safety.limits", "{after}", "asked on its date: {over}", "{due_words}"), ENDED),
        Do(Find("load.told", "{kilos}", "a clinician's limit"), ENDED),
        Do(Remind("limit", "limit_over", ""), ENDED & ~AGAIN.known),
        Do(Remind("limit", "limit_over", "{asked_on}"), ENDED & AGAIN.known),
        Do(Alert("", "says that a limit is over on its date: {due_words}"), OVER.is_("over")),
        Do(Alert("", "says that a limit is still on after its date: {after_words}"), OVER.is_("still")),
        Do(Alert("", "is not sure whether a limit is over on its date, so it stays: {after_words}"), OVER.is_("unsure")),
        Tell("Good. It no longer holds here. Begin lighter than before it, and say so if anything hurts.", OVER.is_("over")),
        Tell("Then it stays: {after_words}.", OVER.is_("still")),
        Tell("Then it stays, and I ask again in a week. Best ask who set it; once they have cleared you, say “cleared”.",
             OVER.is_("unsure")),
    ),
)
