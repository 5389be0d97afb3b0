"""What a lifter reads: reading grade 7 at most, 60 words with caution and progress, three messages at once."""

import re
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings

from companion.conversation.acting import NOT_KNOWN, WAITS
from companion.conversation.answers import HELP_WORDS, UNKNOWN, UNKNOWN_TOO
from companion.conversation.flow import Ask, Tell
from companion.conversation.refusing import NOT_THAT, ON_FROM_HERE, ON_WITH_CARE, STILL_UNCLEAR
from companion.conversation.replies import GOOD
from companion.conversation.wording import MOST_WORDS
from companion.screening.coach_acts import COACH_ACTS
from companion.screening.levels import LEVEL_WORDS
from companion.screening.protocols import rows
from companion.screening.sources import SOURCES, why
from companion.screening.topics import TOPICS, answers
from flows.catalogue import BOOK
from flows.frequent import FREQUENT
from tests.flows.test_outcome import told, whole
from tests.reading_grade import grade, syllables
from tests.screening.build import SCREENS
from tests.table import each_row

pytestmark = pytest.mark.unit

GRADE_MOST = 7
WORDS_LEAST = 8
"""A shorter text has no grade: one long name in it decides (choice)."""
TO_COACHES = ("coach_act", "coach_note", "coach_welcome", "caseload", "digest", "find_lifter", "invite_lifter", "lifter", "lifter_log",
              "lifter_named", "lifter_report", "alert_seen")
SCRIPTS = sorted((Path(__file__).parents[2] / "demo_scripts").glob("*.txt"))


def filled(template: str) -> str:
    return re.sub(r"\{(\w[\w.]*)(?::\w+)?\}", lambda found: {"side": "left", "unit": "cm"}.get(found[1], "five"), template)


def texts() -> dict[str, str]:
    """Every text written in flows, cards, words and frequent questions, by where it stands."""
    found: dict[str, str] = {}
    for name, compiled in BOOK.flows.items():
        for at, step in enumerate(compiled.flow.steps if name not in TO_COACHES else ()):
            if isinstance(step, Ask):
                found[f"{name}/{step.key}"] = f"{step.caution} {step.say}"
                found |= {f"{name}/{step.key}, jump {n}": jump.say for n, jump in enumerate(step.then)}
            elif isinstance(step, Tell):
                found[f"{name}, step {at}"] = step.say
        for gate in compiled.flow.gates:
            found[f"{name}, {gate.say[:20]}"] = gate.say
        if name not in TO_COACHES:
            flow = compiled.flow
            found |= {f"{name}, {what}": getattr(flow, what) for what in ("invite", "missed", "parked", "why")}
    answers = BOOK.answers()
    found |= {f"{', '.join(row.of)}: {part}": words for row in answers.cards for part, words in row.parts.items()}
    found |= {f"word {named}": meaning for named, meaning in answers.words.items()}
    found |= {f"level {level}": words.lifter for level, words in LEVEL_WORDS.items()}
    found |= {f"coach: {name}, {what}": getattr(act, what) for name, act in COACH_ACTS.items() for what in ("told", "undone")}
    found |= {f"said {n}": words for n, words in enumerate((
        *ON_FROM_HERE, *ON_WITH_CARE, *STILL_UNCLEAR, *NOT_THAT, *UNKNOWN_TOO, UNKNOWN, HELP_WORDS, WAITS, NOT_KNOWN, GOOD))}
    return found | {f"topic {one.id}": one.says for one in FREQUENT.values()} | {f"{one.id}, found": one.found for one in FREQUENT.values()}


def said_in(script: Path) -> list[list[str]]:
    """What the bot says in a conversation, the messages after each reply together."""
    turns: list[list[str]] = [[]]
    for line in script.read_text("utf-8").splitlines():
        if line.startswith("Bot: "):
            turns[-1].append(line[5:])
        elif line.startswith("     ") and turns[-1] and not line.strip().startswith("["):
            turns[-1][-1] += f"\n{line.strip()}"
        elif line and not line.startswith((" ", "#")):
            turns.append([])
    return turns


@pytest.mark.parametrize(("text", "expected"), [
    ("The cat sat on the mat.", -1.45),
    ("This sentence, taken as a reading passage unto itself, is being used to prove a point.", 8.35)])
def test_the_grade_is_that_of_worked_examples(text, expected):
    """Both are worked out in encyclopedias (from memory): 6 words of one syllable; 16 words with 24 syllables in one sentence."""
    assert grade(text) == pytest.approx(expected, abs=0.75)


@each_row(("word", "count"), [("squat", 1), ("ankle", 2), ("rounded", 2), ("moved", 1), ("degrees", 2), ("changes", 2),
                                             ("going", 2), ("pieces", 2), ("physiotherapist", 6)])
def test_syllables_are_counted(word, count):
    assert syllables(word) == count


def test_every_text_a_lifter_gets_reads_at_grade_seven():
    hard = {where: (round(grade(filled(text)), 1), text) for where, text in texts().items()
            if len(text.split()) >= WORDS_LEAST and grade(filled(text)) > GRADE_MOST}
    assert not hard


def test_every_answer_to_why_reads_at_grade_seven():
    """Without the names and titles of what it cites."""
    hard = {name: said for name, row in SOURCES.items() if grade(said := why(replace(row, source=""))) > GRADE_MOST
            and grade(why(row)) > GRADE_MOST}
    assert not hard
    assert not [text for topic in TOPICS for text in answers(topic) if len(text.split()) > MOST_WORDS]


@settings(max_examples=60, deadline=None)
@given(SCREENS)
def test_results_of_any_screen_read_at_grade_seven_in_sixty_words(done):
    for choice in ("What it is based on", "What to do now"):
        talk = told(**done)
        whole(talk, choice)
        for text in (say.text for say in talk.says):
            assert len(text.split()) <= MOST_WORDS, text
            assert len(text.split()) < WORDS_LEAST or grade(text) <= GRADE_MOST, text


@each_row("script", SCRIPTS, ids=lambda script: script.stem)
def test_every_message_of_a_conversation_is_short_and_plain(script):
    for text in (text for turn in said_in(script) for text in turn):
        assert len(text.split()) <= MOST_WORDS, text
        assert len(text.split()) < WORDS_LEAST or grade(text) <= GRADE_MOST, text


TRADE_WORDS = {"fold": r"how close (?:is )?(?:the )?thigh", "tail": r"lowest end of the spine",
               "prim(?:e|ed|ing)": r"short, light exercise",
               "bands?": r"step of|four steps", "clean": r"kept its|keeps its"}
"""Words of the trade, each with what explains it."""
NAMES_OF_TESTS = re.compile(r"hip fold|priming (?:drill|trial)", re.IGNORECASE)


def unexplained(said: list[str]) -> list[str]:
    """The messages of a run that use a word of the trade before it was explained."""
    return [text for word, meaning in TRADE_WORDS.items() for n, text in enumerate(said)
            if re.search(rf"\b{word}\b", NAMES_OF_TESTS.sub("", text), re.IGNORECASE)
            and not any(re.search(meaning, one) for one in said[:n + 1])]


@each_row("name", sorted(set(BOOK.flows) - set(TO_COACHES)))
def test_a_word_of_the_trade_is_explained_before_or_where_a_run_first_uses_it(name):
    flow = BOOK[name].flow
    steps = [step.say if isinstance(step, Tell) else " ".join((step.say, *(option.label for option in step.kind.options)))
             for step in flow.steps if isinstance(step, Ask | Tell)]
    assert not unexplained(steps)
    assert not [gate.say for gate in flow.gates if unexplained([gate.say])]


@each_row("script", SCRIPTS, ids=lambda script: script.stem)
def test_what_is_found_out_is_named_with_what_it_is(script):
    """Length, strength and control, where a conversation first speaks of them."""
    said = [text for turn in said_in(script) for text in turn]
    for cause, means in (("length", "room in hip"), ("control", "timing")):
        first = next((text for text in said if re.search(rf"(?<![-\w]){cause}(?: \(|[:,.])", text, re.I)), means)
        assert means in first, first


@each_row("script", SCRIPTS, ids=lambda script: script.stem)
def test_no_message_of_a_conversation_uses_a_word_of_the_trade_unexplained(script):
    assert not unexplained([text for turn in said_in(script) for text in turn])


def test_what_results_and_sources_say_needs_no_word_of_the_trade():
    said = [row.finding for row in rows().values()] + [source.says for source in SOURCES.values()]
    assert not [text for text in said if unexplained([text])]


@each_row("script", SCRIPTS, ids=lambda script: script.stem)
def test_at_most_three_messages_follow_a_reply(script):
    for turn in said_in(script):
        timed = [text for text in turn if re.search(r"seconds|minute|Time\.|about a set", text)]
        assert len(turn) - len(timed) <= 3, turn
