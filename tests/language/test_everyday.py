"""What the bot itself offers, said back to it, is no sign."""

from __future__ import annotations

from companion.conversation.registry import offers_of
from companion.language.flags import hear_flags
from flows.catalogue import BOOK
from tests.corpus.lines import offered


def test_the_names_of_what_is_offered_are_no_signs_however_they_are_said():
    """The corpus has them, and they were learnt from; a few sound like one ("i think the chest fell")."""
    said = offered()
    heard = [text for text in said if hear_flags(text)]
    assert len(heard) <= len(said) // 400, heard


def test_the_names_of_every_test_and_button_are_no_signs():
    """As they are now, learnt from or not: “I want to …”, with a title or the label of a button that begins something."""
    flows = [one.flow for name, one in BOOK.flows.items() if name not in ("crisis", "pain", "signs")]
    names = {flow.title for flow in flows} | {offer.label for flow in flows for offer in offers_of(flow)}
    heard = [name for name in names if hear_flags(f"i want to do {name.lower()}")]
    assert len(heard) <= len(names) // 50, heard
