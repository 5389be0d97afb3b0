"""Lifters by name: found by what a coach types, and told apart where two have one name."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.coach.caseload import utf16_length
from companion.coach.caseload_page import caseload_html
from companion.coach.letters import alert_letters
from companion.coach.links import link
from companion.coach.names import BUTTON_NAME_MOST, display_name, distinct_names, lifters_matching, with_distinct_names
from companion.coach.views import show
from companion.conversation.effects import Link, Say
from companion.port import Inbound, Tapped, Typed
from companion.record import coaching, people
from companion.record.turn import Turn
from flows.catalogue import BOOK
from flows.find_lifter import is_name
from tests.coach.caseload_rows import NOW, Room, ago, lines_of, record
from tests.coach.gym import KIM, MIA, SAM
from tests.table import each_row


def by_code(room: Room, name: str, code: str) -> int:
    """A lifter who came by a code made out to somebody."""
    lifter = room.lifter(name)
    coaching.invite(room.db, "lifter", room.coach, code, ago(61))
    coaching.use_up(room.db, room.db.execute("select max(id) from invitations").fetchone()[0], lifter, ago(60))
    return lifter


def find(room: Room, typed: str, coach: int | None = None) -> Say:
    (say,) = show(Turn(room.db, room.coach if coach is None else coach, NOW, BOOK), "find_lifter", typed)
    return say


def taps(say: Say) -> list[tuple[str, str]]:
    return [(tap.label, tap.data) for row in say.buttons for tap in row]


# found ------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("typed", ["sam", "SAM", "sam berg", "berg", "zoé", "zoe", "zo", "ber"])
def test_a_name_opens_the_one_lifter_it_may_mean_and_the_look_is_noted(room, typed):
    sam = room.lifter("Sam Berg-Zoé")
    other = room.lifter("Mia")
    assert find(room, typed).text.startswith("Sam Berg-Zoé\nSafety: ")
    assert room.looks(sam) == ["Ada: summary"]
    assert room.looks(other) == []


def test_a_whole_name_goes_before_names_that_only_begin_so(room):
    room.lifter("Samira")
    room.lifter("Sam")
    assert find(room, "sam").text.startswith("Sam\n")
    assert find(room, "sami").text.startswith("Samira\n")


def test_somebody_is_found_by_the_name_their_code_was_made_for(room):
    by_code(room, "xx_quads_xx", "Mara, Tuesdays")
    assert find(room, "mara").text.startswith("xx_quads_xx\n")


def test_several_are_a_list_the_most_urgent_first_and_each_line_is_noted(room):
    one, two, mia = room.lifter("Sam Ahl"), room.lifter("Sam Berg"), room.lifter("Mia")
    room.hurt(two, 0.5, "emergency")
    say = find(room, "sam")
    assert say.text.split("\n")[0] == "2 of your lifters match, most urgent first."
    assert "1. Sam Berg: sent to emergency care; hurt" in say.text
    assert "sent to emergency care" in say.text
    assert taps(say) == [("1 Sam Berg", f"go.lifter.{two}"), ("2 Sam Ahl", f"go.lifter.{one}"), ("My lifters", "go.caseload")]
    assert room.looks(one) == room.looks(two) == ["Ada: caseload"]
    assert room.looks(mia) == []


def test_of_very_many_the_first_ten_are_shown_and_it_says_so(room):
    for n in range(13):
        room.lifter(f"Sam {chr(65 + n)}")
    say = find(room, "sam")
    assert say.text.startswith("13 of your lifters match, most urgent first. Here are the first 10. Type more")
    assert len(taps(say)) == 11


@pytest.mark.parametrize("typed", ["nobody", "2", "samuel", "", "...", "sam 2", "%", "{of}"])
def test_where_nobody_is_called_so_it_says_so_and_no_number_opens_anybody(room, typed):
    sam = room.lifter("Sam")
    say = find(room, typed)
    assert say.text == "None of your lifters has that name."
    assert taps(say) == [("My lifters", "go.caseload")]
    assert room.looks(sam) == []


def test_nobody_elses_lifter_is_found(room):
    sam = room.lifter("Sam")
    other, nobody = room.a_coach("Bo"), room.lifter("Mia")
    for coach in (other, nobody):
        assert find(room, "sam", coach).text == "None of your lifters has that name."
    coaching.withdraw(room.db, sam, room.coach, NOW)
    assert find(room, "sam").text == "None of your lifters has that name."


@each_row("said", ["find sam", "Lifter Sam", "show me sam", "show sam", "Please find sam.", "open sam", "look up sam",
                                  "find lifter sam"])
def test_a_sentence_of_a_coach_finds_a_lifter_and_is_none_of_anybody_else(said):
    assert BOOK.sentence(said, {"is_coach": "yes"}) == ("find_lifter", "sam")
    assert BOOK.sentence(said, {"is_coach": "no"}) is None
    assert BOOK.sentence(said, {}) is None


@each_row("said", ["sam", "show me", "find it", "find out why my back rounds", "show me my results", "open the menu",
                                  "lifters", "show me how", "show data", "show me squat days", "open digest", "show picture",
                                  "find the level app on my phone please", "show lifters"])
def test_what_is_no_name_finds_nobody(said):
    found = BOOK.sentence(said, {"is_coach": "yes"})
    assert found is None or found[0] != "find_lifter"


def test_a_name_is_short_and_not_a_word_for_something_else():
    assert is_name("sam van der berg")
    assert not is_name("my results")
    assert not is_name("somebody who squats on tuesdays at seven")


async def test_a_coach_finds_a_lifter_from_the_chat_and_a_lifter_who_types_it_hears_the_same_of_everybody(gym):
    await gym.linked()
    await gym.lifter(MIA)
    assert (await gym.say("find sam", who=KIM))[-1].startswith("sam\n")
    looks = gym.count("looks")
    for name in ("qwzx", "sam", "qwzx", "sam"):  # a refusal, in other words each time, before the menu's question
        refusal, _, question = (await gym.say(f"find {name}", who=MIA))[-1].rpartition("\n\n")
        assert refusal
        assert question == "What would you like to do?"
        assert "sam" not in refusal
    assert gym.count("looks") == looks


async def test_a_lifter_in_the_middle_of_a_test_is_not_taken_out_of_it_by_such_words(gym):
    await gym.linked()
    await gym.lifter(MIA)
    await gym.say("knee to wall", who=MIA)
    before = [frame.flow for frame in people.load_session(gym.db, gym.id_of(MIA)).stack]
    for words in ("show me how", "show me sam", "lifter sam", "find sam"):
        await gym.say(words, who=MIA)
    assert [frame.flow for frame in people.load_session(gym.db, gym.id_of(MIA)).stack] == before


@pytest.mark.parametrize(("hurts", "flow"), [("my back hurts", "pain"), ("my chest hurts", "signs")])
async def test_pain_and_other_signs_go_before_the_finding(gym, hurts, flow):
    await gym.linked()
    said = await gym.say(f"find sam {hurts}", who=KIM)
    assert not any(text.startswith("sam\n") for text in said)
    assert people.load_session(gym.db, gym.id_of(KIM)).stack[-1].flow == flow


async def test_erasing_a_lifter_takes_the_searches_for_them(gym):
    await gym.linked()
    await gym.say("find sam", who=KIM)
    assert gym.db.execute("select count(*) from runs where flow = 'find_lifter'").fetchone() == (1,)
    await gym.say("my data", "Erase it all", "Yes, erase it all")
    assert gym.db.execute("select count(*) from runs where flow = 'find_lifter'").fetchone() == (0,)


async def test_a_page_that_was_found_by_name_is_not_sent_after_the_view_was_ended(gym):
    await gym.linked()
    await gym.companion.take(Inbound(KIM, Typed("find sam"), name="kim"))
    await gym.companion.take(Inbound(SAM, Tapped(f"go.leave_coach.{gym.id_of(KIM)}"), name="sam"))
    assert not any(text.startswith("sam\n") for text in await gym.listen(KIM))


# told apart -------------------------------------------------------------------------------------------------


def test_a_name_that_only_one_has_stays_as_it_is(room):
    sam, mia = by_code(room, "Sam", "Sam, Tuesdays"), room.lifter("Mia")
    assert (display_name(room.db, room.coach, sam), display_name(room.db, room.coach, mia)) == ("Sam", "Mia")


def test_two_of_one_name_have_what_their_codes_say_beside_it(room):
    one, two = by_code(room, "Sam", "Sam, Tuesdays"), by_code(room, "sam", "Sam from work")
    assert display_name(room.db, room.coach, one) == "Sam (Tuesdays)"
    assert display_name(room.db, room.coach, two) == "sam (from work)"


@pytest.mark.parametrize("codes", [("Sam", "Sam"), ("", ""), ("Sam, new", "Sam (new)")])
def test_where_the_codes_tell_nothing_apart_the_numbers_do(room, codes):
    one, two = (by_code(room, "Sam", code) for code in codes)
    assert display_name(room.db, room.coach, one) == f"Sam (no. {one})"
    assert display_name(room.db, room.coach, two) == f"Sam (no. {two})"


def test_each_place_that_names_them_tells_them_apart_alike(room):
    one, two = by_code(room, "Sam", "Sam, Tuesdays"), by_code(room, "Sam", "Sam, Fridays")
    lines = with_distinct_names(room.db, room.coach, lines_of(room.db, room.coach, NOW))
    assert {line.person: line.name for line in lines} == {one: "Sam (Tuesdays)", two: "Sam (Fridays)"}
    (listed,) = show(Turn(room.db, room.coach, NOW, BOOK), "caseload", "")
    (page,) = show(Turn(room.db, room.coach, NOW, BOOK), "lifter", str(two))
    (alert,) = alert_letters(room.db, two, "something hurt", "emergency")
    assert {label.split(" ", 1)[1] for label, data in taps(listed) if data.startswith("go.lifter.")} == {"Sam (Tuesdays)", "Sam (Fridays)"}
    assert page.text.startswith("Sam (Fridays)\n")
    assert alert.say.text == "Sam (Fridays), sent to emergency care: something hurt"
    assert [label for label, _ in taps(alert.say)] == ["Write to Sam (Fridays)", "See Sam (Fridays)"]
    assert "Sam (Tuesdays)" in caseload_html(room.db, room.coach, NOW)
    assert find(room, "sam fridays").text.startswith("Sam (Fridays)\n")


def test_another_coachs_lifters_and_codes_change_no_name(room):
    sam = by_code(room, "Sam", "Sam, Tuesdays")
    bo = room.a_coach("Bo")
    twin = people.add_person(room.db, "telegram", "9999", "Sam", ago(90))
    coaching.link(room.db, twin, bo, ago(60))
    assert display_name(room.db, room.coach, sam) == display_name(room.db, bo, twin) == "Sam"


def test_the_operators_page_tells_them_apart_by_their_numbers(room):
    one, two = by_code(room, "Sam", "Sam, Tuesdays"), by_code(room, "Sam", "Sam, Fridays")
    page = caseload_html(room.db, None, NOW)
    assert f"Sam (no. {one})" in page
    assert f"Sam (no. {two})" in page


def test_who_ends_the_view_is_told_apart_from_who_stays(room):
    one, _ = by_code(room, "Sam", "Sam, Tuesdays"), by_code(room, "Sam", "Sam, Fridays")
    letters = link(Turn(room.db, one, NOW, BOOK), Link("withdraw", str(room.coach)))
    assert [letter.say.text for letter in letters if letter.to == room.coach] == [
        "Sam (Tuesdays) has stopped sharing their answers with you."]


names = st.text(st.sampled_from("aA é\u200b()🙂") | st.characters(codec="utf-8"), max_size=60)


@given(st.dictionaries(st.integers(1, 10**6), names, max_size=6), st.dictionaries(st.integers(1, 10**6), names, max_size=6))
def test_whoever_is_told_apart_fits_a_button_and_is_no_other_of_them(given_names, codes):
    told = distinct_names(given_names, {**codes, **dict.fromkeys(given_names, "Sam")})
    assert len(set(told.values())) == len(told)
    assert all(0 < utf16_length(name) <= BUTTON_NAME_MOST for name in told.values())


def test_anything_may_be_typed(tmp_path):
    with record(tmp_path) as room:
        room.lifter("Sam")

        @given(st.text(max_size=70))
        def tried(typed: str) -> None:
            assert lifters_matching(room.db, room.coach, typed) in ([], [2])

        tried()
