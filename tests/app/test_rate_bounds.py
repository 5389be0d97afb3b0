"""The numbers of the flood limit, as they are meant to be, and its edges."""

from __future__ import annotations

from datetime import timedelta

import pytest

from companion.app import rate_limit
from companion.app.rate_limit import (
    ACCEPTED_MOST,
    COUNTED_MOST,
    WINDOW,
    Admission,
    MessageCount,
    RateLimit,
    admission_of,
    always_heard,
    counted,
)
from companion.language.pain import Pain
from companion.port import Address, Inbound, Tapped, Typed
from tests.fakes.clock import START

SECOND = timedelta(seconds=1)


def test_forty_a_minute_and_ten_thousand_addresses() -> None:
    assert (timedelta(minutes=1), 40, 10_000) == (WINDOW, ACCEPTED_MOST, COUNTED_MOST)


@pytest.mark.parametrize(("sent", "pace"), [(1, Admission.ACCEPT), (40, Admission.ACCEPT), (41, Admission.WARN),
                                             (42, Admission.DROP), (500, Admission.DROP)])
def test_the_forty_first_is_told_and_no_other(sent: int, pace: Admission) -> None:
    assert admission_of(MessageCount(START, sent)) is pace


@pytest.mark.parametrize(("after", "sent"), [(-SECOND, 1), (0 * SECOND, 8), (59 * SECOND, 8), (60 * SECOND, 1), (61 * SECOND, 1)])
def test_a_count_begins_anew_after_a_minute_or_where_the_clock_went_back(after: timedelta, sent: int) -> None:
    count = counted(MessageCount(START, 7), START + after)
    assert (count.sent, count.since) == (sent, START if sent > 1 else START + after)


def test_the_first_of_an_address_is_one() -> None:
    assert counted(None, START) == MessageCount(START, 1)


@pytest.mark.parametrize(("ago", "pace"), [(59, Admission.DROP), (60, Admission.DROP), (61, Admission.ACCEPT)])
def test_only_what_waited_longer_than_a_minute_is_judged_by_when_it_was_sent(ago: int, pace: Admission) -> None:
    flood, who = RateLimit(), Address("telegram", "1")
    for _ in range(42):
        flood.admit(Inbound(who, Typed("hi")), START)
    assert flood.admit(Inbound(who, Typed("hi"), sent_at=START - ago * SECOND), START) is pace


def test_who_is_counted_anew_is_the_last_to_be_forgotten() -> None:
    flood = RateLimit()
    first, second = Address("telegram", "first"), Address("telegram", "second")
    for who, after in ((first, 0), (second, 0), (first, 120)):
        flood.admit(Inbound(who, Typed("hi")), START + after * SECOND)
    assert list(flood._counts) == [second, first]
    flood.admit(Inbound(second, Typed("hi")), START + 30 * SECOND)
    assert list(flood._counts) == [second, first]
    for n in range(COUNTED_MOST - 1):
        flood.admit(Inbound(Address("telegram", str(n)), Typed("hi")), START + 120 * SECOND)
    assert second not in flood._counts
    assert first in flood._counts


def test_a_tap_that_is_no_stop_is_not_heard_in_a_flood() -> None:
    flood, who = RateLimit(), Address("telegram", "1")
    for _ in range(42):
        flood.admit(Inbound(who, Tapped("squat_look.1.plain_do.done")), START)
    assert flood.admit(Inbound(who, Tapped("squat_look.1.plain_do.done")), START) is Admission.DROP
    assert always_heard(Tapped("squat_look.1.plain_do.done")) is None
    assert always_heard(Typed("hello")) is None
    assert always_heard(Typed("stopp")) is None  # nearly a stop: it waits with the rest


def test_a_sign_of_which_the_rules_are_sure_is_heard_in_a_flood_and_nothing_is_weighed_for_it(monkeypatch: pytest.MonkeyPatch) -> None:
    assert always_heard(Typed("i cant pee since this morning")) is Pain.YES
    assert always_heard(Typed("might be pregnant")) is None  # a doubt waits with the rest
    asked: list[bool] = []
    monkeypatch.setattr(rate_limit, "hear_flags", lambda text, weigh=True: asked.append(weigh) or ())
    always_heard(Typed("hello"))
    assert asked == [False]


def test_pain_in_a_calm_conversation_is_counted_as_any_message_and_in_a_flood_begins_a_new_count() -> None:
    flood, who = RateLimit(), Address("telegram", "1")

    def meet(text: str) -> Admission:
        return flood.admit(Inbound(who, Typed(text)), START)

    assert {*(meet("hi") for _ in range(39)), meet("ouch")} == {Admission.ACCEPT}
    assert [meet("hi"), meet("hi")] == [Admission.WARN, Admission.DROP]
    assert {meet("ouch"), *(meet("hi") for _ in range(39))} == {Admission.ACCEPT}
    assert meet("hi") is Admission.WARN
