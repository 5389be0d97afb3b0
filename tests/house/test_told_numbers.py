"""What a lifter is told to do has its numbers from the table of sources, by ``with_numbers`` or ``counted``; words and digits alike.

Read are the texts of the flows and of the tests' own modules, and the tables of cards, words and frequent questions; not what people type.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator

import pytest

from tests.house.source import ROOT, modules

_WORDS = "two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen|twenty|thirty|forty|fifty|sixty|ninety|twice|half"
COUNT = re.compile(rf"(\w+ )?(?<![\w.{{:“])((?:{_WORDS}|\d+(?:[.:]\d+)?)\b)(°| ?%| [a-z]\w*)?", re.IGNORECASE)
"""A number of its own, with the word after it, or else the word before it."""
ROOMS = ("flows", "companion/screening", "companion/reminders", "companion/calendar")
TABLES = ("flows/cards.toml", "flows/frequent.toml", "flows/words.toml")
HERE = "tests/house/test_told_numbers.py"
TYPED = frozenset(("command", "sentences", "example_text", "tried", "values", "asked", "named", "words", "log_as"))
"""Fields that hold what people type, or names."""
NO_COUNT = {
    "what people type, or choose from": (
        "3 weeks", "60 kg", "40 kg", "80 kg", "not 60", "at 80",
        "two weeks", "3 january", "1 march", "as 18:30", "meant 12", "20 kg", "with two", "two days",
        "three days", "four weeks", "seven days", "2 hours", "4 hours", "12 hours", "twice a", "40", "60", "9 of", "half a", "is 0.5",
        "half is", "1"),
    "the end of a scale, an angle or an interval": (
        "0", "from 0", "is 0", "0 to", "0 is", "10", "to 10", "of 10", "10 the", "is 90", "up 90", "90 minus", "90 degrees",
        "0 degrees", "up 45", "45°", "90°", "be 70", "70 can", "80 %", "95 %", "95 in", "100", "100 draws", "99 more", "9 more"),
    "a place": ("half way",),
    "the numbers of the printed cards, and of a list": (
        "five printed", "five cards", "five squares", "1 on", "1 to", "2 on", "3 on", "4 on", "4 flat", "4 outside", "5 on", "5 in",
        "5 upright", "2", "3", "4", "5"),
    "as many as are named, drawn or asked for beside it": (
        "the three", "of three", "of 3", "three causes", "three lengths", "three possible", "next two", "two answers",
        "two causes", "two films", "two fit", "two give", "two numbers", "two of", "two pictures", "two plain", "two sets",
        "two things", "two are", "two your", "two were", "two small", "rounds twice", "filmed twice", "tested twice", "four steps",
        "half of"),
    "adulthood": ("under 18", "18 a", "18 on", "18 or"),
    "bodies, days and studies, of which no rule reads it": (
        "two bones", "half their", "two after", "or two", "four to", "eight for", "kim 2015"),
    "each a state of its own (depth_progression)": ("two clean", "two squat"),
    "kept where no flow may read it: backups, codes, the film's reader, the check line of the cards": (
        "seven days", "twelve letters", "two minutes", "20 mb", "75°", "100 %", "10 cm"),
}
"""Counts that are no parameter of anything a lifter is to do, by reason."""


def told_in(tree: ast.AST) -> Iterator[tuple[int, str]]:
    """Yield line and text of all that a module may say: no docstrings, patterns, names, keys or words that people type."""
    for node in ast.iter_child_nodes(tree):
        if (isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)) or isinstance(node, ast.Raise) or (
                isinstance(node, ast.keyword) and node.arg in TYPED):
            continue
        if isinstance(node, ast.Constant):
            if isinstance(node.value, str) and " " in node.value and not re.search(r"\(\?|\\|\[\{|\n ", node.value):
                yield node.lineno, node.value
        elif isinstance(node, ast.Dict):
            yield from (found for one in node.values for found in told_in(ast.Tuple([one])))
        elif isinstance(node, ast.Call) and getattr(node.func, "id", "") == "Option":
            yield from told_in(ast.Tuple(node.args[1:2]))
        elif isinstance(node, ast.Call) and getattr(node.func, "id", "") == "choice":
            yield from told_in(ast.Tuple([one.elts[1] if isinstance(one, ast.Tuple) else one for one in node.args]))
        else:
            yield from told_in(node)


def counts_in(text: str) -> list[str]:
    """Return the counts of a text, each with the word after it, or else the word before it."""
    return [f"{found[2]}{found[3]}".lower() if found[3] else f"{found[1] or ''}{found[2]}".lower() for found in COUNT.finditer(text)]


def all_told() -> Iterator[tuple[str, int, str]]:
    """Yield file, line and count of all that is told."""
    for file, tree in modules(*ROOMS):
        yield from ((file, line, count) for line, text in told_in(tree) for count in counts_in(text))
    for file in TABLES:
        for line, text in enumerate((ROOT / file).read_text("utf-8").splitlines(), 1):
            if re.match("(means|why|how|cant|says|found) = ", text):
                yield from ((file, line, count) for count in counts_in(text))


def test_nothing_that_is_told_has_a_number_of_its_own() -> None:
    stray = [f"{file}:{line}: “{count}”: give it a row in companion/screening/numbers and write {{row:count …}} in with_numbers, or add it "
             f"to {HERE} with the reason" for file, line, count in all_told() if count not in set().union(*NO_COUNT.values())]
    assert not stray, "\n".join(stray)


def test_every_exception_is_told() -> None:
    assert set().union(*NO_COUNT.values()) == {count for _, _, count in all_told()}


def test_a_count_is_found_in_what_is_said_and_not_in_what_is_typed() -> None:
    said = ast.parse('''"""Two sets."""
Tell("Do five squats.")
Ask("how", f"Hold {SECONDS} seconds, {3} times, twice.", choice(Option("a", "For ten seconds", ("six seconds", "7 seconds")),
    ("b", "Two sets", "both 2 sets")), example_text="8 squats")
STEPS = {"9 squats": "Stop half way."}''')
    counts = [(line, count) for line, text in told_in(said) for count in counts_in(text)]
    assert counts == [(2, "five squats"), (3, "twice"), (3, "ten seconds"), (4, "two sets"), (5, "half way")]


@pytest.mark.parametrize("text", ["One leg, both sides.", "Do {set_squats:count squats}.", "{row_0} cm", "the second one", "80kg"])
def test_no_count_is_found_where_there_is_none(text: str) -> None:
    assert not counts_in(text)
