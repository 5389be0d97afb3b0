"""Words for the answers of a choice."""

import pytest

from companion.conversation.flow import Ask
from companion.conversation.kinds import ReadingContext, Unclear, pick
from companion.conversation.slots import phrases_of
from companion.language.act_rules import pattern, rows_of, tables_in
from companion.language.clauses import flat
from companion.language.meanings import applies, meanings, surely_meant
from flows.catalogue import BOOK
from tests.table import each_row

CHOICES = {step.kind.options for flow in BOOK.flows for step in BOOK[flow].stops.values() if isinstance(step, Ask) and step.kind.options}
SETS = [([option.value for option in options], [flat(option.label).strip(" .") for option in options]) for options in CHOICES]


@each_row("table", meanings(), ids=lambda table: "-".join(table.get("of", table.get("labels", ()))))
def test_every_table_belongs_to_a_question_that_is_asked(table):
    assert any(applies(table, values, labels) for values, labels in SETS)


@each_row("options", sorted(CHOICES, key=str), ids=lambda options: "-".join(option.value for option in options)[:40])
def test_no_words_of_one_answer_are_the_label_of_another(options):
    heard = phrases_of(options)
    own = {flat(option.label).strip(" ."): option.value for option in options}
    assert not [(phrase, value) for value, phrases in heard for phrase in phrases if own.get(phrase, value) != value]


@pytest.mark.parametrize("section", ["commands", "starts", "asked", "moods"])
def test_every_rule_is_a_pattern(section):
    for name in tables_in(section):
        assert pattern(f"{section}.{name}").groups >= 0
        assert rows_of(f"{section}.{name}")


def read_at(flow, key, words):
    """What words are read as at a question about safety: the value, or None."""
    kind = BOOK[flow].stops[key].kind
    return getattr(kind.read(words, ReadingContext(strict=True, facts=lambda: {"today": "2026-03-02"})), "value", None)


@pytest.mark.parametrize(("words", "value"), [
    ("its over", "over"), ("It's over.", "over"), ("yes its over now", "over"), ("not yet", "still"), ("no, not yet", "still"),
    ("its not over", "still"), ("no its not", "still"), ("it's still on", "still"), ("still on until 2 july", "still"),
    ("its over?", None), ("over soon", None), ("i hope its over", None), ("not sure its over", None)])
def test_whether_a_limit_is_over_is_read_in_plain_words_and_not_guessed(words, value):
    assert read_at("limit_over", "over", words) == value


@pytest.mark.parametrize(("words", "value"), [
    ("booked for tuesday", "booked"), ("appointment is on friday", "booked"), ("i have an appointment tomorrow", "booked"),
    ("going tomorrow", "booked"), ("i went and they said its fine", "yes"), ("I went, and they said it's fine.", "yes"),
    ("saw the doc, she said no squats for 2 weeks", "yes"), ("i saw the physio yesterday", "yes"),
    ("havent got an appointment yet", "no"), ("waiting list", "no"), ("im on a waiting list", "no"), ("couldn't get an appointment", "no"),
    ("not been yet", "no"), ("i went to the gym", None), ("i went but they were closed", None), ("they said its fine", None),
    ("booked for tuesday but it got worse", None), ("i went and they said do i need a scan?", None), ("seeing the doctor", None)])
def test_whether_they_were_seen_is_read_in_plain_words_and_not_guessed(words, value):
    assert read_at("referral", "went", words) == value


@pytest.mark.parametrize(("words", "value"), [
    ("yesterday not now", "lately"), ("no it was yesterday", "lately"), ("no, not now, yesterday", "lately"), ("last week", "lately"),
    ("two days ago", "lately"), ("a couple of weeks ago", "lately"), ("not today", "lately"), ("a week ago", "lately"),
    ("a few weeks ago", "earlier"), ("last month", "earlier"), ("two years ago", "earlier"), ("it was six weeks ago", "earlier"),
    ("last night", "now"), ("it was yesterday evening", "now"), ("since yesterday", "now"), ("yesterday and now", "now"),
    ("an hour ago", "now"), ("earlier today", "now"), ("no it was this morning", "now"), ("its still there", "now"),
    ("a while ago", None), ("yesterday?", None), ("yesterday i think", None)])
def test_when_a_sign_in_the_chest_was_is_read_in_plain_words_and_the_night_before_counts_as_today(words, value):
    assert read_at("signs", "when", words) == value


@pytest.mark.parametrize(("words", "value"), [
    ("worse now", "worse"), ("it's worse", "worse"), ("worse today", "worse"), ("a lot worse", "worse"), ("much worse", "worse"),
    ("bit worse", "worse"), ("it got worse", "worse"), ("no, it's getting worse", "worse"), ("its worse when i sit", "worse"),
    ("it has spread", "worse"), ("a bit better", "better"), ("feels better today", "better"), ("better but not gone", "better"),
    ("about the same", "same"), ("still the same as yesterday", "same"), ("no change", "same"), ("it's not better", "same"),
    ("not worse", "same"), ("could be worse", None), ("is it worse?", None), ("better or worse, cant say", None)])
def test_how_it_is_the_morning_after_is_read_in_plain_words_and_not_guessed(words, value):
    assert read_at("morning", "how", words) == value


@pytest.mark.parametrize(("words", "value"), [
    ("no, till monday", "no"), ("not friday, monday", "no"), ("no, my physio said it", "no"), ("that's not right", "no"),
    ("wrong, no bending", "no"), ("till monday", None), ("nothing over 60", None), ("not sure", "no")])
def test_a_limit_that_was_read_wrongly_is_put_right_in_words(words, value):
    assert read_at("limits", "right", words) == value


def test_a_reply_that_tells_more_beside_its_answer_is_no_option_word_for_word():
    """Else a sign in the rest of it would be taken for part of the answer."""
    kind = BOOK["referral"].stops["went"].kind
    assert isinstance(pick("booked for tuesday", kind.options, ReadingContext(strict=True)), Unclear)
    assert kind.read("booked for tuesday", ReadingContext(strict=True)).beside


@each_row("options", sorted(CHOICES, key=str), ids=lambda options: "-".join(option.value for option in options)[:40])
def test_no_sure_words_are_a_bare_yes_or_no_or_another_answer_s_own(options):
    for value, words in surely_meant(tuple((option.value, option.label) for option in options)):
        others = {flat(one).strip(" .") for option in options if option.value != value for one in (option.label, *option.also)}
        assert not [one for one in ("", "yes", "no", "ok", *others) if words.fullmatch(f"{one} ")]
