"""The catalogue: what it works out at once, and what only when it is first asked for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import pytest

from companion.conversation.flow import Ask, Flow, Run, Tell
from companion.conversation.kinds import Ready
from companion.conversation.registry import Book, Flows, bind
from flows.catalogue import BOOK, FlowFiles
from tests.table import each_row

HOME = Flow("home", 1, "Menu", steps=(Tell("Menu."),))
CODES = Flow("link", 1, "A code", sentences=(r"code (?P<asked>[a-z]{4})",), steps=(Tell("Thank you."),))
TWICE = Flow("twice", 1, "Twice", steps=(Ask("a", "?", Ready()), Ask("a", "?", Ready())))


class Folder(Mapping[str, Flow]):
    """Flows that note when they were read."""

    def __init__(self, *flows: Flow) -> None:
        self.flows = {flow.name: flow for flow in flows}
        self.read: list[str] = []

    def __getitem__(self, name: str) -> Flow:
        self.read.append(name)
        return self.flows[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self.flows)

    def __len__(self) -> int:
        return len(self.flows)


def test_a_flow_is_read_when_it_is_first_asked_for_and_compiled_once():
    folder = Folder(HOME, CODES)
    book = Book(Flows(folder), "home", "home")
    assert folder.read == []
    assert book["home"] is book["home"]
    assert folder.read == ["home"]


def test_a_code_is_heard_by_the_flow_of_codes_alone():
    folder = Folder(HOME, CODES)
    book = Book(Flows(folder), "home", "home", link="link")
    assert (book.code("Code abcd."), book.code("code"), book.brings_code("code abcd")) == ("abcd", None, True)
    assert set(folder.read) == {"link"}
    assert book.sentence("code abcd") == ("link", "abcd")


def test_a_book_without_a_flow_for_codes_hears_none():
    assert bind([HOME, CODES], "home", "home").code("code abcd") is None


def test_a_flow_that_can_not_be_compiled_is_told_when_it_is_asked_for():
    book = bind([HOME, TWICE], "home", "home")
    assert "twice" in book.flows
    with pytest.raises(ValueError, match="twice"):
        book["twice"]


def test_what_is_wrong_among_the_flows_is_told_when_words_are_first_looked_up():
    lost = Flow("lost", 1, "Lost", steps=(Run("gone"),))
    with pytest.raises(ValueError, match="gone, which is not there"):
        Book(Flows({"home": HOME, "lost": lost}), "home", "home").command("menu")
    with pytest.raises(ValueError, match="the flow in menu is called home"):
        Book(Flows({"menu": HOME}), "menu", "menu").command("menu")


def test_the_flows_of_the_bot_fit_together_and_all_compile():
    assert BOOK.command("menu") == BOOK.home
    assert {compiled.flow.name for compiled in BOOK.flows.values()} == set(BOOK.flows)
    assert {BOOK.home, BOOK.pain, BOOK.link} <= set(BOOK.flows)


@each_row("name", ["catalogue", "shared", "day_facts", "", ".", "os", "welcome.FLOW", "../welcome", "__init__"])
def test_only_a_file_with_a_flow_is_one(name: str):
    assert name not in FlowFiles()
    assert BOOK.flows.get(name) is None
