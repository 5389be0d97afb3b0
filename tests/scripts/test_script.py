"""The text format of played conversations."""

from __future__ import annotations

from datetime import timedelta

import pytest

from companion.channels.script import BotMessage, PersonInput, Remark, Restart, Wait, bot_message, event_of, parse, written
from companion.port import Address, Button, Edited, Outgoing, Sent, Tapped, Typed

TEXT = """# What it shows.
begin 2026-03-02 18:05

Bot: Hello.
     Another paragraph.
     [Yes] [No, not now]
Mara: tap Yes
# A comment on the way.
wait 4 weeks
restart
Mara: 11 cm: about
"""


def screen(*labels: str, id: int = 1) -> Outgoing:
    return Outgoing(id, Address("terminal", "Mara"), "Which?", (tuple(Button(label, f"{id}.{label}") for label in labels),))


def test_a_script_is_read_line_by_line() -> None:
    assert parse(TEXT).lines == (
        Remark("# What it shows."), Remark(""), BotMessage(("Hello.", "Another paragraph.", "[Yes] [No, not now]")),
        PersonInput("Mara", "tap Yes"), Remark("# A comment on the way."), Wait(timedelta(weeks=4), "wait 4 weeks"), Restart(),
        PersonInput("Mara", "11 cm: about"))


def test_a_script_that_is_written_again_is_the_same_text() -> None:
    assert written(parse(TEXT)) == TEXT


def test_a_line_of_no_kind_is_named_by_its_number() -> None:
    with pytest.raises(ValueError, match="can't read line 3 of the script: wait a bit"):
        parse("begin 2026-03-02 18:05\n\nwait a bit\n")


def test_a_script_without_a_beginning_is_refused() -> None:
    with pytest.raises(ValueError, match="when it begins"):
        parse("Mara: hi\n")


@pytest.mark.parametrize(("words", "event"), [
    ("11 cm", Typed("11 cm")), ("tap Yes", Tapped("1.Yes")), ("send sticker", Sent("sticker", "sticker-1")),
    ("send help", Typed("send help")), ("edit 12 cm", Edited("12 cm"))])
def test_what_a_person_does(words: str, event: object) -> None:
    assert event_of(PersonInput("Mara", words), [screen("Yes", "No")]) == event


def test_a_tap_is_on_the_latest_message_that_has_the_button() -> None:
    assert event_of(PersonInput("Mara", "tap Yes"), [screen("Yes"), screen("Yes", id=2), screen("Done", id=3)]) == Tapped("2.Yes")


def test_a_button_that_is_not_there_can_not_be_tapped() -> None:
    with pytest.raises(ValueError, match="no button “Maybe”"):
        event_of(PersonInput("Mara", "tap Maybe"), [screen("Yes")])


def test_a_message_stands_in_a_script_with_its_buttons_and_its_file() -> None:
    message = Outgoing(1, Address("terminal", "Mara"), "One.\n\nTwo.", ((Button("Yes", "a"),), (Button("Stop", "b"),)),
                       document="{}")
    assert bot_message(message) == BotMessage(("One.", "Two.", "[Yes] [Stop]", "(with a file)"))
