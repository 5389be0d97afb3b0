"""Frequent questions: answered in other words too, from the lifter's own results, and never permitting what is closed."""

import re
from datetime import UTC, datetime
from itertools import product
from pathlib import Path

import pytest

from companion.conversation.flow import Known
from companion.screening.levels import LEVEL_WORDS
from companion.screening.limits import Work
from companion.screening.safety import Level
from companion.screening.sources import with_numbers
from flows.frequent import ANSWERS, FREQUENT, LIMITED, PERMITS, closed_words, read_topics, says, topic_of
from tests.table import each_row

pytestmark = pytest.mark.unit
CORPUS = Path(__file__).parents[1] / "corpus"
NOW = datetime(2026, 3, 2, 10, tzinfo=UTC)
PERMISSION = re.compile(r"\byou (?:can|may) (?:still )?(?:train|lift|squat|run|go (?:on|deeper|heavier))|go ahead|are normal in a deep|"
                        r"keep the squat days|other training can|keep to what you always|"
                        r"lift at most|no deeper than|stay under that load", re.I)


def known(**facts) -> Known:
    return Known({"today": "2026-03-02", "person": "1", **facts}, NOW)


@each_row(("text", "topic"), [
    ("why does my back do this", "why_round"), ("is it dangerous", "dangerous"), ("how long will it take", "how_long"),
    ("can I deadlift", "deadlift"), ("had 3 beers, can i squat", "alcohol"),
    ("is it ok to train hungover", "alcohol"), ("should i see someone", "see_someone"), ("so whats wrong with me", "findings"),
    ("with shoes or barefoot?", "shoes"), ("do i wear my belt", "belt"), ("sore or hurt?", "sore_or_hurt"),
    ("what did you find", "findings"),
    ("when do i test again", "when_again"), ("what can you do", "can_do"), ("are you a person", "person"), ("am i too old for this", "age"),
    ("is this free", "cost"), ("who can read this", "privacy"), ("how deep should i go", "depth"), ("how heavy should i go", "load"),
    ("do i breathe out on the way up", "breathing"), ("is butt wink bad", "butt_wink_bad"), ("should i stretch more", "mobility"),
    ("how often should i squat", "frequency"), ("is it my long femurs", "bones"), ("can i take ibuprofen before", "painkillers"),
    ("can i squat 65 today", "load"), ("is 80 kg ok", "load"), ("is 80 ok", "this_number"), ("when can i lift again", "limit_stands"),
    ("do i have a slipped disc", "diagnosis"), ("how do i film myself", "filming"), ("can i finish this tomorrow", "how_stop")])
def test_it_is_known_what_is_asked(text, topic):
    assert topic_of(text) == topic


@each_row("topic, level", list(product(FREQUENT, Level)))
def test_no_answer_permits_what_the_level_closes(topic, level):
    one, text = FREQUENT[topic], says(topic, known(**{"safety.level": level.value, "depth.keep": "parallel", "load.limit": "80"}))
    if one.permits and level.rank > PERMITS[one.permits][0].rank:
        assert text == LEVEL_WORDS[level].lifter
    elif not one.permits:
        assert not PERMISSION.search(f"{one.says} {one.found}"), topic


@each_row("text", ["can i squat 65 today", "can i do 80 kg", "is 80 ok", "when can i lift again", "how heavy should i go"])
def test_a_question_about_a_load_is_answered_from_the_weight_a_clinician_named(text):
    stands = {"limit.words": "nothing above 60 kg, until cleared", "limit.kg": 60.0, "load.told": "60", "load.limit": "80"}
    assert stands["limit.words"] in says(topic_of(text), known(**stands))


def test_each_answer_that_tells_how_to_move_squat_or_load_says_so():
    """Written out a second time: one whose ``permits`` were lost would be given at every level."""
    assert {topic: one.permits for topic, one in FREQUENT.items() if one.permits} == {
        "deadlift": "load", "other_training": "load", "belt": "load", "warm_up": "load", "bar_place": "load", "load": "load",
        "breathing": "move", "bracing": "move", "limit_stands": "squat", "knees": "squat", "stance": "squat", "depth": "squat",
        "frequency": "squat"}


@each_row("topic, work", list(product(FREQUENT, (Work.MOVE, Work.SQUAT, Work.LOAD))))
def test_no_answer_permits_what_a_limit_closes(topic, work):
    closed = known(**{"safety.level": "go", work.fact: "closed", "limit.words": "no squats"})
    permits = FREQUENT[topic].permits
    if permits and (work is Work.MOVE or work in PERMITS[permits][1]):
        assert closed_words(permits, closed) == LIMITED
        assert says(topic, closed) == LIMITED.replace("{limit.words}", "no squats")


def test_an_answer_uses_the_lifters_own_results():
    own = known(**{
        "safety.level": "go", "outcome.at": NOW.isoformat(), "coach": "yes", "length": "ruled_out", "strength": "not_tested",
        "control": "likely", "depth.keep": "a_little_above", "load.limit": "80", "due.retest": "2026-03-30T10:00"})
    assert "length ruled out, strength not tested, control likely" in says("why_round", own)
    assert "no deeper than a little above parallel" in says("depth", own)
    assert "at most 80 kg" in says("load", own)
    assert "Monday 30 March" in says("when_again", own)
    assert "You have a coach" in says("coach", own)


@pytest.mark.parametrize(("topic", "said"), [
    ("warm_up", "rise over about 40, 60 and 80 % of your working load"), ("load", "at most 80 % of your usual one"),
    ("age", "no lower at 79 than at 20"), ("women", "men's lower backs bent about 26 degrees and women's about 13")])
def test_an_answer_tells_the_numbers_it_rests_on(topic, said):
    assert said in says(topic, known(**{"safety.level": "go"}))


def test_a_card_tells_the_numbers_of_the_table_and_names_no_row_that_is_not_there():
    """Bars of competition weigh 20 and 15 kg; those of a gym in pounds 45 and 35 lb (common practice)."""
    cards = {name: row.parts for row in ANSWERS.cards for name in row.of}
    assert cards["bar/weight"]["cant"].startswith("Not sure? Take 20 kg (45 lb): ")
    assert "mostly 20 kg (45 lb), a shorter one 15 kg (35 lb)." in cards["bar/weight"]["how"]
    with pytest.raises(KeyError):
        with_numbers("A {bars_of_wood_0} kg bar.")


def test_before_any_result_nothing_is_made_up():
    assert "Nothing yet" in says("findings", known())
    assert "{" not in "".join(says(topic, known()) for topic in FREQUENT)


@pytest.mark.parametrize("row", [
    '[a]\nasked = ["b"]\nsays = "c"\nsources = []\n', '[a]\nasked = ["b"]\nsays = "c"\nsources = ["nowhere"]\n',
    '[a]\nasked = ["b"]\nsays = "c"\nsources = []\nstanding = "hearsay"\n',
    '[a]\nasked = ["b"]\nsays = "c"\nsources = []\nstanding = "fact"\npermits = "all"\n',
    '[a]\nasked = ["b"]\nsays = "c"\nfound = "d"\nsources = []\nstanding = "fact"\n'])
def test_an_answer_without_a_source_or_a_standing_is_refused(row):
    with pytest.raises(ValueError):
        read_topics(row)
