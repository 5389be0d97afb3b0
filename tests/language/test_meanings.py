"""Words for the answers of a choice."""

import pytest

from companion.conversation.flow import Ask
from companion.conversation.slots import phrases_of
from companion.language.act_rules import pattern, rows_of, tables_in
from companion.language.clauses import flat
from companion.language.meanings import applies, meanings
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
