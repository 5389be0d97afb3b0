"""What the questions about a clinician's limit come to, answer by answer, by hand."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime
from importlib import import_module
from typing import Any

from companion.conversation.flow import Known
from companion.conversation.moves import SIGN_MOST
from companion.screening.limits import Limit, LimitPart, as_text, limits_in
from flows.clearance_facts import clearance_facts, sets_limit
from flows.limit_facts import UNSAID, limit_facts, show_in
from flows.limit_over_facts import over_facts, waits_for_clearance
from flows.limit_right_facts import may_put_right
from tests.drive import NOW
from tests.table import each_row

TODAY = {"today": "2026-03-02", "on": "2026-03-02"}
L, S, B, T, E, ANY = (LimitPart.LOAD, LimitPart.SQUATS, LimitPart.BENDING, LimitPart.TRAINING, LimitPart.ELSEWHERE, LimitPart.OTHER)
STRETCHES = (LimitPart.HIP, LimitPart.HAMSTRINGS, LimitPart.CALF)
FACTS = {name: value for file in ("limit", "limit_right", "limit_then", "limit_over", "clearance")
         for name, value in vars(import_module(f"flows.{file}_facts")).items()}


def limit(*parts: LimitPart, kg: float | None = None, until: str = "", by: str = "", words: str = "", elsewhere: str = "",
          asked: bool = False) -> Limit:
    return Limit(frozenset(parts), kg, date.fromisoformat(until) if until else None, by, words, elsewhere, asked)


def of(name: str, got: dict[str, Any]) -> Any:
    return FACTS[name]({**TODAY, **got}, "")


def left(name: str, got: dict[str, Any]) -> tuple[Limit, ...]:
    return limits_in(of(name, got))


def known(asked: str = "", **facts: Any) -> Known:
    return Known({"today": "2026-03-02", **{name.replace("__", "."): value for name, value in facts.items()}},
                 datetime(2026, 3, 2, 18, tzinfo=NOW.tzinfo), asked=asked)


# told -------------------------------------------------------------------------------------------------------


def test_a_telling_begins_with_its_words_the_day_and_the_units():
    day = {"on": "2026-03-02", "units": "metric"}
    assert limit_facts(known(" no squats ")) == {**day, "given": "no squats"}
    assert limit_facts(known("", welcome__units="imperial")) == {**day, "units": "imperial"}
    cut = "x" * SIGN_MOST
    assert limit_facts(known(cut)) == {**day, "cut": cut}
    assert limit_facts(known(cut[1:])) == {**day, "given": cut[1:]}


ADDS = {"units": "metric", "on": "2026-03-02", "given": "no bending", "says": "adds"}


@each_row(("stands", "today", "begins"), [
    ((limit(L, until="2026-03-20", by="a doctor"),), "yes", {**ADDS, "last_by": "a doctor", "last_until": "2026-03-20"}),
    ((limit(L, by="a doctor"), limit(S)), "yes", {**ADDS, "last_by": "", "last_until": "cleared"}),
    ((limit(L, by="a doctor"), limit(ANY)), "yes", {**ADDS, "last_by": "a doctor", "last_until": "cleared"}),
    ((limit(ANY),), "yes", {"given": "also no bending"}), ((), "yes", {"given": "also no bending"}),
    ((limit(L),), "", {"given": "also no bending"})])
def test_what_is_added_is_added_to_what_was_told_last_today(stands: tuple[Limit, ...], today: str, begins: dict[str, str]):
    facts: dict[str, Any] = {"safety.limits": as_text(stands)} | ({"safety.limits.today": today} if today else {})
    got = limit_facts(Known({"today": "2026-03-02", **facts}, known().now, asked="also no bending"))
    assert got == {"units": "metric", "on": "2026-03-02", **begins}


@each_row(("words", "read", "end", "who"), [
    ("no squats until friday 20 march, my physio said", "all", "yes", "yes"), ("no squats", "all", "no", "no"),
    ("none", "none", "no", "no"), ("blah", "part", "no", "no"), ("my doctor said blah", "part", "no", "yes")])
def test_what_the_words_say_is_not_asked_again(words: str, read: str, end: str, who: str):
    got = {"words": words, "given": "no bending"}
    assert (of("how_read", got), of("end_read", got), of("who_read", got)) == (read, end, who)
    assert of("how_read", {"given": words}) == read


def test_words_that_only_put_an_end_right_are_of_the_limit_told_last_if_one_stands():
    standing = {"safety.limits": as_text((limit(B, until="2026-03-20"), limit(S, until="2026-03-30"), limit(ANY, words="blah")))}
    assert (of("right_read", {"given": "no, till friday"}), of("before_right", {"given": "no, till friday"})) == (None, None)
    got = {**standing, "given": "no, till friday"}
    assert (of("right_read", got), of("before_right", got)) == ("end", "until 30 March 2026")
    assert left("limits_then", got) == (limit(B, until="2026-03-20"), limit(S, until="2026-03-06"), limit(ANY, words="blah"))
    assert of("sooner", got) == " That is sooner than what stands: until 30 March 2026."
    assert left("limits_then", {**got, "until": "cleared"})[1] == limit(S)
    assert of("sooner", {**got, "until": "cleared"}) == of("sooner", {"given": "no squats till friday"}) == ""


@each_row(("got", "told"), [
    ({"given": "no squats until friday 20 march, my physio said"}, limit(S, until="2026-03-20", by="a physiotherapist")),
    ({"given": "nothing over 60 kg"}, limit(kg=60.0)), ({"given": "nothing over 100"}, limit(kg=100.0)),
    ({"given": "nothing over 100", "units": "imperial"}, limit(kg=45.36)), ({"given": "blah"}, limit(ANY)),
    ({"given": "a slipped disc, no bending"}, limit(B)), ({"given": "no jumping"}, limit(E, elsewhere="jumping")),
    ({"given": "no jumping", "what": "squats"}, limit(S)), ({"what": "squats"}, limit(S)),
    ({"what": "squats", "also": "bending", "also_2": "kg", "kg": 60.0}, limit(S, B, kg=60.0)),
    ({"what": "kg", "kg": 60.0}, limit(kg=60.0)), ({"what": "squats", "kg": 60.0}, limit(S)), ({"what": "kg"}, limit()),
    ({"given": "nothing over 60 kg", "what": "squats"}, limit(S)),
    ({"what": "stretching"}, limit(*STRETCHES)), ({"what": "stretching", "which": "all"}, limit(*STRETCHES)),
    ({"what": "stretching", "which": "stretch_calf"}, limit(LimitPart.CALF)), ({"what": "squats", "which": "stretch_calf"}, limit(S)),
    ({"what": "squats", "also": "stretching", "which": "stretch_hip"}, limit(S, LimitPart.HIP)),
    ({"what": "training", "also": "squats"}, limit(T)), ({"what": "other", "also": "squats"}, limit(ANY)),
    ({"what": "squats", "also": "none", "also_2": "bending"}, limit(S)),
    ({"what": "squats", "also": "enough", "also_2": "bending"}, limit(S)),
    ({"what": "squats", "also_2": "bending"}, limit(S)), ({"what": "load", "also": "squats", "also_2": "other"}, limit(L, S, ANY)),
    ({"what": "squats", "until": "2026-04-01", "by": "doctor"}, limit(S, until="2026-04-01", by="a doctor")),
    ({"what": "squats", "until": "cleared", "by": "surgeon"}, limit(S, by="a surgeon")),
    ({"what": "squats", "by": "physio"}, limit(S, by="a physiotherapist")),
    ({"what": "squats", "by": "other"}, limit(S, by="somebody else")),
    ({"given": "no squats until 20 march", "until": "cleared"}, limit(S)),
    ({"given": "no squats until 20 march, my physio said", "until": "2026-04-01", "by": "other"},
     limit(S, until="2026-04-01", by="somebody else"))])
def test_a_limit_is_what_was_tapped_or_else_what_was_read(got: dict[str, Any], told: Limit):
    words = str(got.get("given", ""))
    whole = Limit(told.parts, told.kg, told.until, told.by, words, told.elsewhere)
    assert left("limits_then", got) == (whole,)
    assert of("understood", got) == whole.said()


def test_a_limit_is_said_in_the_lifters_units():
    assert of("understood", {"what": "kg", "kg": 60.0, "welcome.units": "imperial"}).startswith("nothing above 132 lb")
    assert (show_in("imperial")(60.0, "kg"), show_in(None)(60.0, "kg"), show_in("")(60.0, "kg")) == ("132 lb", "60 kg", "60 kg")


OLD = limit(L, until="2026-03-20", by="a doctor", words="no weights")


@each_row(("got", "then"), [
    ({"what": "squats"}, (OLD, limit(S))), ({"what": "load"}, (limit(L),)), ({"what": "load", "also": "squats"}, (limit(L, S),)),
    ({"what": "kg", "kg": 60.0}, (OLD, limit(kg=60.0))), ({"words": "no weights"}, (limit(L, words="no weights"),)),
    ({"what": "none"}, (OLD,)), ({"words": "none"}, (OLD,)), ({"what": "none", "never": "yes"}, ()),
    ({"what": "squats", "now": "fine"}, (OLD,)),
    ({"what": "squats", "now": "cleared"}, (OLD,)), ({"what": "squats", "now": "over"}, (OLD,)),
    ({"what": "squats", "now": "wrong"}, (limit(S),)),
    ({"what": "squats", "never": "yes"}, (OLD, limit(S)))])
def test_a_new_limit_stands_beside_the_old_unless_it_says_the_same_or_that_was_wrong(got: dict[str, Any], then: tuple[Limit, ...]):
    got = {"safety.limits": as_text((OLD,)), **got}
    assert left("limits_then", got) == then
    assert of("stands_then", got) == ("; ".join(one.said() for one in then) or None)
    assert left("limits_beside", got) == (OLD,)


KILOS, ELSEWHERE = limit(S, kg=60.0), limit(E, elsewhere="jumping", words="no jumping")


@each_row(("old", "got", "kept"), [
    (KILOS, {"what": "squats"}, True), (KILOS, {"what": "squats", "also": "kg", "kg": 80.0}, True),
    (replace(KILOS, by="a doctor"), {"what": "squats", "also": "kg", "kg": 60.0}, False),
    (limit(kg=60.0), {"what": "kg", "kg": 60.5}, True),
    (limit(kg=60.0), {"what": "kg", "kg": 40.0}, False), (ELSEWHERE, {"given": "no jumping at all"}, False),
    (limit(S, words="ask him"), {"given": "ask him", "what": "bending"}, True),
    (limit(ANY, words="ask him", by="a doctor"), {"given": "ask him", "what": "bending"}, False),
    (limit(ANY, S, words="ask him"), {"given": "ask him", "what": "bending"}, True),
    (limit(ANY, words="ask her"), {"given": "ask him", "what": "bending"}, True), (ELSEWHERE, {"given": "no running"}, True),
    (limit(S), {"given": "no squats for 2 weeks and no bending for 4"}, False),
    (limit(S, until="2026-04-20"), {"given": "no squats for 2 weeks, my doctor said"}, False),
    (limit(S, until="2026-04-20", by="my physio"), {"given": "no squats for 2 weeks"}, False),
    (limit(S, until="2026-04-20", by="a physiotherapist"), {"given": "no squats for 2 weeks, my doctor said"}, True),
    (ELSEWHERE, {"what": "squats"}, True), (limit(S), {"what": "bending"}, True), (limit(S), {"given": "no squats and no jumping"}, False)])
def test_what_a_new_limit_says_again_is_replaced(old: Limit, got: dict[str, Any], kept: bool):
    assert (old in left("limits_then", {"safety.limits": as_text((old,)), **got})) is kept


@each_row(("got", "words"), [
    ({"given": "no squats"}, "no squats"), ({"words": "no bends", "given": "no squats"}, "no bends"), ({"cut": "no sq"}, "no sq"),
    ({}, UNSAID)])
def test_while_it_is_asked_everything_that_moves_is_closed_and_what_stood_stands(got: dict[str, Any], words: str):
    got = {"safety.limits": as_text((OLD,)), **got}
    closed = left("limits_open", got)
    assert closed == (OLD, limit(ANY, words=words))
    kept = {**got, "safety.limits": as_text(closed)}
    assert left("limits_beside", kept) == (OLD,), "its own open questions are no limit"
    assert left("limits_then", {**kept, "what": "squats"})[0] == OLD
    assert of("left_open", kept).startswith("Until you have told me what it is, I take it that nothing that moves is allowed")
    assert of("left_open", got) == f"What stands: {OLD.said()}."
    alone = {**got, "safety.limits": as_text((limit(ANY, words=words),))}
    assert (of("words_beside", kept), of("words_beside", alone)) == (OLD.said(), limit(ANY, words=words).said())
    assert of("left_open", {}) == "Nothing is noted."


def test_a_limit_of_the_same_words_that_was_read_is_no_open_question():
    read = limit(S, words="no squats")
    assert left("limits_beside", {"given": "no squats", "safety.limits": as_text((read,))}) == (read,)


def test_of_several_the_least_weight_and_the_first_date_count():
    got = {"safety.limits": as_text((limit(S, kg=80.0, until="2026-03-20"), limit(B, until="2026-03-10"))), "what": "kg", "kg": 62.5}
    assert (of("kilos_then", got), of("end_then", got)) == ("62.5", "2026-03-10")
    assert (of("kilos_then", {"what": "squats"}), of("end_then", {"what": "squats"})) == ("", None)


# its date ---------------------------------------------------------------------------------------------------

DUE, LATER, OPEN = limit(S, until="2026-03-02", by="a doctor"), limit(B, kg=60.0, until="2026-03-03"), limit(L)
AFTER = {"safety.limits": as_text((DUE, LATER, OPEN))}


def test_a_limit_is_due_from_its_date_on():
    assert over_facts(known(safety__limits=as_text((DUE, LATER, OPEN)))) == {"due": "yes", "due_words": DUE.said()}
    assert over_facts(known(safety__limits=as_text((LATER, OPEN)))) == {
        "due": "no", "due_words": OPEN.said(), "waits_words": OPEN.said()}, "that until they clear them is asked about now and then"
    assert over_facts(known(safety__limits=as_text((LATER,)))) == {"due": "no", "due_words": ""}
    pounds = over_facts(known(safety__limits=as_text((limit(kg=60.0, until="2026-03-01"),)), welcome__units="imperial"))
    assert str(pounds["due_words"]).startswith("nothing above 132 lb")


@each_row(("got", "then", "end"), [
    ({"over": "over"}, (LATER, OPEN), "2026-03-03"),
    ({"over": "still", "until": "2026-04-01"}, (limit(S, until="2026-04-01", by="a doctor"), LATER, OPEN), "2026-03-03"),
    ({"over": "still", "until": "cleared"}, (limit(S, by="a doctor"), LATER, OPEN), "2026-03-03"),
    ({"over": "still"}, (limit(S, by="a doctor"), LATER, OPEN), "2026-03-03"),
    ({"over": "unsure"}, (limit(S, until="2026-03-09", by="a doctor", asked=True), LATER, OPEN), "2026-03-03")])
def test_what_is_said_on_its_date_counts_for_what_is_due_alone(got: dict[str, Any], then: tuple[Limit, ...], end: str):
    """Not sure: asked again a week later (choice). No added load: 0 kg."""
    got = {**AFTER, **got}
    assert (left("limits_after", got), of("asked_after", got), of("kilos_after", got)) == (then, end, "0")
    if got["over"] != "over":
        assert of("after_words", got) == then[0].said()


# a clearance ------------------------------------------------------------------------------------------------


@each_row(("facts", "waits", "stand"), [
    ({}, "no", "no"), ({"safety__limits": as_text((OLD,))}, "yes", "yes"), ({"safety__level": "clinician"}, "yes", "no"),
    ({"safety__level": "same_day"}, "yes", "no"), ({"safety__level": "emergency"}, "yes", "no"),
    ({"safety__level": "not_today"}, "no", "no"),
    ({"safety__body_first": "yes"}, "yes", "no"), ({"safety__body_first": "no"}, "no", "no")])
def test_a_clearance_waits_for_a_limit_a_referral_or_body_weight_only(facts: dict[str, Any], waits: str, stand: str):
    found = clearance_facts(known(**facts))
    assert (found["waits"], found["stand"], limits_in(found["before"])) == (waits, stand, limits_in(facts.get("safety__limits")))
    assert {"for_read", "cleared_said"}.isdisjoint(found)


@each_row(("said", "read"), [
    ("my physio cleared me for lifting", "lifting"), ("my physio cleared me to squat", "squats"),
    ("my physio cleared me for bending", "bending"),
    ("my physio cleared me for stretching", "stretching"), ("my physio cleared me", None), ("cleared to squat and bend", None)])
def test_what_its_words_name_is_what_they_were_cleared_for(said: str, read: str | None):
    found = clearance_facts(known(said))
    assert (found.get("for_read"), found["cleared_said"]) == (read, said)


MANY = (limit(L, S, B, *STRETCHES, kg=60.0, until="2026-03-20"), limit(T), limit(E, elsewhere="jumping"))


@each_row(("got", "words", "load", "then"), [
    ({}, "everything", "yes", ()), ({"cleared_for": "all"}, "everything", "yes", ()),
    ({"cleared_for": "lifting"}, "lifting weights", "yes", (limit(S, B, *STRETCHES, until="2026-03-20"), *MANY[1:])),
    ({"cleared_for": "squats"}, "squats", "no", (limit(L, B, *STRETCHES, kg=60.0, until="2026-03-20"), *MANY[1:])),
    ({"cleared_for": "bending"}, "bending", "no", (limit(L, S, *STRETCHES, kg=60.0, until="2026-03-20"), *MANY[1:])),
    ({"cleared_for": "stretching"}, "stretching", "no", (limit(L, S, B, kg=60.0, until="2026-03-20"), *MANY[1:])),
    ({"for_read": "squats"}, "squats", "no", (limit(L, B, *STRETCHES, kg=60.0, until="2026-03-20"), *MANY[1:])),
    ({"for_read": "squats", "cleared_for": "all"}, "everything", "yes", ())])
def test_a_clearance_takes_away_what_it_is_for(got: dict[str, Any], words: str, load: str, then: tuple[Limit, ...]):
    got = {"before": as_text(MANY), "safety.limits": as_text(MANY), "agreed": "yes", **got}
    assert (of("cleared_words", got), of("cleared_to_load", got), left("limits_left", got)) == (words, load, then)
    assert of("kilos_left", got) == ("0" if then else ""), "no added load, or no training"
    assert of("asked_left", got) == ("2026-03-20" if then else None)


def test_a_limit_told_since_a_clearance_was_begun_stays():
    got = {"before": as_text((OLD,)), "safety.limits": as_text((OLD, limit(S))), "cleared_for": "all", "agreed": "yes"}
    assert left("limits_left", got) == left("limits_left", {**got, "cleared_for": "lifting"}) == (limit(S),)


def test_a_clearance_counts_for_six_months_once_it_is_confirmed():
    assert of("until_asked_again", {"right": "yes"}) == "2026-09-01"
    assert (of("until_asked_again", {"right": "no"}), of("until_asked_again", {})) == (None, None)


@each_row(("said", "sets"), [(None, "no"), ("none", "no"), ("no heavy deadlifts", "yes"), ("blah", "yes")])
def test_words_set_a_limit_unless_they_say_that_there_is_none(said: str | None, sets: str):
    assert sets_limit("limits")({"limits": said} if said else {}, "") == sets


@each_row(("words", "how", "end", "past", "who"), [
    ("none", "none", "no", None, "no"), ("no squats for 2 weeks", "all", "yes", None, "no"),
    ("no squats for 2 weeks and no bending for 4 weeks", "all", "yes", None, "no"),
    ("no squats and ask him first", "part", "no", None, "no"),
    ("no lifting until 1 march", "all", "no", "2026-03-01", "no"), ("nothing over 50 kg until 1 march", "all", "no", "2026-03-01", "no"),
    ("no squats or bending until 1 march", "all", "no", None, "no"),
    ("no squats and ask him first until 1 march", "part", "no", None, "no"),
    ("no squats until 1 march for 2 weeks", "part", "yes", None, "no"), ("ask him until 1 march", "part", "no", None, "no"),
    ("my physio says no squats", "all", "no", None, "yes"), ("no squats until 16 march", "all", "yes", None, "no")])
def test_what_is_read_in_the_words_and_what_is_asked(words: str, how: str, end: str, past: str | None, who: str) -> None:
    got = {"words": words}
    assert (of("how_read", got), of("end_read", got), of("past_read", got), of("who_read", got)) == (how, end, past, who)


@each_row(("words", "stands", "may"), [
    ("no, till monday", "", False), ("no, till monday", "no squats", True), ("no squats", "", True), ("no squats", "no bending", True),
    ("no, until 1 march", "no squats", False)])
def test_words_that_only_put_an_end_right_begin_nothing_where_none_stands(words: str, stands: str, may: bool) -> None:
    assert may_put_right(words, {"today": "2026-03-02", **({"limit.words": stands} if stands else {})}) is may


def test_an_end_that_is_put_right_is_said_with_the_one_before_and_a_limit_told_anew_is_not():
    stands = {"safety.limits": as_text((limit(S, until="2026-03-16", by="my physio", words="no squats"),))}
    assert str(of("before_right", {**stands, "words": "no, until 9 march"})).startswith("until 16 March")
    assert "sooner" in of("sooner", {**stands, "words": "no, until 9 march"})
    assert "sooner" not in of("sooner", {**stands, "words": "no, until 23 march"})
    assert of("before_right", {**stands, "words": "no bending until 9 march"}) is None
    assert "sooner" in of("sooner", {**stands, "words": "no squats for a week and no bending for 4"})
    assert "my physio" in of("understood", {**stands, "words": "no, until 9 march"})
    assert "a doctor" in of("understood", {**stands, "words": "my doctor said until 9 march"})


@each_row(("got", "stand", "said"), [
    ({"given": "nothing over 80 kg"}, (60.0, 70.0), " Less still stands beside it: no squats, nothing above 60 kg, until 16 March 2026. "
     "If they raised that, say “cleared” after this."),
    ({"given": "nothing over 60 kg"}, (60.0,), ""), ({"given": "nothing over 80 kg", "now": "wrong"}, (60.0,), ""),
    ({"given": "nothing over 80 kg"}, (), ""), ({"given": "no jumping"}, (60.0,), ""), ({"given": "no weights"}, (60.0,), "")])
def test_a_limit_told_with_more_weight_says_that_less_still_stands(got: dict[str, Any], stand: tuple[float, ...], said: str) -> None:
    got = {**weighed(*stand), **got}
    assert of("sooner", got) == said
    if said:
        assert [one.kg for one in left("limits_then", got)] == [*stand, 80.0]
        assert of("kilos_then", got) == "60"


def weighed(*kilos: float) -> dict[str, str]:
    return {"safety.limits": as_text([limit(S, kg=kg, until="2026-03-16", words=f"{kg:g}") for kg in kilos])}


@each_row(("words", "stand", "read", "before", "kilos"), [
    ("its 40 not 60", (60.0,), "lower", "60 kg", [40.0]), ("its 60 not 60", (60.0,), "kept", "60 kg", [60.0]),
    ("its 80 not 60", (60.0,), "kept", "60 kg", [60.0]), ("its 40 not 60", (50.0,), None, None, [50.0]),
    ("its 40 not 60", (60.24,), "lower", "60.2 kg", [40.0]), ("its 40 not 60", (60.25,), None, None, [60.25]),
    ("its 40 not 60", (59.76,), "lower", "59.8 kg", [40.0]), ("its 40 not 60", (59.75,), None, None, [59.75]),
    ("the limit is 40 not 60", (50.0,), "lower", "50 kg", [40.0]), ("the limit is 40", (60.0, 50.0), "lower", "50 kg", [60.0, 40.0]),
    ("its 40 not 60", (60.0, 50.0), "lower", "60 kg", [40.0, 50.0]),
    ("the limit is 40 not 60", (60.0, 50.0), "lower", "60 kg", [40.0, 50.0]),
    ("its 40 not 60", (60.0, 60.0), "lower", "60 kg", [40.0, 40.0]), ("its 40", (60.0,), None, None, [60.0]),
    ("its 0 not 60", (60.0,), "lower", "60 kg", [0.0]), ("no squats", (60.0,), None, None, [60.0]), ("its 40 not 60", (), None, None, [])])
def test_the_weight_that_is_put_right_is_that_of_a_limit_that_stands_and_never_goes_up(
        words: str, stand: tuple[float, ...], read: str | None, before: str | None, kilos: list[float]) -> None:
    got = {**weighed(*stand), "words": words}
    assert (of("right_read", got), of("before_right", got)) == (read, before)
    assert [one.kg for one in left("limits_then" if read else "limits_beside", got)] == kilos
    assert of("right_read", {**got, "now": "wrong"}) is None
    assert read is None or of("kilos_then", got) == f"{min(kilos):g}"


def test_a_weight_is_put_right_in_the_lifter_s_units():
    got = {**weighed(60.0), "words": "its 88 not 132", "units": "imperial", "welcome.units": "imperial"}
    assert (of("right_read", got), of("before_right", got)) == ("lower", "132 lb")
    assert of("understood", got).startswith("no squats, nothing above 88 lb")


@each_row(("words", "stand", "over", "may"), [
    ("its 40 not 60", (60.0,), None, True), ("its 40 not 60", (60.0,), "limits", True), ("its 40 not 60", (60.0,), "leg_raise", False),
    ("the limit is 40 not 60", (60.0,), "leg_raise", True), ("its 40 not 60", (50.0,), None, False), ("its 40 not 60", (), None, False),
    ("the limit is 40 not 60", (), "leg_raise", True), ("she said 40 not 60", (), None, False), ("max 40 not 60", (), None, False),
    ("nothing over 60 kg", (), None, True)])
def test_a_weight_alone_begins_nothing_over_a_test_or_where_it_is_not_that_of_a_limit(
        words: str, stand: tuple[float, ...], over: str | None, may: bool) -> None:
    assert may_put_right(words, {**TODAY, **weighed(*stand), **({"over": over} if over else {})}) is may
    pounds = {**TODAY, **weighed(60.0), "welcome.units": "imperial"}
    assert (may_put_right("its 88 not 132", pounds), may_put_right("its 40 not 60", pounds)) == (True, False)


def test_the_weight_put_right_at_the_question_whether_it_is_right_stands_in_place_of_the_one_read():
    assert left("limits_then", {"given": "nothing over 60 kg", "kg": 40.0})[0].kg == 40.0
    assert left("limits_then", {"given": "no squats", "kg": 40.0})[0].kg == 40.0


@each_row(("asked", "for_read", "said", "beside"), [
    ("physio cleared me to squat yesterday, nothing over 60 kg", "squats", "physio cleared me to squat yesterday", True),
    ("my physio cleared me but no squats", None, "my physio cleared me", True),
    ("my physio cleared me", None, "my physio cleared me", False)])
def test_a_limit_beside_a_clearance_stands_open_until_it_is_asked_about(asked: str, for_read: str | None, said: str, beside: bool) -> None:
    found = clearance_facts(known(asked, safety__limits=as_text((OLD, limit(ANY, words=asked)))))
    assert (found.get("for_read"), found["cleared_said"], found.get("limit_said")) == (for_read, said, asked if beside else None)
    stands = (OLD,) if beside else (OLD, limit(ANY, words=asked))
    assert (limits_in(found["before"]), found["before_words"]) == (stands, "; ".join(one.said() for one in stands))
    assert limits_in(found.get("with_said")) == ((OLD, limit(ANY, words=asked)) if beside else ())
    assert of("limits_told", dict(found)) == (asked if beside else None)
    assert of("limits_told", {**found, "limits": "none"}) == (asked if beside else "none")


def test_the_question_whether_it_was_after_says_what_stood():
    assert of("after_what", {"before_words": "no squats"}) == "You were told this: no squats. Did they clear you after that?"
    assert of("after_what", {"before_words": ""}) == "Did they clear you after what you told me, so that they knew of it?"


TWO = "my doctor said no squats and my physio said no bending for 2 weeks"
OTHER_WAY = "my doctor said no squats for 2 weeks and my physio said no bending"


@each_row(("words", "first", "second", "second_ends"), [
    (TWO, "First what a doctor said: no squats. ", "", "yes"),
    (OTHER_WAY, "", "Then what a physiotherapist said: no bending.", "no"),
    ("my doctor said no squats and my physio said no bending", "First what a doctor said: no squats. ",
     "Then what a physiotherapist said: no bending.", "no"),
    ("my doctor said no running and my physio said no bending for 2 weeks", "First what a doctor said: no running. ", "", "yes"),
    ("my doctor said no squats", "", "", "yes"), ("no squats for 2 weeks, my doctor said", "", "", "yes"),
    ("no squats for 2 weeks and no bending for 4, said my physio", "", "", "yes")])
def test_whose_limit_an_end_is_asked_for_is_said_where_two_clinicians_set_one(words: str, first: str, second: str, second_ends: str):
    got = {"words": words}
    assert (of("first_told", got), of("second_told", got), of("second_end_read", got)) == (first, second, second_ends)


@each_row(("by", "words", "put_right"), [
    ("a physiotherapist", "my physio said until 9 march", True), ("a physiotherapist", "no, until 9 march", True),
    ("a physiotherapist", "my doctor said until 9 march", False), ("a physiotherapist", "my doctor said until 23 march", True),
    ("", "my doctor said until 9 march", True)])
def test_another_clinicians_word_brings_no_end_forward(by: str, words: str, put_right: bool):
    stands = {"safety.limits": as_text((limit(S, until="2026-03-16", by=by, words="no squats"),))}
    assert of("right_read", {**stands, "words": words}) == ("end" if put_right else None)
    if put_right:
        assert [one.by for one in left("limits_then", {**stands, "words": words})] == ["a doctor" if "my doctor" in words else by]


@each_row(("words", "until"), [("one more week", "2026-03-23"), ("physio wants one more week", "2026-03-23"), ("for a week", "2026-03-09")])
def test_more_time_is_counted_from_the_limits_own_end(words: str, until: str):
    stands = {"safety.limits": as_text((limit(S, until="2026-03-16", by="a physiotherapist", words="no squats"),))}
    [one] = left("limits_then", {**stands, "words": f"no, {words}"})
    assert one.until == date.fromisoformat(until)


def test_more_time_for_what_has_no_end_of_its_own_is_counted_from_the_day_it_is_told():
    stands = {"safety.limits": as_text((limit(S, by="a physiotherapist", words="no squats"),))}
    assert [one.until for one in left("limits_then", {**stands, "words": "no, one more week"})] == [date(2026, 3, 9)]


@each_row(("words", "stands", "over", "may"), [
    ("also no bending", (L,), "limits", True), ("also no bending", (L,), "knee_to_wall", False), ("also no bending", (), "limits", False),
    ("nothing over 40 kg till friday", (), "limits", True), ("the limit is 40 kg till friday not 60", (), "limits", True),
    ("its 40 kg till friday not 60", (), "limits", False)])
def test_what_is_added_or_put_right_begins_nothing_where_nothing_of_it_stands(
        words: str, stands: tuple[LimitPart, ...], over: str, may: bool) -> None:
    facts = {**TODAY, "over": over, "safety.limits.today": "yes", "safety.limits": as_text((limit(*stands),) if stands else ())}
    assert may_put_right(words, facts) is may


@each_row(("words", "kg", "over", "day", "may"), [
    ("sorry, pounds not kilos", 40.0, "limits", "yes", True), ("sorry, pounds not kilos", None, "limits", "yes", False),
    ("sorry, pounds not kilos", 40.0, "knee_to_wall", "yes", False), ("sorry, pounds not kilos", 40.0, "limits", "", False),
    ("i meant 40 lb", 40.0, "limits", "yes", True), ("i meant 40 lb", None, "limits", "yes", False)])
def test_another_unit_is_that_of_a_limit_told_today(words: str, kg: float | None, over: str, day: str, may: bool) -> None:
    stands = as_text((limit(kg=kg, words="nothing over 40"),) if kg else ())
    facts = {**TODAY, "over": over, "safety.limits": stands, **({"safety.limits.today": day} if day else {})}
    assert may_put_right(words, facts) is may


@each_row(("same", "until", "by"), [("yes", "2026-03-20", "a doctor"), ("other", None, "")])
def test_what_is_added_has_the_end_and_the_clinician_of_what_was_told_last_where_that_is_so(same: str, until: str | None, by: str):
    (one,) = left("limits_then", {**ADDS, "last_by": "a doctor", "last_until": "2026-03-20", "same": same})
    assert (one.until, one.by) == (date.fromisoformat(until) if until else None, by)


def test_the_weight_that_was_told_is_found_behind_what_has_none():
    assert of("kilos_told", {"words": "no bending for 2 weeks and nothing over 40 kg for 4 weeks"}) == 40.0


def test_what_two_clinicians_said_is_two_limits_each_with_the_words_unless_one_was_tapped():
    got = {"words": OTHER_WAY, "until_2": "2026-03-30"}
    doctor, physio = left("limits_then", got)
    assert (doctor.parts, doctor.by, doctor.until) == ({S}, "a doctor", date(2026, 3, 16))
    assert (physio.parts, physio.by, physio.until, physio.words) == ({B}, "a physiotherapist", date(2026, 3, 30), doctor.words)
    assert len({one.words for one in left("limits_then", {"words": TWO, "until": "2026-03-30"})}) == 1
    assert len(left("limits_then", {**got, "what": "squats"})) == 1
    assert of("past_read", {"words": "my doctor said no squats until 1 march and my physio said no bending"}) is None
    assert of("past_read", {"words": "my doctor said no squats until 1 march"}) == "2026-03-01"


@each_row(("words", "kg"), [
    ("no squats and nothing over 60 kg; also: nothing over 40 kg", 40.0), ("no squats; also: nothing over 40 kg", 40.0),
    ("nothing over 60 kg; also: no bending", 60.0), ("no squats; also: no bending", None)])
def test_of_two_weights_told_together_the_lower_one_stands(words: str, kg: float | None):
    assert left("limits_then", {"words": words})[-1].kg == kg


@each_row(("what", "also", "also_2", "more"), [
    (None, None, None, "no"), ("squats", None, None, "yes"), ("squats", "bending", None, "yes"), ("squats", "bending", "kg", "no"),
    ("none", None, None, "no"), ("training", None, None, "no"), ("other", None, None, "no"), ("squats", "enough", None, "no"),
    ("squats", "training", None, "no"), ("squats", "bending", "enough", "no"), ("squats", "bending", "training", "no")])
def test_one_thing_more_is_asked_for_until_all_is_said_or_three_were_tapped(what: str, also: str, also_2: str, more: str) -> None:
    picked = {"what": what, "also": also, "also_2": also_2}
    assert of("asks_more", {name: pick for name, pick in picked.items() if pick}) == more


def test_one_of_two_limits_told_whose_date_has_come_is_enough_to_ask_whether_it_is_over():
    words = "no bending for 2 weeks and nothing over 40 kg for 4 weeks"
    assert [of("has_been", {"words": words, "today": day}) for day in ("2026-03-15", "2026-03-16", "2026-03-30")] == ["no", "yes", "yes"]


@each_row(("words", "limits", "may"), [
    ("my scan is done", (limit(S),), True), ("my scan is done", (limit(S, until="2026-04-01"),), False), ("my scan is done", (), False),
    ("my scan is done", (limit(S), limit(L, until="2026-04-01")), True), ("my scan is done", (limit(kg=60.0),), True),
    ("my scan is done, 80 is ok now", (limit(S),), True), ("my scan is done, 80 is ok now", (limit(kg=60.0),), False),
    ("my scan is done, 80 is ok now", (limit(kg=60.0, until="2026-04-01"),), False)])
def test_a_scan_that_is_done_is_of_a_limit_that_waits_for_it_unless_it_raises_one(
        words: str, limits: tuple[Limit, ...], may: bool) -> None:
    assert waits_for_clearance(words, {"safety.limits": as_text(limits)}) is may


@each_row(("facts", "may"), [
    ({"limit.words": "no squats"}, True), ({}, False), ({"limit.words": "no squats", "over": "knee_to_wall"}, False),
    ({"limit.words": "no squats", "over": "limits"}, False)])
def test_a_question_until_when_a_limit_holds_is_one_where_nothing_else_is_asked(facts: dict[str, str], may: bool) -> None:
    assert may_put_right("until when is my limit", {**TODAY, **facts}) is may
