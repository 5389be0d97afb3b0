"""A clinician's limit, told on every path: said back, kept to everywhere, asked about on its date, ended by a clearance."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from typing import Any

import pytest

from companion.conversation.condition import Value
from companion.conversation.effects import Alert, Began, Record, Remind
from companion.conversation.moves import SIGN_MOST
from companion.screening.limits import Limit, LimitPart, as_text, facts_in, limits_in
from flows.catalogue import BOOK
from flows.squat_day import FLOW as SQUAT_DAY
from tests.drive import CHECKED, UNCHECKED, Talk
from tests.flows.squatting import Lifter

TOLD = Limit(frozenset((LimitPart.LOAD, LimitPart.HAMSTRINGS)), None, date(2026, 3, 23), "a physiotherapist", "no weights")
KILOS = Limit(frozenset(), 60.0, None, "a doctor", "nothing over 60 kg")
SURGEON = Limit(frozenset((LimitPart.LOAD,)), None, None, "a surgeon", "no lifting")
DUE = Limit(frozenset((LimitPart.SQUATS,)), None, date(2026, 3, 2), "a doctor", "no squats")


class Limited(Talk):
    """A talk in which limits close what they close, as the record has it."""

    def __init__(self, flow: str, *limits: Limit, **known: Value) -> None:
        facts = {name.replace("__", "."): value for name, value in known.items()}
        super().__init__(BOOK[flow].flow, {**CHECKED, **standing(*limits), **facts}, BOOK)

    def _take(self, taken: Any) -> None:
        super()._take(taken)
        if "safety.limits" in self.known:
            self.known = {name: value for name, value in self.known.items() if not name.startswith("limit.")}
            self.known |= standing(*limits_in(self.known["safety.limits"]))
            self.known["safety.limits"] = self.found.get("safety.limits", self.known["safety.limits"])

    @property
    def limits(self) -> tuple[Limit, ...]:
        return limits_in(self.known.get("safety.limits"))

    @property
    def heard(self) -> str:
        return "\n".join(say.text for say in self.says)

    @property
    def alerts(self) -> list[str]:
        return [effect.because for effect in self.effects if isinstance(effect, Alert)]

    @property
    def reminds(self) -> list[str]:
        return [effect.date for effect in self.effects if isinstance(effect, Remind) and effect.kind == "limit"]


def standing(*limits: Limit) -> dict[str, Value]:
    return {"safety.limits": as_text(limits), **facts_in(limits, date(2026, 3, 2), 20.0)} if limits else {}


# told -------------------------------------------------------------------------------------------------------


def test_what_was_heard_anywhere_is_said_back_in_one_line_and_kept_with_one_tap():
    talk = Limited("home").say("my doctor said no lifting for two weeks", "yes")
    assert talk.last == "I understand: no added load, until 16 March 2026, said by a doctor. Is that right?"
    talk.say("yes")
    assert talk.limits == (
        Limit(frozenset((LimitPart.LOAD,)), None, date(2026, 3, 16), "a doctor", "my doctor said no lifting for two weeks"),)
    assert talk.reminds == ["2026-03-03", "2026-03-16"]
    assert talk.alerts == ["was told by a clinician: no added load, until 16 March 2026, said by a doctor"]


def test_what_nothing_here_asks_for_is_said_back_and_stands_beside_the_rest():
    talk = Limited("limits").say("my doctor said no squats and no jumping for a month")
    assert talk.last == "I understand: no squats, no jumping, until 2 April 2026, said by a doctor. Is that right?"
    talk.say("yes", "my limits", "new", "no running until they clear me, said my physio", "yes")
    talk.say("cleared", "my doctor, today", "squats", "yes")
    assert [limit.elsewhere for limit in talk.limits] == ["jumping", "running"]


def test_a_sentence_and_a_command_lead_there_too():
    assert Limited("home").say("my limits: nothing over 60 kg").state == "limits.until"
    assert Limited("home").say("limits").state == "limits.words"
    assert Limited("home").say("not allowed to bend until christmas, said my physio").session.top.flow in ("limits", "signs")


def test_words_that_were_not_understood_close_everything_that_moves_until_they_are():
    talk = Limited("limits").say("take it easy for a while")
    assert talk.state == "limits.what"
    assert [limit.parts for limit in talk.limits] == [frozenset((LimitPart.OTHER,))]
    talk.say("stop")
    assert "nothing that moves is allowed" in talk.last
    assert talk.known["limit.move"] == "closed"


def test_in_doubt_it_is_told_by_taps():
    talk = Limited("limits").say("take it easy for a while").tap("Nothing over a weight", "No bending", "No stretching").say(
        "40").tap("Calves", "For 2 weeks", "A physiotherapist", "Yes, that is right")
    assert talk.limits == (Limit(frozenset((LimitPart.BENDING, LimitPart.CALF)), 40.0, date(2026, 3, 16), "a physiotherapist",
                                 "take it easy for a while"),)
    assert talk.found["load.told"] == "40"


def test_what_was_taken_wrongly_is_told_again_by_taps():
    talk = Limited("limits").say("no squats until they clear me, said my doctor", "no").tap(
        "No weights", "That is all", "Until they clear me", "A surgeon", "Yes, that is right")
    assert [(limit.parts, limit.until, limit.by) for limit in talk.limits] == [(frozenset((LimitPart.LOAD,)), None, "a surgeon")]


def test_what_was_tapped_before_it_was_told_again_is_gone():
    """Nobody is asked how heavy where there is no limit, and what was wrong can be got rid of."""
    told = Limited("limits").say("take it easy for a while").tap("No weights", "Nothing over a weight", "No bending").say("40").tap(
        "For 2 weeks", "A doctor", "No, ask me again")
    assert told.state == "limits.what"
    none = Limited("limits").say("take it easy for a while").tap("No bending", "Nothing over a weight", "That is all").say("40").tap(
        "For 2 weeks", "A doctor", "No, ask me again", "There is no limit")
    assert none.limits == ()
    told.tap("No weights", "That is all", "For 2 weeks", "A doctor", "Yes, that is right")
    assert [(limit.parts, limit.kg) for limit in told.limits] == [(frozenset((LimitPart.LOAD,)), None)]


def test_no_limit_takes_back_what_closed():
    for talk in (Limited("limits").say("none"), Limited("limits").say("take it easy").tap("There is no limit"),
                 Limited("limits").say("take it easy", "all fine, go ahead she said")):
        assert talk.limits == ()
        assert "no limit, then" in talk.heard


@pytest.mark.parametrize("words", ["ok fine", "fine", "carry on with light weights", "go ahead in two weeks"])
def test_a_courtesy_or_half_a_clearance_does_not_say_that_there_is_no_limit(words: str):
    assert Limited("limits").say("take it easy", words).state == "limits.what"


def test_words_that_may_have_been_cut_are_asked_for_again():
    words = "my doctor told me on the phone this morning that i may not do lifting" + 8 * ", not at home and not in the gym" + " for weeks"
    talk = Limited("home").say(words, "yes")
    assert len(words) > SIGN_MOST
    assert talk.state == "limits.words"


def test_a_new_limit_stands_beside_the_old_and_replaces_the_same_told_again():
    beside = Limited("limits", TOLD).tap("There is a new one").say("no squats until they clear me, said my doctor", "yes")
    assert [limit.parts for limit in beside.limits] == [TOLD.parts, frozenset((LimitPart.SQUATS,))]
    again = Limited("limits", TOLD).tap("There is a new one").say(
        "no weights and no hamstring stretching until they clear me, said my doctor", "yes")
    assert [limit.until for limit in again.limits] == [None]
    kilos = Limited("limits", KILOS).tap("There is a new one").say("no squats until they clear me, said my doctor", "yes")
    assert kilos.found["load.told"] == "60"


def test_a_limit_that_is_not_right_is_told_anew_and_the_coach_hears_of_one_taken_back():
    talk = Limited("limits", TOLD, KILOS, load__told="60").tap("It is not right").say("none")
    assert talk.limits == (TOLD, KILOS), "no limit goes by a word that names none"
    said = Limited("limits", TOLD).tap("It is not right").say("none").tap("It was said")
    assert (said.limits, said.alerts) == ((TOLD,), [])
    talk.tap("Nobody told me that")
    assert (talk.limits, talk.found["load.told"], talk.reminds) == ((), "", [""])
    assert "took a limit back" in talk.alerts[0]
    assert Limited("home", TOLD).say("what are my limits?").state == "limits.now"
    assert Limited("limits", TOLD).tap("Leave it").limits == (TOLD,)
    assert Limited("limits", TOLD).tap("There is a new one", "Back", "Leave it").limits == (TOLD,)


def test_a_limit_told_elsewhere_stands_where_an_earlier_telling_is_gone_on_with():
    talk = Limited("home").say("my limits", "stop", "my physio said no squats until the 30th", "yes", "yes", "my limits", "none")
    assert [limit.parts for limit in talk.limits] == [frozenset((LimitPart.SQUATS,))]
    assert "Then nothing new. What stands: no squats" in talk.heard
    assert "no limit, then" not in talk.heard
    new = Limited("home", TOLD).say("my limits", "new", "none")
    assert new.limits == (TOLD,)
    assert "What stands: no added load" in new.heard


def test_only_looking_closes_nothing_and_says_nothing_of_it():
    talk = Limited("home").say("my limits", "stop")
    assert (talk.last, talk.limits) == ("All right. Nothing is noted.", ())
    assert "What stands: no added load" in Limited("home", TOLD).say("my limits", "stop").last


@pytest.mark.parametrize("told", [
    ("my doctor told me on the phone this morning that i may not do any lifting for two weeks from now", "yes"),
    ("my limits", "take it easy for a while"), ("my doctor said no weights", "yes")])
def test_who_was_told_something_and_has_not_said_what_is_closed_until_it_is_said(told: tuple[str, ...]):
    talk = Limited("home").say(*told, "stop")
    assert "nothing that moves is allowed" in talk.last
    assert [limit.parts for limit in talk.limits] == [frozenset((LimitPart.OTHER,))]
    new = Limited("home", KILOS).say("my limits", "new", "stop")
    assert "nothing that moves is allowed" in new.last
    assert new.limits[0] == KILOS
    assert new.known["limit.move"] == "closed"
    assert new.say("my limits", "no squats until they clear me, said my doctor", "yes").limits[1:] == (
        Limit(frozenset((LimitPart.SQUATS,)), None, None, "a doctor", "no squats until they clear me, said my doctor"),)


def test_two_limits_in_one_sentence_are_said_back_and_kept_each_with_its_date():
    talk = Limited("limits").say("my physio said no squats for 2 weeks and no bending for 4")
    assert talk.last == ("I understand: no squats, until 16 March 2026, said by a physiotherapist; no bending, until 30 March 2026, "
                         "said by a physiotherapist. Is that right?")
    talk.say("yes")
    assert [(limit.parts, limit.until) for limit in talk.limits] == [
        (frozenset((LimitPart.SQUATS,)), date(2026, 3, 16)), (frozenset((LimitPart.BENDING,)), date(2026, 3, 30))]
    assert talk.reminds == ["2026-03-03", "2026-03-16"]
    told = Limited("limits").say("my physio said no squats for 2 weeks and no bending for 4", "no").tap(
        "No squats", "That is all", "For 4 weeks", "A doctor", "Yes, that is right")
    assert [(limit.parts, limit.until) for limit in told.limits] == [(frozenset((LimitPart.SQUATS,)), date(2026, 3, 30))]


@pytest.mark.parametrize("words", [("my physio said no squats for 3 weeks",), ("my limits", "no squats")])
def test_a_limit_that_is_not_confirmed_is_asked_about_the_next_day(words: tuple[str, ...]):
    talk = Limited("home").say(*words)
    talk.say(*["yes"] if talk.state == "signs.so" else [])
    assert talk.state.startswith("limits.")
    assert set(talk.reminds) == {"2026-03-03"}
    talk.say("stop", "my limits")
    assert talk.state.startswith("limits."), "what was put aside is taken up, also where a sign had asked for it"
    assert "and so nothing that moves" not in talk.last


# its date put right -----------------------------------------------------------------------------------------


@pytest.mark.parametrize(("words", "until"), [
    ("actually it was till monday", "9 March"), ("no, till monday", "9 March"), ("acually til monday", "9 March"),
    ("sory untill monday", "9 March"), ("physio said 4 weeks actually", "30 March"),
    ("no until the 14th", "14 March"), ("it was 4 weeks, not 3", "30 March")])
def test_the_date_of_a_limit_is_put_right_in_words_wherever_it_is_said(words: str, until: str):
    new = f"I understand: no squats, until {until} 2026, said by a physiotherapist."
    asked = Limited("limits").say("my physio said no squats for 3 weeks", words)
    assert asked.last == f"{new} Is that right?"
    asked.say("yes")
    for talk in (Limited("home", *asked.limits).say(words), Limited("limits", *asked.limits).say(words)):
        talk.say(*["yes"] if talk.state == "signs.so" else [])
        assert talk.last.startswith(new)
        assert (talk.say("yes").limits, talk.state) == (asked.limits, "home.pick")


def test_a_date_put_right_ends_the_limit_sooner_only_once_that_is_confirmed():
    talk = Limited("home", TOLD).say("actually it was till monday")
    assert talk.last == ("I understand: no added load, no hamstring stretching, until 9 March 2026, said by a physiotherapist. "
                         "That is sooner than what stands: until 23 March 2026. Is that right?")
    assert (talk.limits, talk.reminds) == ((TOLD,), [])
    assert Limited("home", TOLD).say("actually it was till monday", "stop").limits == (TOLD,)
    talk.say("yes")
    assert [(limit.parts, limit.until, limit.words) for limit in talk.limits] == [(TOLD.parts, date(2026, 3, 9), TOLD.words)]
    assert talk.reminds == ["2026-03-09"]
    assert talk.alerts == ["put right until when a clinician's limit holds: no added load, no hamstring stretching, until 9 March 2026, "
                           "said by a physiotherapist. Before: until 23 March 2026"]


def test_a_date_put_right_wrongly_is_asked_again_and_nothing_else_is():
    talk = Limited("home", TOLD).say("actually it was till monday", "no")
    assert (talk.state, talk.limits) == ("limits.until", (TOLD,))
    assert [limit.until for limit in talk.say("until the 30th", "yes").limits] == [date(2026, 3, 30)]


def test_a_date_put_right_is_that_of_the_limit_told_last_and_leaves_the_others():
    talk = Limited("home", TOLD, DUE).say("no, till friday")
    assert talk.last.startswith("I understand: no squats, until 6 March 2026")
    assert "sooner" not in talk.last
    assert [limit.until for limit in talk.say("yes").limits] == [TOLD.until, date(2026, 3, 6)]


@pytest.mark.parametrize("words", ["actually it was till monday", "no, till monday", "no until the 14th"])
def test_where_no_limit_stands_no_date_of_one_is_put_right(words: str):
    talk = Limited("home").say(words)
    assert (talk.limits, talk.session.stack[-1].flow) == ((), "home")


@pytest.mark.parametrize(("words", "until"), [
    ("until may", "1 May 2026"), ("may", "1 May 2026"), ("end of may", "31 May 2026"), ("mid april", "15 April 2026")])
def test_a_limit_may_end_with_a_month(words: str, until: str):
    assert f"until {until}," in Limited("limits").say("no squats, said my doctor", words).last


@pytest.mark.parametrize("words", [
    "she didn't say", "dont know", "he never said until when", "no idea", "no date yet", "she did not give a date"])
def test_a_limit_of_which_nobody_said_the_end_stands_until_they_are_cleared(words: str):
    assert Limited("limits").say("no squats, said my doctor", words).last.startswith("I understand: no squats, until cleared,")


@pytest.mark.parametrize("words", [("nobody told me",), ("i was never told that",), ("that old thing", "there is no limit")])
def test_of_a_limit_that_nobody_told_only_that_is_asked_which_stands(words: tuple[str, ...]):
    talk = Limited("home", TOLD).say("my limits", "not right", *words)
    assert talk.last == ("What stands: no added load, no hamstring stretching, until 23 March 2026, said by a physiotherapist. So nobody "
                         "told you that?")
    assert talk.tap("Nobody told me that").limits == ()


# its weight put right ---------------------------------------------------------------------------------------

SIXTY = Limit(frozenset(), 60.0, date(2026, 3, 20), "a physiotherapist", "nothing over 60 kg")
LOWER_KILOS = (
    "the limit is 40 kg not 60", "its 40 not 60", "40 kg is the limit, not 60", "actually the limit is 40kg", "she said 40 not 60",
    "oh wait physio said 40 not 60", "my limit is 40", "max 40 not 60", "i can only lift 40 not 60", "its 40 not 60 kg",
    "the limit is 88.2 lbs not 132.3")


@pytest.mark.parametrize("words", LOWER_KILOS)
def test_a_limit_put_right_to_less_counts_at_once_and_is_said_back(words: str):
    talk = Limited("home", SIXTY).say(words)
    assert [(limit.parts, round(limit.kg or 0), limit.until, limit.by) for limit in talk.limits] == [
        (SIXTY.parts, 40, SIXTY.until, SIXTY.by)]
    noted = "nothing above 40 kg, until 20 March 2026, said by a physiotherapist"
    assert f"Noted: {noted}, and no longer 60 kg." in talk.heard
    assert (talk.known["limit.kg"], talk.found["load.told"]) == (talk.limits[0].kg, f"{talk.limits[0].kg:g}")
    assert talk.alerts == [f"put right the weight of a clinician's limit: {noted}. Before: 60 kg"]
    assert (talk.reminds, talk.state) == ([], "home.pick"), "its date is as it was"


@pytest.mark.parametrize("words", ["the limit is 80 kg not 60", "its 80 not 60", "she said 80 not 60", "the limit is 60"])
def test_a_limit_is_not_put_right_to_more_and_it_is_said_which_stands(words: str):
    talk = Limited("home", SIXTY).say(words)
    assert (talk.limits, talk.alerts) == ((SIXTY,), [])
    assert ("Your limit stays as it is: nothing above 60 kg, until 20 March 2026, said by a physiotherapist. It goes up only "
            "once a doctor or physio has cleared you. Then say “cleared”.") in talk.heard


FORTY = replace(SIXTY, kg=40.0, words="physio said nothing over 40")
POUNDS_MEANT = ("i meant 40 lb", "sorry, pounds not kilos", "it was in pounds", "not kilos but pounds", "40 lb not kg", "oh i meant lbs")


@pytest.mark.parametrize("words", POUNDS_MEANT)
def test_pounds_that_were_taken_for_kilos_are_put_right_at_once(words: str):
    talk = Limited("home", FORTY, **{"safety.limits.today": "yes"}).say(words)
    assert [limit.kg for limit in talk.limits] == [18.14]
    assert "Noted: nothing above 18.1 kg, until 20 March 2026, said by a physiotherapist, and no longer 40 kg." in talk.heard
    asked = Limited("limits").say("physio said nothing over 40 until 20 march", words)
    assert asked.last == "I understand: nothing above 18.1 kg, until 20 March 2026, said by a physiotherapist. Is that right?"
    assert [limit.kg for limit in asked.say("yes").limits] == [18.14]
    kilos = Limited("limits").say("physio said nothing over 40 until 20 march", words, "no, kilos", "yes")
    assert [limit.kg for limit in kilos.limits] == [40.0]


def test_a_unit_put_right_to_more_and_one_that_may_be_of_something_else_change_nothing():
    pounds = replace(FORTY, kg=18.14)
    talk = Limited("home", pounds, **{"safety.limits.today": "yes"}).say("sorry, kilos not pounds")
    assert (talk.limits, "Your limit stays as it is" in talk.heard) == ((pounds,), True)
    for flow, known in (("home", {}), ("knee_to_wall", {"safety.limits.today": "yes"})):
        assert Limited(flow, FORTY, **known).say("i meant 40 lb").limits == (FORTY,)
    assert Limited("home", FORTY, **{"safety.limits.today": "yes"}).say("i meant 60 lb").limits == (FORTY,)


def test_of_two_weights_the_one_that_is_taken_back_is_put_right_else_the_one_told_last():
    eighty = Limit(frozenset((LimitPart.BENDING,)), 80.0, None, "a doctor", "nothing over 80")
    assert [limit.kg for limit in Limited("home", SIXTY, eighty).say("its 40 not 60").limits] == [40.0, 80.0]
    assert [limit.kg for limit in Limited("home", SIXTY, eighty, TOLD).say("the limit is 40").limits] == [60.0, 40.0, None]
    assert [limit.kg for limit in Limited("home", SIXTY, eighty).say("the limit is 40 not 50").limits] == [60.0, 40.0]


@pytest.mark.parametrize("words", ["its 40 not 60", "40 not 60", "max 40 not 60", "she said 40 not 60"])
@pytest.mark.parametrize("stands", [(), (TOLD,), (replace(SIXTY, kg=50.0),)])
def test_a_weight_put_right_that_may_be_of_something_else_puts_no_limit_right(words: str, stands: tuple[Limit, ...]):
    talk = Limited("home", *stands).say(words)
    named = "she" in words and stands and stands[0].kg
    assert talk.limits == ((replace(SIXTY, kg=40.0),) if named else stands)


def test_where_no_weight_stands_one_that_says_that_it_is_a_limit_is_told_like_any():
    for stands in ((), (TOLD,)):
        talk = Limited("home", *stands).say("the limit is 40 kg not 60")
        assert talk.state == "limits.until"
        assert [limit.kg for limit in talk.tap("For a week", "A doctor", "Yes, that is right").limits] == [*(None for _ in stands), 40.0]


def test_the_load_of_the_day_is_put_right_not_a_limit_of_the_same_weight():
    talk = Limited("squat_after", SIXTY).say("yes", "yes", "film", "below", "no", "60", "its 40 not 60")
    assert talk.last == "I understand: working load 40 kg in place of working load 60 kg. Is that right?"
    assert talk.limits == (SIXTY,)
    assert Limited("squat_after", SIXTY).say("yes", "yes", "film", "below", "no", "60", "the limit is 40 not 60").limits[0].kg == 40.0


@pytest.mark.parametrize("flow", ["knee_to_wall", "limits"])
def test_the_weight_of_a_limit_is_put_right_wherever_it_is_said(flow: str):
    assert Limited(flow, SIXTY).say("the limit is 40 kg not 60").limits[0].kg == 40.0


@pytest.mark.parametrize("words", ["no its 40 not 60", "no, 40 kg", "she said 40 not 60"])
def test_at_the_question_whether_it_is_right_the_weight_is_put_right_too(words: str):
    talk = Limited("limits").say("physio said nothing over 60 kg for 2 weeks", words)
    assert talk.last == "I understand: nothing above 40 kg, until 16 March 2026, said by a physiotherapist. Is that right?"
    assert [limit.kg for limit in talk.say("no, for 3 weeks", "yes").limits] == [40.0]
    assert [limit.until for limit in talk.limits] == [date(2026, 3, 23)]


@pytest.mark.parametrize("words", ["its 40kg till 23 march not 60", "no, 40 kg until 23 march", "40 till 23 march, not 60"])
def test_weight_and_end_are_put_right_in_one_sentence(words: str):
    talk = Limited("limits").say("physio said nothing over 60 kg for 2 weeks", words)
    assert talk.last == "I understand: nothing above 40 kg, until 23 March 2026, said by a physiotherapist. Is that right?"
    assert [(limit.kg, limit.until) for limit in talk.say("yes").limits] == [(40.0, date(2026, 3, 23))]


def test_where_a_weight_stands_a_lower_one_with_another_end_is_told_anew_and_a_higher_one_stands_beside_it():
    talk = Limited("home", SIXTY).say("its 40kg till 23 march not 60").tap("A physiotherapist")
    assert talk.last == "I understand: nothing above 40 kg, until 23 March 2026, said by a physiotherapist. Is that right?"
    assert [limit.kg for limit in talk.say("yes").limits] == [40.0]
    higher = Limited("home", SIXTY).say("its 80kg till 23 march not 60").tap("A physiotherapist", "Yes, that is right")
    assert [limit.kg for limit in higher.limits] == [60.0, 80.0]


@pytest.mark.parametrize("words", ["its 40kg till monday not 60", "40 till friday, not 60"])
def test_without_a_weight_that_stands_such_words_are_no_limit(words: str):
    assert Limited("home").say(words).limits == ()


def test_a_weight_beside_what_was_told_is_one_of_its_limits():
    talk = Limited("limits").say("physio said no bending for 2 weeks", "and nothing over 40")
    assert talk.last == "I understand: no bending, nothing above 40 kg, until 16 March 2026, said by a physiotherapist. Is that right?"


def test_once_it_is_said_that_a_limit_is_wrong_a_weight_is_told_anew():
    talk = Limited("limits", SIXTY).tap("It is not right").say("the limit is 80 kg not 60")
    assert talk.state == "limits.until"
    assert [limit.kg for limit in talk.tap("For a week", "A doctor", "Yes, that is right").limits] == [80.0]


def test_a_limit_told_anew_that_would_end_sooner_says_so():
    talk = Limited("limits", TOLD).tap("There is a new one").say("no weights and no hamstring stretching for a week, said my physio")
    assert "That is sooner than what stands: until 23 March 2026." in talk.last
    longer = Limited("limits", TOLD).tap("There is a new one").say("no weights and no hamstring stretching for 5 weeks, said my physio")
    assert "sooner" not in longer.last


# told with a clearance --------------------------------------------------------------------------------------

SEEN_AND_CLEARED = "saw my physio yesterday, she cleared me but nothing over 60 kg until friday"
NO_SQUATS = Limit(frozenset((LimitPart.SQUATS,)), None, date(2026, 3, 20), "a physiotherapist", "no squats")
SIXTY_NOW = "I understand: nothing above 60 kg, until 6 March 2026, said by a physiotherapist. Is that right?"


def sums(limits: tuple[Limit, ...]) -> list[tuple[frozenset[LimitPart], float | None, date | None]]:
    return [(limit.parts, limit.kg, limit.until) for limit in limits]


def test_a_clearance_and_a_limit_in_one_sentence_are_both_kept_and_only_what_is_missing_is_asked():
    talk = Limited("home", NO_SQUATS).say(SEEN_AND_CLEARED)
    assert talk.last == "You were told this: no squats, until 20 March 2026, said by a physiotherapist. Did they clear you after that?"
    talk.say("yes").tap("Everything")
    assert talk.last == ("I understand: cleared for everything. By whom and when: saw my physio yesterday, she cleared me. Is that right?")
    assert talk.say("yes").last == SIXTY_NOW
    assert (sums(talk.say("yes").limits), talk.reminds[-1]) == ([(frozenset(), 60.0, date(2026, 3, 6))], "2026-03-06")
    assert "Did they set any new limits" not in talk.heard


def test_said_again_it_is_no_limit_that_could_not_be_read():
    talk = Limited("home", NO_SQUATS).say(SEEN_AND_CLEARED, SEEN_AND_CLEARED)
    assert talk.last == "You were told this: no squats, until 20 March 2026, said by a physiotherapist. Did they clear you after that?"
    talk.say("yes").tap("Squats").say("yes", "yes")
    assert sums(talk.limits) == [(frozenset(), 60.0, date(2026, 3, 6))]


@pytest.mark.parametrize("answers", [("no",), ("not sure",)])
def test_a_limit_beside_a_clearance_that_does_not_count_stands_beside_what_stood(answers: tuple[str, ...]):
    talk = Limited("home", NO_SQUATS).say(SEEN_AND_CLEARED, *answers)
    assert "Then that does not count" in talk.heard or talk.last == SIXTY_NOW
    assert sums(talk.say("yes").limits) == [*sums((NO_SQUATS,)), (frozenset(), 60.0, date(2026, 3, 6))]


def test_a_limit_beside_a_clearance_that_does_not_count_lifts_none():
    words = "saw my physio yesterday, she cleared me but nothing over 70 kg until friday"
    talk = Limited("home", replace(SIXTY, kg=40.0)).say(words, "no")
    assert talk.last == ("I understand: nothing above 70 kg, until 6 March 2026, said by a physiotherapist. Less still stands beside it: "
                         "nothing above 40 kg, until 20 March 2026, said by a physiotherapist. If they raised that, say “cleared” after "
                         "this. Is that right?")
    assert [limit.kg for limit in talk.say("yes").limits] == [40.0, 70.0]
    assert talk.found["load.told"] == "40"
    cleared = Limited("home", replace(SIXTY, kg=40.0)).say(words, "yes")
    assert [limit.kg for limit in cleared.tap("Everything").say("yes", "yes").limits] == [70.0]


def test_a_limit_beside_a_clearance_that_is_left_half_way_closes_what_moves_and_is_asked_about_the_next_day():
    talk = Limited("home", NO_SQUATS).say(SEEN_AND_CLEARED, "stop")
    assert [limit.parts for limit in talk.limits] == [NO_SQUATS.parts, {LimitPart.OTHER}]
    assert talk.reminds == ["2026-03-03"]


def test_where_nothing_waits_for_a_clearance_the_limit_beside_it_is_kept():
    talk = Limited("home").say(SEEN_AND_CLEARED)
    assert ("Nothing here waits for a clearance just now" in talk.heard, talk.last) == (True, SIXTY_NOW)
    assert sums(talk.say("yes").limits) == [(frozenset(), 60.0, date(2026, 3, 6))]


def test_what_a_clearance_leaves_out_is_not_what_they_were_cleared_for():
    talk = Limited("home", NO_SQUATS).say("physio cleared me yesterday but no squats for 4 weeks", "yes")
    assert talk.last.startswith("What stood: no squats, until 20 March 2026")
    talk.tap("Everything").say("yes", "yes")
    assert sums(talk.limits) == [(NO_SQUATS.parts, None, date(2026, 3, 30))]
    upto = Limited("home", NO_SQUATS).say("physio cleared me for squats yesterday up to 60 kg", "yes", "yes").tap(
        "For 2 weeks", "Yes, that is right")
    assert sums(upto.limits) == [(frozenset(), 60.0, date(2026, 3, 16))]


# ended, changed, or not -------------------------------------------------------------------------------------


@pytest.mark.parametrize(("words", "state"), [
    ("surgeon lifted the restriction today", "clearance.right"), ("the surgeon removed my lifting ban today", "clearance.right"),
    ("my surgeon took the limit off", "clearance.cleared_when"), ("the restriction was lifted today", "clearance.cleared_at"),
    ("surgeon said lifting is ok again", "clearance.cleared_when"), ("my surgeon says i can lift again today", "clearance.right")])
def test_that_a_clinician_took_a_limit_back_is_a_clearance_and_no_limit(words: str, state: str):
    talk = Limited("home", SURGEON).say(words)
    talk.say(*["everything"] if talk.state == "clearance.cleared_for" else [])
    assert (talk.state, talk.limits) == (state, (SURGEON,))


def test_what_a_clinician_called_fine_again_is_cleared_and_nothing_else():
    both = replace(NO_SQUATS, parts=frozenset((LimitPart.SQUATS, LimitPart.HAMSTRINGS)))
    talk = Limited("home", both).say("physio said squats are ok again", "today", "yes", "none")
    assert [limit.parts for limit in talk.limits] == [{LimitPart.HAMSTRINGS}]
    assert Limited("home", both).say("physio said squats are not ok").session.top.flow != "clearance"


@pytest.mark.parametrize("words", [
    "physio said i can go up to 60 kg now", "my physio raised it to 60", "the physio says i can lift 60 kg now"])
def test_a_weight_that_a_clinician_raised_is_a_clearance_up_to_it(words: str):
    talk = Limited("home", FORTY).say(words, "this morning", "yes")
    assert talk.last.startswith("I understand: cleared for lifting weights.")
    talk.say("yes", "until 20 march", "yes")
    assert sums(talk.limits) == [(frozenset(), 60.0, date(2026, 3, 20))]
    kept = Limited("home", FORTY).say(words, "this morning", "no")
    assert (kept.limits, "It goes up only once a doctor or physio has cleared you." in kept.heard) == ((FORTY,), True)


def test_where_no_weight_stands_one_that_a_clinician_allows_is_a_limit():
    for stands in ((), (NO_SQUATS,)):
        assert Limited("home", *stands).say("physio said i can go up to 60 kg now").state == "signs.so"


def test_a_higher_weight_told_beside_a_lower_one_says_how_that_goes_up():
    talk = Limited("limits", FORTY).tap("There is a new one").say("physio said max 60 kg until 20 march")
    assert "If they raised that, say “cleared” after this." in talk.last


@pytest.mark.parametrize(("words", "until"), [
    ("doctor extended it till may", date(2026, 5, 1)), ("the doctor pushed it back to 20 april", date(2026, 4, 20)),
    ("doctor wants one more week", date(2026, 3, 27)), ("it was extended by two weeks", date(2026, 4, 3)),
    ("my gp added another 2 weeks", date(2026, 4, 3)), ("he extended the limit to the end of april", date(2026, 4, 30))])
def test_a_limit_that_a_clinician_made_longer_has_a_new_end_counted_from_its_own(words: str, until: date):
    stands = replace(NO_SQUATS, by="a doctor")
    talk = Limited("home", stands).say(words)
    assert (talk.state, talk.limits) == ("limits.right", (stands,))
    assert talk.say("yes").limits == (replace(stands, until=until),)


@pytest.mark.parametrize("words", [
    "not cleared yet", "i am not cleared yet", "my surgeon hasn't cleared me yet", "still not cleared to lift"])
def test_that_nobody_cleared_them_yet_changes_nothing(words: str):
    talk = Limited("home", SURGEON).say(words)
    assert (talk.limits, talk.alerts, talk.reminds, talk.state) == ((SURGEON,), [], [], "home.pick")
    assert "Then it stays as it is: no added load" in talk.heard


@pytest.mark.parametrize(("words", "stands"), [("not cleared yet", ()), ("not cleared for squats yet", (SURGEON,))])
def test_not_cleared_for_what_no_limit_closes_may_be_a_new_one(words: str, stands: tuple[Limit, ...]):
    assert Limited("home", *stands).say(words).state == "signs.so"


@pytest.mark.parametrize(("words", "until"), [
    ("not yet, physio wants one more week", "9 March 2026"), ("no, doctor extended it till may", "1 May 2026"),
    ("still on, 2 more weeks", "16 March 2026"), ("its not over yet, until friday", "6 March 2026")])
def test_on_its_date_not_yet_with_an_end_keeps_it_until_then(words: str, until: str):
    talk = Limited("limit_over", DUE).say(words)
    assert f"Then it stays: no squats, until {until}, said by a doctor." in talk.heard
    assert Limited("limit_over", DUE).say("not yet").state == "limit_over.until"


# kept to ----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("words", "shut", "opened"), [
    ("no squats until they clear me, said my doctor", ("squat_look", "pause_squat", "squat_day"),
     ("leg_raise", "knee_to_wall", "bird_dog")),
    ("no bending until they clear me, said my doctor", ("leg_raise", "rock_back", "hip_fold", "squat_look"), ("knee_to_wall", "bird_dog")),
    ("no hamstring stretching until they clear me, said my doctor", ("leg_raise",), ("rock_back", "squat_look", "knee_to_wall")),
    ("no stretching until they clear me, said my doctor", ("leg_raise", "rock_back", "hip_fold", "knee_to_wall"),
     ("squat_look", "bird_dog")),
    ("no training until they clear me, said my doctor", ("bird_dog", "leg_raise", "squat_day", "warm_up", "screen"), ()),
    ("no weights until they clear me, said my doctor", (), ("squat_look", "squat_day", "leg_raise"))])
def test_a_limit_closes_its_parts_and_no_more(words: str, shut: tuple[str, ...], opened: tuple[str, ...]):
    told = Limited("limits").say(words, "yes").limits
    for flow in (*shut, *opened):
        talk = Limited(flow, *told, drill="control")
        began = [effect.flow for effect in talk.effects if isinstance(effect, Began)]
        assert (flow in began) == (flow in opened), flow
        assert ("You were told to leave that out" in talk.heard) == (flow in shut), flow


def test_a_test_in_the_middle_is_not_gone_on_with_once_its_part_is_closed():
    told = ("tape", "my doctor said no calf stretching until he clears me", "yes", "yes")
    assert Limited("knee_to_wall").say(*told, "180").session.top.flow == "home"
    talk = Limited("knee_to_wall", about_you__height=180.0).say(*told)
    assert talk.session.top.flow == "home"
    assert "You were told to leave that out: no calf stretching" in talk.heard
    assert not [record for record in talk.effects if isinstance(record, Record) and record.key == "left_1" and record.status == "ok"]


class Squatting(Limited, Lifter):
    """A lifter with results on a squat day, in whom limits close what they close."""

    def __init__(self, flow: str, **known: Value) -> None:
        Lifter.__init__(self, BOOK[flow].flow, {name.replace("__", "."): value for name, value in known.items()})


@pytest.mark.parametrize("told_at", [(), ("80",), ("80", "no")])
def test_a_load_is_worked_out_anew_where_less_was_allowed_in_the_middle_of_a_squat_day(told_at: tuple[str, ...]):
    told = ("my doctor said nothing above 60 kg until 12 march", "yes", "yes")
    for way in (told, ("menu", *told, "go on")):
        talk = Squatting("squat_day").say(*told_at, *way)
        assert talk.state == "squat_day.load"
        assert "You were told: nothing above 60 kg" in talk.heard
        assert "at 60 kg" in talk.say("80", "no").last


def test_no_bar_is_asked_for_or_handed_out_once_there_is_no_weight():
    for known in ({"bar__bar": None}, {}):
        talk = Squatting("squat_day", **known).say("my physio said no weights for 3 weeks", "yes", "yes")
        assert talk.state == "squat_day.prime_now"
        assert talk.say("no").last.startswith("Now your squats. ")


def test_who_says_that_there_is_no_bar_goes_on_without_one():
    talk = Squatting("squat_day", bar__bar=None).say("no bar yet")
    assert "begins again" not in talk.heard
    assert talk.state == "squat_day.prime_now"


def test_a_set_cut_short_is_done_again_and_not_once_its_time_is_over():
    for away, at in ((10, "prime.set_1"), (120, "prime.set_2")):
        talk = Squatting("prime").say("ready", "ready", "start")
        talk.session, talk.now = talk.session._replace(at=talk.now.isoformat()), talk.now + timedelta(seconds=away)
        assert talk.say("my doctor said no lifting for two weeks", "yes", "yes").state == at


def test_no_bar_and_no_added_weight_is_offered_under_no_load():
    known = {"limit.load": "closed", "limit.words": "no added load, until cleared"}
    talk = Lifter(SQUAT_DAY, {**known, "bar.bar": None})
    assert "which bar" not in talk.heard.lower()
    assert talk.state != "squat_day.load"
    assert "You were told: no added load" in talk.heard
    for flow, label in (("pause_squat", "Empty bar"), ("arms_forward_squat", "Empty bar")):
        talk = Talk(BOOK[flow].flow, {**CHECKED, **known}, BOOK).say("film")
        assert label not in [tap.label for row in talk.says[-1].buttons for tap in row]


def test_a_weight_caps_the_days_load_below_the_tests_and_the_coach():
    talk = Lifter(SQUAT_DAY, {"load.limit": "80", "load.pin": "90", "load.told": "60", "limit.kg": 60.0}).say("75")
    assert "more than the 60 kg" in talk.heard


def test_warming_up_leaves_out_the_squats_that_are_closed():
    talk = Limited("warm_up", Limit(frozenset((LimitPart.SQUATS,))), warm="no").say("no", "start")
    assert talk.state == "warm_up.walk_more"
    talk.say("start")
    assert talk.found["warm"] == "done"


def test_results_offer_no_drill_home_work_or_load_that_is_closed():
    def results(**known: Value) -> str:
        return Lifter(BOOK["outcome"].flow, {**known, "outcome.at": None}).say("now").heard

    assert "knee over toes" in results()
    assert "knee over toes" not in results(**{"limit.stretch_calf": "closed", "limit.words": "no calf stretching"})
    assert "You were told: no calf stretching" in results(**{"limit.stretch_calf": "closed", "limit.words": "no calf stretching"})
    assert "Lift at most 10 kg: that is what you were told" in results(**{"limit.kg": 10.0, "limit.words": "nothing above 10 kg"})
    nothing = results(**{"limit.move": "closed", "limit.words": "no training at all"})
    assert "To try before you squat" not in nothing
    assert "Homework" not in nothing
    assert "The drill for that part" not in nothing
    due = results(**{"limit.due": "yes", "limit.words": "no calf stretching"})
    assert "To try before you squat" not in due, "a limit whose date has come is asked about first"


@pytest.mark.parametrize("words", ["nothing above 60 kg until 12 march, my doctor said", "no bending till my check-up"])
def test_a_limit_said_where_words_of_ones_own_are_expected_is_a_limit_and_no_wish_or_note(words: str):
    for flow, told in (("squat_days", ("tuesdays at 6pm", "yes", "no")), ("note_to_coach", ())):
        talk = Limited(flow, coach="yes").say(*told)
        open_at, asked = talk.state, talk.last
        assert BOOK[talk.session.top.flow].stops[talk.session.top.state].free, asked  # type: ignore[union-attr]
        talk.say(words)
        assert talk.session.top.flow == "limits", flow
        while talk.session.top.flow == "limits":
            talk.tap("A doctor") if talk.session.top.state == "by" else talk.say("yes")
        assert (talk.state, len(talk.limits)) == (open_at, 1)
        assert words not in talk.answers.values()


def test_a_reminder_quotes_no_limit_as_what_they_want():
    for goal, wanted in (("no squats for 3 weeks, my physio said", False), ("parallel with a still back, at 90 kg", True)):
        assert ("You want" in Squatting("squat_day", **{"squat.goal": goal}).says[0].text) is wanted


# over -------------------------------------------------------------------------------------------------------


def test_on_its_date_nothing_that_moves_opens_before_it_is_asked_about():
    talk = Limited("bird_dog", DUE)
    assert talk.state == "limit_over.over"
    assert "no squats, until 2 March 2026, said by a doctor" in talk.last
    talk.tap("Yes, it is over")
    assert talk.limits == ()
    assert talk.session.top.flow == "bird_dog"
    assert "says that a limit is over" in talk.alerts[0]


def test_not_being_sure_keeps_it_and_asks_again_in_a_week():
    talk = Limited("squat_look", DUE).tap("Not sure")
    assert [(limit.parts, limit.until) for limit in talk.limits] == [(DUE.parts, date(2026, 3, 9))]
    assert talk.reminds == ["2026-03-09"]
    assert talk.limits[0].said() == "no squats, asked about again on 9 March 2026, said by a doctor"
    assert talk.alerts == ["is not sure whether a limit is over on its date, so it stays: " + talk.limits[0].said()]
    assert limits_in(as_text(talk.limits)) == talk.limits
    assert "You were told to leave that out" in talk.heard


def test_still_on_wants_a_new_end():
    talk = Limited("limit_over", DUE, TOLD).tap("It is still on").say("3 weeks")
    assert [limit.until for limit in talk.limits] == [date(2026, 3, 23), TOLD.until]
    assert talk.alerts == ["says that a limit is still on after its date: no squats, until 23 March 2026, said by a doctor"]
    forever = Limited("limit_over", DUE).tap("It is still on", "Until they clear me")
    assert ([limit.until for limit in forever.limits], forever.reminds) == ([None], ["2026-03-30"])


def test_a_limit_that_stands_until_they_are_cleared_is_asked_about_every_four_weeks():
    told = Limited("limits").say("my surgeon said no lifting until he clears me", "yes")
    assert told.reminds[-1] == "2026-03-30"
    for answer in ("no", "not sure"):
        talk = Limited("limit_over", SURGEON)
        assert talk.last == ("You were told: no added load, until cleared, said by a surgeon. Has whoever set it cleared you since?")
        talk.say(answer)
        assert (talk.limits, talk.reminds, "I ask again in four weeks" in talk.heard) == ((SURGEON,), ["2026-03-30"], True)
    assert Limited("limit_over", SURGEON).say("yes", "my surgeon, today", "everything", "yes", "none").limits == ()
    assert "said by a doctor. Its date has come. Is it over?" in Limited("limit_over", SURGEON, DUE).last, "what is due comes first"


@pytest.mark.parametrize("words", ["it is over", "It is over", "over", "its over"])
def test_past_its_date_a_limit_may_be_told_to_be_over_among_ones_limits(words: str):
    talk = Limited("limits", DUE)
    assert "It is over" in [tap.label for row in talk.says[-1].buttons for tap in row]
    talk.say(words)
    assert talk.state == "limit_over.over"
    assert (talk.say("yes").limits, talk.state) == ((), "home.pick")
    assert "It is over" not in [tap.label for row in Limited("limits", TOLD).says[-1].buttons for tap in row]


def test_before_any_date_there_is_nothing_to_ask():
    assert "No limit of yours has come to its date" in Limited("limit_over", TOLD).heard


def test_a_second_limit_told_before_the_first_is_confirmed_closes_everything_until_both_are_told():
    talk = Limited("home").say("my physio said max 60 kg until 20 march", "my doctor says no squats till friday")
    assert talk.state == "limits.right"
    assert [limit.parts for limit in talk.limits] == [frozenset((LimitPart.OTHER,))]
    talk.say("stop", "squatting")
    assert talk.state != "squat_day.bar"
    talk.say("my limits", "yes")
    assert [(limit.kg, limit.by) for limit in talk.limits] == [(60.0, "a physiotherapist"), (None, "a doctor")]


def test_two_limits_told_one_after_the_other_keep_their_clinicians():
    first, second = "my doctor said no bending for 2 weeks", "and no hamstring stretching said the surgeon"
    talk = Limited("home").say(first, second)
    assert talk.state == "limits.until_2", "both are read, and only the missing end is asked for"
    talk.say("for 2 weeks", "yes")
    assert [(limit.parts, limit.by) for limit in talk.limits] == [(BENT.parts, "a doctor"), ({LimitPart.HAMSTRINGS}, "a surgeon")]


@pytest.mark.parametrize(("words", "asked"), [
    ("my doctor said no squats and my physio said no stretching for 2 weeks", "First what a doctor said: no squats. Until when?"),
    ("no squats, said my doctor, and no stretching for 2 weeks, said my physio", "First what a doctor said: no squats. Until when?"),
    ("my doctor said no squats until may but the physio no stretching", "Then what a physiotherapist said: no stretching at all. Until"),
    ("my doctor said no squats and my physio said no stretching", "First what a doctor said: no squats. Until when?")])
@pytest.mark.parametrize("flow", ["limits", "home"])
def test_two_clinicians_in_one_sentence_are_two_limits_and_only_what_is_missing_is_asked(words: str, asked: str, flow: str):
    talk = Limited(flow).say(words)
    talk.say(*["yes"] if talk.state == "signs.so" else [])
    assert talk.last.startswith(asked)
    talk.say("until may" if "First" in asked else "2 weeks")
    talk.say(*["2 weeks"] if talk.state == "limits.until_2" else [])
    assert talk.last == ("I understand: no squats, until 1 May 2026, said by a doctor; no stretching at all, until 16 March 2026, said by "
                         "a physiotherapist. Is that right?")
    stretches = frozenset((LimitPart.HIP, LimitPart.HAMSTRINGS, LimitPart.CALF))
    assert [(limit.parts, limit.until, limit.by) for limit in talk.say("yes").limits] == [
        (frozenset((LimitPart.SQUATS,)), date(2026, 5, 1), "a doctor"), (stretches, date(2026, 3, 16), "a physiotherapist")]


def test_of_three_clinicians_each_keeps_its_limit():
    talk = Limited("limits").say("surgeon says no lifting till may, physio says no bending for a week, and my gp no running", "until june")
    assert [(limit.by, limit.until) for limit in talk.say("yes").limits] == [
        ("a surgeon", date(2026, 5, 1)), ("a physiotherapist", date(2026, 3, 9)), ("a doctor", date(2026, 6, 1))]


@pytest.mark.parametrize("words", [
    "my doctor and my physio said no squats until may", "my doctor said no squats, my physio said squats are fine"])
def test_where_it_is_not_clear_which_of_two_clinicians_said_it_that_is_asked(words: str):
    talk = Limited("limits").say(words, *["until may"] if "until" not in words else [])
    assert talk.state == "limits.by"


@pytest.mark.parametrize("words", [
    "my surgeon said no lifting until my physio clears me", "no lifting, said my surgeon, until the physio says so"])
def test_who_is_to_clear_them_is_not_who_said_so(words: str):
    talk = Limited("limits").say(words, "yes")
    assert [(limit.by, limit.until) for limit in talk.limits] == [("a surgeon", None)]


# added to -----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("words", [
    "and no bending", "also no bending", "oh and no bending either", "no bending either", "she also said no bending"])
def test_what_is_added_before_a_limit_is_confirmed_is_read_back_and_kept(words: str):
    talk = Limited("limits").say("my physio said no squats for 2 weeks", words)
    assert talk.last == "I understand: no squats, no bending, until 16 March 2026, said by a physiotherapist. Is that right?"
    talk.say("and no running", "yes")
    assert [(limit.parts, limit.elsewhere, limit.words) for limit in talk.limits] == [
        (frozenset((LimitPart.SQUATS, LimitPart.BENDING, LimitPart.ELSEWHERE)), "running", "my physio said no squats for 2 weeks")]


def test_what_is_added_with_an_end_or_a_clinician_of_its_own_is_one_more_limit():
    talk = Limited("limits").say(
        "my physio said no squats for 2 weeks", "and no bending for 4 weeks", "also no running, said my doctor", "yes")
    assert [(sorted(limit.parts, key=str)[0], limit.until, limit.by) for limit in talk.limits] == [
        (LimitPart.SQUATS, date(2026, 3, 16), "a physiotherapist"), (LimitPart.BENDING, date(2026, 3, 30), "a physiotherapist"),
        (LimitPart.ELSEWHERE, date(2026, 3, 30), "a doctor")]


def test_what_is_added_to_a_limit_told_by_taps_is_kept_too():
    talk = Limited("limits").say("take it easy for a while").tap("No squats", "That is all", "For 2 weeks", "A doctor")
    assert [limit.parts for limit in talk.say("and no bending", "yes").limits] == [{LimitPart.SQUATS, LimitPart.BENDING}]


JUST_TOLD = {"safety.limits.today": "yes"}


@pytest.mark.parametrize(("words", "part"), [
    ("also no stretching", LimitPart.HIP), ("and no running either", LimitPart.ELSEWHERE), ("oh and no bending either", LimitPart.BENDING),
    ("he also said no bending", LimitPart.BENDING), ("no bending as well", LimitPart.BENDING)])
def test_what_is_added_to_a_limit_after_it_was_noted_is_asked_about_and_kept_as_one_more(words: str, part: LimitPart):
    talk = Limited("home", NO_SQUATS, **JUST_TOLD).say(words)
    assert (talk.state, "Did a physiotherapist say that too, until 20 March 2026?" in talk.last) == ("limits.same", True)
    talk.say("yes", "yes")
    assert (talk.limits[0], part in talk.limits[1].parts) == (NO_SQUATS, True)
    assert (talk.limits[1].until, talk.limits[1].by) == (NO_SQUATS.until, NO_SQUATS.by)


def test_what_somebody_else_added_is_asked_about_in_full_and_ones_own_plan_is_no_limit():
    talk = Limited("home", NO_SQUATS, **JUST_TOLD).say("also no bending", "somebody else", "2 weeks").tap("A doctor", "Yes, that is right")
    assert [(limit.until, limit.by) for limit in talk.limits[1:]] == [(date(2026, 3, 16), "a doctor")]
    none = Limited("home", NO_SQUATS, **JUST_TOLD).say("also no bending").tap("Nobody told me that")
    assert (none.limits, none.alerts, none.reminds[-1]) == ((NO_SQUATS,), [], "2026-03-20")


@pytest.mark.parametrize(("stands", "known"), [((), JUST_TOLD), ((NO_SQUATS,), {})])
def test_nothing_is_added_where_no_limit_was_told_today(stands: tuple[Limit, ...], known: dict[str, str]):
    assert Limited("home", *stands, **known).say("also no bending").limits == stands


# signed off ---------------------------------------------------------------------------------------------------


def test_signed_off_may_be_a_limit_or_a_clearance_and_is_asked():
    talk = Limited("home").say("doctor signed me off for two weeks")
    assert [tap.label for row in talk.says[-1].buttons for tap in row][:2] == ["Off work or training", "I may train again"]
    talk.tap("Off work or training", "No training at all", "Yes, that is right")
    assert [(limit.parts, limit.until, limit.by) for limit in talk.limits] == [
        (frozenset((LimitPart.TRAINING,)), date(2026, 3, 16), "a doctor")]
    cleared = Limited("home", NO_SQUATS).say("i got signed off by my physio").tap("I may train again")
    assert (cleared.state, cleared.limits) == ("clearance.cleared_at", (NO_SQUATS,))
    neither = Limited("home", NO_SQUATS).say("i was signed off for a bit").tap("Neither")
    assert (neither.limits, neither.reminds[-1], neither.state) == ((NO_SQUATS,), "2026-03-20", "home.pick")


def test_the_same_limit_said_twice_is_one():
    talk = Limited("home").say("my physio said no squats until 20 march", "my physio said no squats until 20 march!", "yes")
    assert [limit.words for limit in talk.limits] == ["my physio said no squats until 20 march"]


BENT = Limit(frozenset((LimitPart.BENDING,)), None, date(2026, 3, 16), "a doctor", "no bending")


@pytest.mark.parametrize("begun", [("find out why my back rounds",), ("screen",), ("screen", "screen")])
def test_a_screen_whose_squat_a_limit_closes_names_the_limit_and_its_date_and_not_itself(begun: tuple[str, ...]):
    talk = Limited("home", BENT).say(*begun)
    assert "You were told: no bending, until 16 March 2026, said by a doctor. That closes tests I need to go on." in talk.heard
    assert talk.found["screen.state"] == "shut"
    assert not any(words in talk.heard for words in ("nothing that is left could change", "“screen” begins"))


def test_a_limit_that_closes_no_test_worth_doing_leaves_it_decided():
    calf = Limit(frozenset((LimitPart.ELSEWHERE,)), None, None, "a doctor", "no running", "running")
    talk = Limited("next_test", calf, **{"screen.open": ""})
    assert (talk.found["screen.state"], "That is enough" in talk.heard) == ("decided", True)
    knee = Limited("next_test", Limit(frozenset((LimitPart.CALF,)), None, None, "a doctor", "no calf stretching"),
                   **{"screen.open": "", "done_squat_look": "yes"})
    assert "You were told" not in knee.heard


@pytest.mark.parametrize(("words", "until"), [
    ("until 30 march", "30 March 2026"), ("no, till monday", "9 March 2026"), ("another 2 weeks", "16 March 2026")])
def test_until_when_it_is_still_on_may_answer_whether_it_is_over(words: str, until: str):
    talk = Limited("limit_over", DUE).say(words)
    if talk.state == "limits.right":
        talk.say("yes")
    assert [f"{limit.until.day} {limit.until:%B %Y}" for limit in talk.limits if limit.until] == [until]
    assert f"no squats, until {until}, said by a doctor" in talk.heard
    assert talk.reminds[-1] == talk.limits[0].until.isoformat()


@pytest.mark.parametrize("words", ["yes it doesnt hurt anymore", "Yes, it doesn't hurt any more", "yes doesn't hurt now"])
def test_a_yes_that_says_that_nothing_hurts_any_more_is_a_yes(words: str):
    talk = Limited("limit_over", DUE).say(words)
    assert (talk.limits, talk.state) == ((), "home.pick")
    assert "Did something hurt?" not in talk.heard
    assert Limited("limit_over", DUE).say("it still hurts").limits == (DUE,)


@pytest.mark.parametrize("words", ["no lifting until 1 march, doctor", "no lifting until 27 february, doctor"])
def test_a_date_just_past_is_asked_about_and_not_taken_for_next_years(words: str):
    talk = Limited("limits").say(words)
    assert "has been. Is the limit over, or did you mean another day?" in talk.last
    assert "2027" not in talk.heard
    assert talk.limits[0].parts == frozenset((LimitPart.OTHER,)), "meanwhile it closes what it may close"
    over = Limited("limits").say(words, "It is over")
    assert (over.limits, "no limit, then" in over.heard) == ((), True)
    assert Limited("limits", KILOS).tap("There is a new one").say(words, "it is over").limits == (KILOS,)
    talk.say("another day", "1 march")
    assert "I need a day to come" in talk.last
    assert [limit.until for limit in talk.say("8 march", "yes").limits] == [date(2026, 3, 8)]


def test_more_than_one_thing_is_not_over_with_one_date_just_past():
    for words in ("no squats until 1 march and no bending until june, doctor", "no squats and no bending until 1 march, doctor"):
        assert "has been. Is the limit over" not in Limited("limits").say(words).heard


# cleared ----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("words", "asked", "who_and_when"), [
    ("my physio cleared me for lifting", "And when did they clear you?", "my physio cleared me for lifting, yesterday"),
    ("i've been cleared to lift", "Good to hear. Who cleared you, and when?", "my physio, yesterday"),
    ("the doctor has cleared me for weights", "And when did they clear you?", "the doctor has cleared me for weights, yesterday"),
    ("the hospital has cleared me for lifting", "And when did they clear you?", "the hospital has cleared me for lifting, yesterday"),
    ("i was cleared for lifting yesterday", "Good to hear. Who cleared you?", "i was cleared for lifting yesterday, my physio")])
@pytest.mark.parametrize("begun", ["home", "safety_check"])
def test_a_clearance_asks_who_and_when_as_far_as_its_sentence_does_not_say_and_takes_away_its_part(
        words: str, asked: str, who_and_when: str, begun: str):
    talk = Limited(begun, TOLD, **{"safety.body_first": "yes"}).say(words)
    assert talk.last.startswith(asked)
    talk.say("yesterday" if "when did" in asked else "my physio, yesterday" if "when" in asked else "my physio")
    assert talk.last.startswith("You were told this: no added load, no hamstring stretching, until 23 March")
    talk.say("yes")
    assert (talk.state == "clearance.agreed") is ("physio" not in who_and_when), "asked where another clinician than the physio cleared"
    talk.say(*["yes"] if talk.state == "clearance.agreed" else [], "yes")
    assert [limit.parts for limit in talk.limits] == [frozenset((LimitPart.HAMSTRINGS,))]
    assert (talk.found["safety.body_first"], talk.found["safety.cleared_until"]) == ("no", "2026-09-01")
    assert talk.alerts == [f"was cleared for lifting weights. By whom and when: {who_and_when}"]


@pytest.mark.parametrize("words", [
    "dr okafor cleared me on friday", "the hospital cleared me yesterday", "my physio said im good to train again last tuesday",
    "i got the all clear from my doctor on monday", "cleared by my physio on monday", "my gp gave me the all clear this morning"])
def test_a_clearance_told_in_one_sentence_is_only_said_back(words: str):
    talk = Limited("home", **{"safety.level": "clinician"}).say(words)
    if "this morning" not in words:
        assert talk.last == "Did they clear you after what you told me, so that they knew of it?"
        talk.say("yes")
    assert talk.last == f"I understand: cleared for everything. By whom and when: {words}. Is that right?"
    talk.say("yes", "none")
    assert talk.alerts == [f"was cleared for everything. By whom and when: {words}"]
    assert "safety.level" not in talk.found, "only a safety check opens the rest"


@pytest.mark.parametrize(("words", "state"), [
    ("i got the all clear", "clearance.cleared_at"), ("i've been cleared", "clearance.cleared_at"),
    ("they cleared me", "clearance.cleared_at"), ("i was cleared yesterday", "clearance.cleared_at"),
    ("my doctor says i can squat again", "clearance.cleared_when"), ("my coach cleared me", "clearance.clinician"),
    ("my coach cleared me yesterday", "clearance.clinician"), ("my mate the physio cleared me on friday", "clearance.clinician")])
def test_of_a_clearance_only_what_its_sentence_does_not_say_for_certain_is_asked(words: str, state: str):
    assert Limited("home", TOLD).say(words).state == state


@pytest.mark.parametrize(("words", "asked"), [
    ("my physio", "clearance.cleared_when"), ("my physio on monday", "clearance.after"), ("my physio, tomorrow", "home.pick"),
    ("no, my physio hasn't", "clearance.clinician")])
def test_who_it_was_may_be_said_once_a_bare_yes_was_asked_about(words: str, asked: str):
    talk = Limited("home", TOLD).say("cleared", "yes")
    assert "You wrote “yes”. Was it a doctor" in talk.last
    assert talk.say(words).state.startswith(asked)


def test_a_clinician_named_late_is_told_to_the_coach():
    talk = Limited("home", TOLD).say("cleared", "yes", "my physio on monday", "yes", "everything", "yes")
    assert talk.alerts == ["was cleared for everything. By whom and when: yes, my physio on monday"]


def test_the_menu_s_name_is_nobody_s():
    talk = Limited("home", TOLD).say("cleared", "menu")
    assert talk.state == "home.pick"
    assert talk.say("go on").state == "clearance.cleared_at"


def test_a_coach_s_word_in_one_sentence_clears_nothing():
    talk = Limited("home", TOLD).say("my coach cleared me yesterday", "no")
    assert (talk.limits, talk.alerts, "safety.cleared_until" in talk.found) == ((TOLD,), [], False)
    assert "Only a doctor, or somebody else who treats you, can clear you" in talk.heard


@pytest.mark.parametrize("words", [
    "my doctor cleared me tomorrow", "my physio cleared me to start next week", "dr okafor cleared me from monday"])
def test_a_clearance_to_come_in_one_sentence_clears_nothing(words: str):
    talk = Limited("home", TOLD).say(words)
    assert (talk.limits, talk.alerts, "safety.cleared_until" in talk.found) == ((TOLD,), [], False)
    assert "A clearance counts once it is given" in talk.heard


@pytest.mark.parametrize("words", [
    "my physio hasn't cleared me", "nobody cleared me", "has my physio cleared me?", "dr okafor will clear me on friday"])
def test_what_is_no_clearance_begins_none(words: str):
    talk = Limited("home", TOLD).say(words)
    assert all(frame.flow != "clearance" for frame in talk.session.stack)
    assert talk.limits == (TOLD,)


def test_pain_beside_a_clearance_is_heard_first():
    assert Limited("home", TOLD).say("the hospital cleared me yesterday but my back hurts").state == "pain.where"


def test_cleared_asks_for_what_and_for_new_limits():
    talk = Limited("home", replace(TOLD, by="a doctor"), KILOS).say("cleared", "my doctor, today", "everything", "yes")
    assert talk.limits == ()
    assert talk.found["load.told"] == ""
    talk.say("nothing over 40 kg until they clear me, said my doctor", "yes")
    assert [limit.kg for limit in talk.limits] == [40.0]


def test_a_clearance_that_is_not_confirmed_changes_nothing():
    talk = Limited("home", TOLD).say("cleared", "my doctor, today", "everything", "no")
    assert talk.limits == (TOLD,)
    assert "safety.cleared_until" not in talk.found


@pytest.mark.parametrize("who", [
    "my chiropractor cleared me today", "the hospital cleared me today", "my physio gave me the all clear today",
    "another surgeon cleared me today", "dr okafor cleared me today"])
@pytest.mark.parametrize("answer", ["no", "not sure"])
def test_what_one_clinician_set_is_not_ended_by_another_who_may_not_have_known_of_it(who: str, answer: str):
    talk = Limited("home", SURGEON, **{"safety.body_first": "yes"}).say(who, "everything")
    assert talk.last == ("Somebody else may have set this: no added load, until cleared, said by a surgeon. Did whoever cleared you "
                         "know of it, or does the one who set it agree?")
    talk.say(answer)
    assert (talk.limits, talk.alerts, talk.state) == ((SURGEON,), [], "home.pick")
    assert "Then this stays: no added load, until cleared, said by a surgeon." in talk.heard
    assert not {"safety.body_first", "safety.cleared_until"} & talk.found.keys()


def test_what_one_clinician_set_is_ended_by_another_who_knew_of_it():
    talk = Limited("home", SURGEON).say("my chiropractor cleared me today", "everything", "yes", "yes", "none")
    assert (talk.limits, talk.found["safety.cleared_until"]) == ((), "2026-09-01")


def test_whoever_set_a_limit_ends_it_unasked():
    talk = Limited("home", SURGEON).say("my surgeon cleared me today", "everything")
    assert talk.state == "clearance.right"
    assert Limited("home", replace(SURGEON, by="")).say("my physio cleared me today", "everything").state == "clearance.right"


def test_of_two_limits_only_the_one_ends_that_whoever_cleared_them_set():
    talk = Limited("home", SURGEON, TOLD).say("my physio cleared me today", "everything", "no")
    assert talk.last == ("I understand: cleared for everything, though not of what stays: no added load, until cleared, said by a "
                         "surgeon. By whom and when: my physio cleared me today. Is that right?")
    talk.say("yes", "none")
    assert (talk.limits, "safety.cleared_until" in talk.found) == ((SURGEON,), False)
    assert "What still stands: no added load" in talk.heard
    other = Limited("home", SURGEON, replace(TOLD, parts=frozenset((LimitPart.HAMSTRINGS,)))).say(
        "my physio cleared me for stretching today")
    assert other.state == "clearance.right", "of the surgeon's nothing is cleared"


def test_another_clinician_s_word_brings_no_end_forward():
    talk = Limited("home", SURGEON).say("my physio said no lifting for a week", "yes", "yes")
    assert [(limit.by, limit.until) for limit in talk.limits] == [("a surgeon", None), ("a physiotherapist", date(2026, 3, 9))]
    assert "sooner" not in talk.heard
    assert Limited("home", SURGEON).say("my physio said 2 weeks actually").limits[0] == SURGEON


def test_a_limit_told_while_a_clearance_waited_is_none_of_what_was_cleared():
    talk = Limited("home", TOLD).say("cleared", "my physio, today", "stop", "my surgeon said no squats until they clear me", "yes", "yes")
    talk.say("cleared", "yes", "everything", "yes", "none")
    assert [limit.parts for limit in talk.limits] == [frozenset((LimitPart.SQUATS,))]
    assert "What still stands: no squats" in talk.heard


@pytest.mark.parametrize(("who", "says"), [("my mate, yesterday", "no"), ("me, today", "no"), ("google", "not sure")])
def test_a_word_of_a_friend_or_ones_own_ends_no_limit(who: str, says: str):
    talk = Limited("home", TOLD).say("cleared", who)
    assert talk.state == "clearance.clinician"
    talk.say(says)
    assert (talk.limits, talk.alerts, "safety.cleared_until" in talk.found) == ((TOLD,), [], False)
    assert "so nothing changes for now" in talk.heard


def test_a_person_named_may_be_a_clinician_and_a_clearance_says_when():
    talk = Limited("home", TOLD).say("cleared", "Sarah", "yes")
    assert talk.state == "clearance.cleared_when"
    talk.say("last week", "yes", "everything", "yes")
    assert "By whom and when: Sarah, last week" in talk.last
    assert talk.say("yes").limits == ()
    assert Limited("home", TOLD).say("cleared", "my fisio on monday").state == "clearance.after"


@pytest.mark.parametrize("words", [
    ("my physio cleared me last year",), ("cleared", "dr smith in january"), ("cleared", "physio on 1 february"),
    ("my physio cleared me yesterday",), ("my physio cleared me for lifting", "in 2024")])
@pytest.mark.parametrize("after", ["no", "not sure"])
def test_a_clearance_older_than_what_stands_or_that_may_be_lifts_nothing(words: tuple[str, ...], after: str):
    talk = Limited("home", TOLD).say(*words)
    assert talk.state == "clearance.after"
    talk.say(after)
    assert (talk.limits, talk.alerts, "safety.cleared_until" in talk.found) == ((TOLD,), [], False)
    assert "does not count for what stands now" in talk.heard
    sent = Limited("home", **{"safety.level": "clinician"}).say("my physio cleared me last year", after)
    assert (sent.alerts, "safety.cleared_until" in sent.found, "safety.body_first" in sent.found) == ([], False, False)


@pytest.mark.parametrize(("when", "known", "asked"), [
    ("today", {}, False), ("just now", {}, False), ("today", {"safety.limits.today": "yes"}, True),
    ("today", {"safety.level.today": "yes"}, True), ("today last year", {}, True)])
def test_whether_a_clearance_is_newer_is_asked_unless_it_is_of_today_and_what_stands_is_not(when: str, known: dict[str, str], asked: bool):
    talk = Limited("home", TOLD, **known).say("cleared", f"my physio, {when}")
    assert (talk.state == "clearance.after") is asked


def test_in_pregnancy_a_clearance_leaves_body_weight():
    talk = Limited("home", TOLD, **{"safety.pregnant": "yes", "safety.body_first": "yes"})
    talk.say("cleared", "my midwife, today", "everything", "yes")
    assert "safety.body_first" not in talk.found


def test_a_clearance_opens_no_level_by_itself():
    talk = Limited("home", **{"safety.level": "clinician"}).say("my physio cleared me", "today", "yes", "none")
    assert "safety.level" not in talk.found
    assert "say “safety check”" in talk.heard


def test_without_anything_that_waits_there_is_nothing_to_clear():
    assert "Nothing here waits for a clearance" in Limited("home").say("cleared").heard


def test_the_old_disc_asks_for_a_clearance_in_what_was_written_too():
    talk = Talk(BOOK["home"].flow, UNCHECKED, BOOK).say("i had a slipped disc in 2019", "yes", "yes")
    assert talk.state == "signs.cleared"
    assert "safety.body_first" not in talk.say("yes", "my physio, in May", "yes", "none").found




@pytest.mark.parametrize("when", [("Dr Okafor", "tomorrow"), ("the surgeon, next week",), ("my physio", "none")])
def test_a_clearance_to_come_or_without_a_day_ends_no_limit(when: tuple[str, ...]):
    talk = Limited("home", TOLD).say("cleared", *when)
    assert (talk.limits, talk.alerts) == ((TOLD,), [])
    assert "counts once it is given" in talk.heard


@pytest.mark.parametrize(("said", "part"), [
    ("nothing over 40 kg", "kg"), ("no lifting over 40kg", "kg"), ("no, 40 kg", "kg"),
    ("its 40kg till monday not 60", "kg"), ("no squats", "squats"), ("no hamstring stretching", "stretching"),
    ("nothing", "none")])
def test_what_to_leave_out_is_read_in_a_sentence_too_where_it_is_asked_for(said: str, part: str):
    talk = Talk(BOOK["limits"].flow, CHECKED, BOOK).say("my doctor said take it easy")
    assert talk.state == "limits.what"
    assert talk.say(said).answers["what"] == part


def test_a_weight_said_with_it_is_offered_at_its_question():
    talk = Talk(BOOK["limits"].flow, CHECKED, BOOK).say("my doctor said take it easy", "nothing over 40 kg", "that is all")
    assert talk.state == "limits.kg"
    assert "40 kg, as I wrote" in [tap.label for row in talk.says[-1].buttons for tap in row]


# told beside the question that is open -----------------------------------------------------------------------


@pytest.mark.parametrize("said", ["its 3 weeks", "no for 3 weeks", "no its 3 weeks", "physio said 3 weeks actually", "no, till 23 march"])
@pytest.mark.parametrize("begun", ["home", "limits"])
def test_until_when_said_before_it_is_asked_is_kept_for_it(begun: str, said: str):
    """Also where the limit was heard at the menu, and is asked about over what was heard."""
    first = Limited(begun).say("my doctor said take it easy for a bit", *(["yes"] if begun == "home" else []))
    assert first.state == "limits.what"
    for talk, taps in ((Limited(begun), ()), (Limited(begun), ("No bending",))):
        talk.say("my doctor said take it easy for a bit", *(["yes"] if begun == "home" else [])).tap(*taps).say(said)
        assert talk.last.startswith("Noted. First this one.")
        assert talk.state == ("limits.also" if taps else "limits.what")
        talk.tap(*(() if taps else ("No bending",)), "That is all")
        assert talk.last == "I understand: no bending, until 23 March 2026, said by a doctor. Is that right?"
        assert [limit.until for limit in talk.say("yes").limits] == [date(2026, 3, 23)]


@pytest.mark.parametrize(("said", "read"), [
    ("no squats either", "no squats, no bending"), ("no lifting either", "no added load, no bending"),
    ("no, he also said no squats", "no squats, no bending"), ("and no running", "no bending, no running"),
    ("no squats or lifting either", "no added load, no squats, no bending"), ("no running", "no bending, no running"),
    ("my doctor said no squats and no lifting", "no added load, no squats, no bending")])
def test_what_else_is_told_in_words_after_a_tap_is_kept(said: str, read: str):
    talk = Limited("home").say("my doctor said take it easy for two weeks", "yes").tap("No bending").say(said)
    assert talk.last.startswith("Noted.")
    talk.tap("That is all")
    assert talk.last == f"I understand: {read}, until 16 March 2026, said by a doctor. Is that right?"


def test_what_else_is_told_with_an_end_of_its_own_stands_till_then():
    talk = Limited("home").say("my doctor said take it easy for two weeks", "yes").tap("No bending").say("no lifting for 3 weeks", "no")
    assert talk.last == ("I understand: no bending, until 16 March 2026, said by a doctor; no added load, until 23 March 2026, said by a "
                         "doctor. Is that right?")


def test_a_button_in_words_is_tapped_and_not_added_to_what_was_told():
    talk = Limited("limits").say("my doctor said take it easy for two weeks").tap("No bending").say("no squats")
    assert talk.answers["also"] == "squats"
    assert talk.state == "limits.also_2"


def test_an_end_said_where_the_one_told_has_been_is_kept_for_the_other_day():
    talk = Limited("home").say("my doctor said no squats until 1 march", "yes", "no its till 20 march").tap("Another day")
    assert talk.last == "I understand: no squats, until 20 March 2026, said by a doctor. Is that right?"


# its date has come, and it is not confirmed yet ---------------------------------------------------------------


def test_a_limit_confirmed_after_its_date_is_asked_about_at_once():
    talk = Limited("home").say("no lifting till the 20th said the surgeon", "yes")
    talk.known["today"] = "2026-03-20"
    talk.say("yes")
    assert "On its date" not in talk.heard
    assert talk.state == "limit_over.over"
    assert talk.last.startswith("You were told: no added load, until 20 March 2026, said by a surgeon. Its date has come.")
    assert talk.say("yes").limits == ()


def test_a_limit_confirmed_before_its_date_is_not_asked_about_yet():
    talk = Limited("home").say("no lifting till the 20th said the surgeon", "yes")
    talk.known["today"] = "2026-03-19"
    assert "On its date I ask" in talk.say("yes").heard
    assert talk.state == "home.pick"


@pytest.mark.parametrize("wish", ["squatting today", "find out why my back rounds", "test again", "leg raise"])
@pytest.mark.parametrize("stopped", ["limits.right", "limits.what"])
def test_what_is_still_asked_of_a_limit_comes_before_anything_that_moves(wish: str, stopped: str):
    """The safety check too: what it would open is closed until that is answered."""
    words = "no weights for 2 weeks said my doctor" if stopped == "limits.right" else "my doctor said take it easy"
    talk = Limited("home").say(words, "yes", "stop")
    talk.known.pop("safety.checked.today")
    assert talk.say("menu", wish).state == stopped
    assert not talk.say("stop").state.startswith("safety_check")


def test_once_it_is_answered_what_was_wished_goes_on():
    talk = Limited("home").say("no bending for 2 weeks said my doctor", "yes", "stop", "knee to wall")
    assert talk.state == "limits.right"
    assert talk.say("yes").session.top.flow == "knee_to_wall"


# asked about, lengthened and ended in other words --------------------------------------------------------------


@pytest.mark.parametrize("asked", [
    "when is my limit over", "When is my limit over?", "until when does my limit last?", "how long is my limit", "when can i lift again?",
    "how long until i can squat", "when does my restriction end", "is my limit over yet?", "how many weeks left on my limit?"])
def test_until_when_a_limit_holds_is_told_where_it_is_asked(asked: str):
    talk = Limited("home", replace(SURGEON, until=date(2026, 3, 23))).say(asked)
    assert talk.last.startswith("What stands: no added load, until 23 March 2026, said by a surgeon.")
    assert talk.say("leave it").limits == (replace(SURGEON, until=date(2026, 3, 23)),)


def test_where_no_limit_stands_nobody_who_asks_when_it_ends_is_asked_to_tell_one():
    assert Limited("home").say("when can i lift again?").session.top.flow == "home"


@pytest.mark.parametrize("said", ["no he wants another week", "another week he said", "she wants another week", "no its another week"])
@pytest.mark.parametrize("begun", ["home", "limits"])
def test_a_limit_whose_date_has_come_is_lengthened_before_it_is_asked_about(begun: str, said: str):
    talk = Limited(begun, DUE).say(said)
    assert talk.state == "limits.right"
    assert [limit.until for limit in talk.say("yes").limits] == [date(2026, 3, 9)]


@pytest.mark.parametrize("said", ["not really, another week", "no, another week", "not quite, she wants another week", "another week",
                                  "nope he said another week"])
def test_another_week_is_still_on_till_then(said: str):
    talk = Limited("limit_over", DUE).say(said)
    assert [limit.until for limit in talk.limits] == [date(2026, 3, 9)]


def test_a_check_up_that_raised_the_weight_leads_to_the_questions_of_a_clearance():
    talk = Limited("home", replace(KILOS, kg=40.0)).say("checkup done, 60 is ok now", "my doctor, today", "yes")
    assert "I understand: cleared for lifting weights." in talk.heard
    assert talk.state == "limits.until"
    talk.say("until they clear me", "a doctor")
    assert talk.last.startswith("I understand: nothing above 60 kg, until cleared, said by a doctor.")


@pytest.mark.parametrize("said", ["checkup done", "my check-up went fine", "scan is done, all good", "the review was ok"])
def test_after_a_check_up_it_is_asked_whether_they_were_cleared(said: str):
    talk = Limited("home", SURGEON).say(said)
    assert talk.state == "limit_over.cleared"
    assert talk.say("no").limits == (SURGEON,)
    assert Limited("home").say(said).session.top.flow == "home"
    assert Limited("home", replace(SURGEON, until=date(2026, 3, 23))).say(said).session.top.flow == "home"


@pytest.mark.parametrize("said", ["he said i can do what i want now", "my doctor said i can do everything again",
                                  "she said i'm free to do anything"])
@pytest.mark.parametrize("begun", ["home", "limits"])
def test_that_they_may_do_all_again_leads_to_the_questions_of_a_clearance(begun: str, said: str):
    assert Limited(begun, SURGEON).say(said).session.top.flow == "clearance"


def test_that_they_may_do_all_but_one_thing_is_no_clearance_of_all():
    assert Limited("home", SURGEON).say("he said i can do everything but squats").session.top.flow != "clearance"


# told by somebody who was sent to be seen -----------------------------------------------------------------------


def test_a_limit_told_by_whoever_was_sent_to_be_seen_is_taken_whole_and_they_are_not_sent_as_if_it_were_news():
    talk = Limited("home", safety__level="clinician").say("physio said keep training but no deep squats for 3 weeks", "yes")
    assert talk.last == "I understand: no squats, until 23 March 2026, said by a physiotherapist. Is that right?"
    assert "Please see a doctor or physiotherapist within a week" not in talk.heard
    talk.say("yes")
    assert "that stands until one has seen you for it" in talk.heard
    assert talk.known["safety.level"] == "clinician"
    assert talk.tap("I was seen for it").session.top.flow == "referral"


def test_who_was_not_sent_is_not_asked_whether_they_were_seen():
    talk = Limited("home").say("physio said keep training but no deep squats for 3 weeks", "yes", "yes")
    assert "has seen you for it" not in talk.heard
