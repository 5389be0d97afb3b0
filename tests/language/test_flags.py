"""Flags are heard however they are typed; denials, other people and training talk are not taken for them."""

from __future__ import annotations

import subprocess
import sys
import zlib
from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from functools import cache, lru_cache
from pathlib import Path
from time import process_time
from timeit import timeit
from typing import NamedTuple

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.language.flags import URGENT, Flag, Heard, classifier, hear_flags, judged, patterns, rules, things
from companion.language.flags.tables import SIGN_TABLES, context
from tests.by_night import BY_NIGHT
from tests.corpus import learn_flags
from tests.corpus import lines as corpus
from tests.table import each_row

CORPUS = Path(corpus.__file__).parent


class Floors(NamedTuple):
    """What is held of an unseen part: measured, then set. Wanted: every urgent one asked about, 0.98 of the rest, 0.05 false."""

    urgent_missed: int
    rest: float
    rest_named: float
    urgent_named: float
    false_most: float


FLOORS = {"unseen": Floors(4, 0.98, 0.98, 0.98, 0.05), "unseen_2": Floors(5, 0.97, 0.96, 0.98, 0.07),
          "unseen_3": Floors(5, 0.97, 0.96, 0.96, 0.07), "unseen_4": Floors(5, 0.98, 0.98, 0.98, 0.06),
          "unseen_5": Floors(5, 0.98, 0.98, 0.98, 0.06), "unseen_6": Floors(5, 0.98, 0.98, 0.98, 0.07),
          "unseen_7": Floors(5, 0.98, 0.98, 0.98, 0.06)}

SAID = {
    Flag.WEAKNESS: ["my leg gave way", "foot keeps slapping the floor", "my toes wont lift", "no strength in my left foot", "leg weakness"],
    Flag.BLADDER_BOWEL: ["i cant pee", "wet myself", "lost control of my bowels", "cant tell when i need the toilet", "bladder problems"],
    Flag.SADDLE: ["numb between my legs", "cant feel it when i wipe", "my bum cheeks are numb", "pins and needles in my privates"],
    Flag.SEXUAL: ["cant get an erection", "sex feels numb", "cant orgasm anymore"],
    Flag.CHEST: ["chest pain", "i fainted", "my heart keeps skipping beats", "cant breathe", "lightheaded"],
    Flag.HEART_HISTORY: ["i had a heart attack", "ive got a stent", "pacemaker fitted in 2015"],
    Flag.FEVER: ["i have a fever", "im ill", "chest infection"],
    Flag.FALL: ["i fell down the stairs yesterday", "had a car accident", "banged my head"],
    Flag.CANCER_BONE: ["i had breast cancer", "osteoporosis", "on prednisolone for years"],
    Flag.WEIGHT_LOSS: ["losing weight without trying", "unexplained weight loss"],
    Flag.PREGNANCY: ["im pregnant", "gave birth 6 weeks ago", "might be pregnant"],
    Flag.SPINE_HISTORY: ["slipped disc in 2015", "had a spinal fusion", "scoliosis"],
    Flag.ANTICOAGULANTS: ["im on warfarin", "i take blood thinners"],
    Flag.RESTRICTION: ["doctor told me not to lift", "physio said no squatting", "not allowed to bend, doctors orders"],
    Flag.UNDER_18: ["im 16 btw", "im in year 9", "i turn 17 next month"],
    Flag.SELF_HARM: ["i want to kill myself", "dont want to be here anymore", "theyd be better off without me", "im just a burden"],
}
EACH = [(flag, text) for flag, texts in SAID.items() for text in texts]
ORDINARY = [
    "", "12", "left 11 right 13", "done", "no", "no fever", "not pregnant", "never had heart trouble", "bladder is fine", "can i pee first",
    "dead after legs", "this is killing me lol", "dying here", "heart was racing after the set", "weak point is my core",
    "left side always weaker in bird dog", "hit 160 for 16", "im 34", "dropped 5kg on purpose, cutting", "sick gains bro",
    "my dad had a heart attack", "my wife is pregnant", "mum is on warfarin", "my son is 16", "my mate fell off a ladder",
    "doctor says i can lift", "ill do it tomorrow", "fell asleep, sorry", "chest up is my cue", "no trouble peeing", "not suicidal",
    "no falls", "no numbness down there",
    "my dad died of cancer", "i give up", "hard pass", "fever: no", "chest pain? none", "groin stretch was good", "👍", "\x00",
]  # fmt: skip
# What tips the scale: the first is heard, the second is not.
PAIRS = [
    (Flag.FEVER, "im ill today", "ill do it today"),
    (Flag.FEVER, "i have a fever", "no fever or chills"),
    (Flag.PREGNANCY, "expecting in june", "harder than i was expecting"),
    (Flag.PREGNANCY, "im pregnant", "my sister is pregnant"),
    (Flag.UNDER_18, "im 16", "im 16 weeks in"),
    (Flag.UNDER_18, "im 16 and new to this", "i started lifting at 16"),
    (Flag.UNDER_18, "only 15", "got 15 on the left"),
    (Flag.WEAKNESS, "left leg is weaker since friday", "left leg always weaker on lunges"),
    (Flag.WEAKNESS, "my knee buckled under me on the stairs", "knees cave in on heavy squats"),
    (Flag.BLADDER_BOWEL, "need to pee but nothing comes", "need to pee, back in a sec"),
    (Flag.BLADDER_BOWEL, "pissed myself last night", "pissed myself laughing"),
    (Flag.BLADDER_BOWEL, "my bladder stopped working", "my bladder is working"),
    (Flag.WEIGHT_LOSS, "lost 12 lb this month, not on purpose", "lost 12 lb this month on purpose"),
    (Flag.CHEST, "came over all light and had to sit", "went light today, 60 all the way down"),
    (Flag.SADDLE, "bum is numb since the deadlift", "numb bum from the office chair"),
    (Flag.CHEST, "my chest is tight", "keep the bar tight to my chest"),
    (Flag.CHEST, "i passed out", "no never passed out"),
    (Flag.HEART_HISTORY, "had a heart attack last year", "the dog nearly gave me a heart attack"),
    (Flag.SPINE_HISTORY, "i have a bulging disc", "two discs on the bar, 10 each"),
    (Flag.CANCER_BONE, "i had cancer", "my boss had cancer"),
    (Flag.ANTICOAGULANTS, "on blood thinners", "i dont take blood thinners"),
    (Flag.RESTRICTION, "physio said no squats", "physio said squats are fine"),
    (Flag.RESTRICTION, "surgeon told me not to bend", "nobody told me not to lift"),
    (Flag.WEIGHT_LOSS, "lost 5kg without trying", "lost 5kg cutting for a meet"),
    (Flag.FALL, "fell down the stairs", "fell over laughing"),
    (Flag.SELF_HARM, "i want to die", "those squats made me want to die"),
    (Flag.SELF_HARM, "i cant go on like this", "cant go on, arms full"),
    (Flag.SELF_HARM, "im suicidal", "suicide grip or thumbs round"),
    (Flag.SELF_HARM, "sick of being here", "sick of being weak"),
    (Flag.SELF_HARM, "i cut myself again", "i cut myself on the rack"),
    (Flag.SELF_HARM, "cant stand living anymore", "cant stand on my left leg anymore"),
    (Flag.SELF_HARM, "cant do this anymore, life i mean", "cant do the low bar"),
    (Flag.SEXUAL, "cant get hard anymore", "hard to get up early"),
]
DOUBTFUL = [
    (Flag.PREGNANCY, "i dont think im pregnant"), (Flag.PREGNANCY, "might be pregnant"),
    (Flag.HEART_HISTORY, "my dad had a heart attack and so did i"), (Flag.CHEST, "chest pain?"), (Flag.FEVER, "not sure if i have a fever"),
    (Flag.SELF_HARM, "i dont want to do this anymore"), (Flag.SELF_HARM, "i hang myself from the bar to decompress"),
]  # fmt: skip


# Heard by the second layer only.
UNFORESEEN = ["i keep knocking my toes on every step these days", "it all feels far off when i sit on the bike",
              "dont see a reason to get up any more"]  # fmt: skip


def flags_of(text: str) -> set[Flag]:
    return {heard.flag for heard in hear_flags(text)}


@each_row(("flag", "text"), EACH)
def test_a_flag_is_heard(flag: Flag, text: str) -> None:
    assert flag in flags_of(text)


@each_row("text", ORDINARY)
def test_an_ordinary_or_denying_message_carries_none(text: str) -> None:
    assert hear_flags(text) == ()


@each_row(("flag", "said", "unsaid"), PAIRS)
def test_what_tips_the_scale(flag: Flag, said: str, unsaid: str) -> None:
    assert flag in flags_of(said)
    assert flag not in flags_of(unsaid)


@pytest.mark.parametrize(("flag", "text"), DOUBTFUL)
def test_the_doubtful_is_heard_and_not_sure(flag: Flag, text: str) -> None:
    assert [heard.sure for heard in hear_flags(text) if heard.flag is flag] == [False]


def test_self_harm_stands_first_and_the_sure_before_the_doubtful() -> None:
    heard = hear_flags("my leg gave way, might be pregnant, and i want to kill myself")
    assert [one.flag for one in heard] == [Flag.SELF_HARM, Flag.WEAKNESS, Flag.PREGNANCY]
    assert [one.sure for one in heard] == [True, True, False]


def test_the_words_are_the_part_of_the_message_as_it_was_typed() -> None:
    assert hear_flags("Left 11. Im PREGNANT btw") == (Heard(Flag.PREGNANCY, True, "PREGNANT"),)
    assert hear_flags("ｌｅｆｔ 11, I’m on wárfarin")[0].words == "wárfarin"


@each_row(
    ("flag", "text"),
    [(Flag.PREGNANCY, "imPregnant"), (Flag.CHEST, "chestpain"), (Flag.PREGNANCY, "i'm pregnnat"), (Flag.CHEST, "palpitatons"),
     (Flag.BLADDER_BOWEL, "cant controll my blader"), (Flag.ANTICOAGULANTS, "warfrin"), (Flag.SELF_HARM, "im sucidal"),
     (Flag.WEAKNESS, "leg weekness"), (Flag.SADDLE, "nummness in my crotch"), (Flag.SPINE_HISTORY, "herniatd disc"),
     (Flag.BLADDER_BOWEL, "I can’t pee"), (Flag.BLADDER_BOWEL, "CANT PEE!!!"), (Flag.FEVER, "feverrrr")],
)  # fmt: skip
def test_slips_of_typing_do_not_hide_a_flag(flag: Flag, text: str) -> None:
    assert flag in flags_of(text)


@pytest.mark.parametrize("word", ["fever", "chest pain", "palpitations", "blood thinners", "osteoporosis", "cancer", "heart trouble"])
@pytest.mark.parametrize(
    "denial", ["no {}", "no, no {}", "never had {}", "i dont have any {}", "without {}", "no history of {}", "{}: no", "{}? nope"]
)
def test_a_denied_sign_is_not_heard(word: str, denial: str) -> None:
    assert hear_flags(denial.format(word)) == ()
    assert hear_flags(f"{denial.format(word)}. but i fainted yesterday") != ()


def test_no_pattern_uses_an_unknown_group_and_every_group_is_used() -> None:
    every = [*(signs.patterns for signs in SIGN_TABLES), *context.ORDINARY_SIGNS.values(), context.READ_AS, context.OTHERS,
             context.UNSUSPECTED]
    code = (Path(module.__file__).read_text("utf-8") for module in (rules, judged, things))
    text = "".join([*every, context.FAMILY, context.NOUNS, *context.SIGN_WORDS.values(), *code])
    assert [name for name in context.SIGN_WORDS if f"<{name}>" not in text] == []
    assert context.ORDINARY_SIGNS.keys() == context.CONCERNS.keys()


def test_every_flag_has_sure_signs() -> None:
    assert {signs.flag for signs in SIGN_TABLES if signs.sure} == set(Flag)


def test_a_pattern_must_begin_with_a_word() -> None:
    with pytest.raises(ValueError, match="begin"):
        list(patterns.patterns("    ~ fever"))


def test_what_may_not_follow_stands_at_the_end_of_a_pattern() -> None:
    with pytest.raises(ValueError, match="end"):
        list(patterns.patterns("    fever !pitch & i"))


@given(st.text(alphabet=st.characters(), max_size=400))
def test_nothing_typed_makes_it_fail(text: str) -> None:
    assert all(heard.words in text and heard.words for heard in hear_flags(text))


@given(st.lists(st.sampled_from([*(text for _, text in EACH), *ORDINARY, "no", "not", "but", ",", "?", "my dad", "if", "12"]), max_size=6))
def test_each_flag_is_heard_once_and_in_order(parts: list[str]) -> None:
    heard = hear_flags(" ".join(parts))
    assert max(Counter(one.flag for one in heard).values(), default=1) == 1
    assert Flag.SELF_HARM not in [one.flag for one in heard[1:]]


AROUND = ["{}!", "{}...", "  {}  ", "{} btw", "left 11. {}", "done\n{}", "ok. {}. right 12", "11 and 12, {}"]


@given(st.sampled_from(EACH), st.sampled_from(AROUND))
def test_a_flag_is_heard_inside_an_answer(each: tuple[Flag, str], around: str) -> None:
    assert each[0] in flags_of(around.format(each[1]))


@given(st.sampled_from(EACH))
def test_capitals_change_nothing(each: tuple[Flag, str]) -> None:
    assert flags_of(each[1].upper()) == flags_of(each[1].capitalize()) == flags_of(each[1])


@pytest.mark.parametrize("junk", ["no ", "cant ", "my leg ", "numb, ", "i want to ", "ﷺ", "weight lost not ", "chest ", "a"])
def test_sixty_four_kibibytes_are_read_in_seconds(junk: str) -> None:
    text = (junk * 65536)[:65536]
    assert timeit(lambda: hear_flags(text), timer=process_time, number=1) < 10


def test_the_tables_come_with_the_first_message_and_the_weights_with_the_first_the_rules_hear_nothing_in() -> None:
    code = (
        "import sys; from companion.language.flags import hear_flags; "
        "assert 'companion.language.flags.tables' not in sys.modules; hear_flags('im pregnant and i have a fever'); "
        "from companion.language.flags import classifier; "
        "loaded = lambda: classifier.weights.cache_info().currsize; assert not loaded(); hear_flags('left 11'); assert loaded()"
    )
    subprocess.run([sys.executable, "-c", code], check=True, cwd=CORPUS.parent.parent)


messages_hash = cache(learn_flags.messages_hash)

_hear_once = lru_cache(maxsize=1 << 12)(hear_flags)
"""For the unseen, of which several tests ask."""


def _recall(name: str, *, named: bool = False) -> dict[Flag, tuple[int, int]]:
    """How often each flag of a file is heard, of how many times it is said; ``named``: or is among those its question names."""
    heard: Counter[Flag] = Counter()
    said: Counter[Flag] = Counter()
    for flags, text in corpus.flagged_lines(name):
        said.update(flags)
        heard.update(flags & {flag for one in _hear_once(text) for flag in (one.named if named else (one.flag,))})
    return {flag: (heard[flag], said[flag]) for flag in sorted(said, key=lambda flag: flag.value)}


def _share(recall: dict[Flag, tuple[int, int]], flags: frozenset[Flag]) -> float:
    return sum(recall[flag][0] for flag in flags) / sum(recall[flag][1] for flag in flags)


def _false(name: str, hear: Callable[[str], tuple[Heard, ...]] = hear_flags, every: int = 1) -> tuple[int, int]:
    lines = corpus.lines_of(name)[::every]
    return sum(bool(hear(line)) for line in lines), len(lines)


def test_every_flag_of_the_seen_corpus_is_heard() -> None:
    missed = [(flags - flags_of(text), text) for flags, text in corpus.flagged_lines("flags_seen.tsv") if flags - flags_of(text)]
    assert missed == []


def test_something_is_heard_in_what_the_rules_and_weights_were_made_from() -> None:
    """By day one line in a hundred."""
    heard = [bool(hear_flags(text)) for name in corpus.FLAGGED for _, text in corpus.flagged_lines(name)[::1 if BY_NIGHT else 100]]
    assert sum(heard) / len(heard) >= 0.98


CONTRASTED = {f"not_flags_more_{writer}.txt": most for most, writers in (
    (0.1, ("e", "t", "v", "x", "z", "zf", "zx", "zzh", "zzzb", "zzzf", "zzzl", "zzzm", "zzzn")),
    (0.2, ("zb", "zc", "zza", "zzzi", "zzzq"))) for writer in writers}


@pytest.mark.parametrize(
    ("name", "most"), [*((name, 0.03) for name in corpus.MOSTLY_UNFLAGGED),
                       *((name, CONTRASTED.get(name, 0.06)) for name in corpus.UNFLAGGED)])
def test_ordinary_messages_seldom_raise_a_flag(name: str, most: float) -> None:
    """The second were written to be taken for flags, those contrasted, line by line, as near to real ones as may be. By day one line in
    ten, of which one more may."""
    false, of = _false(name, every=1 if BY_NIGHT else 10)
    assert false <= most * of + (0 if BY_NIGHT else 1)


@given(st.lists(st.sampled_from([*(text for _, text in EACH), *ORDINARY, *UNFORESEEN, "no", "but", ",", "my dad", "12"]), max_size=5))
def test_what_is_learnt_only_adds_one_doubtful_flag_and_what_else_a_doubt_may_mean_or_drops_the_only_one(parts: list[str]) -> None:
    text = " ".join(parts)
    before, after = rules.by_the_rules(text), hear_flags(text)
    if len(before) == 1 and not after:
        return
    added = [one for one in after if replace(one, also=()) not in before]
    assert len(after) == len(before) + len(added)
    assert not added or ([one.sure for one in added] == [False] and [one.sure for one in before] in ([], [True]))
    assert not any(one.also for one in after if one.sure or len(after) > 1)


@each_row("text", [*UNFORESEEN, *(text for _, text in DOUBTFUL)])
def test_a_doubt_names_three_signs_at_most_and_none_twice(text: str) -> None:
    named = hear_flags(text)[0].named
    assert len(set(named)) == len(named) <= classifier.NAMED_MOST


@each_row("text", ["these sqauts r killing me", "these squats r killing me", "my coach had a heart bypass",
                                  "somebody in my spin class has a pacemaker", "nobody's told me not to lift",
                                  "nothing wrong with my waterworks", "fever pitch in here", "legs both strong, no giving way",
                                  "not sure I hit depth on the last ones to be honest",
                                  "steroids are cheating"])
def test_what_was_once_taken_for_a_sign_is_not(text: str) -> None:
    assert hear_flags(text) == ()


DENIED_OR_NOBODYS_NOW = [
    "bladder as regular as clockwork", "no to fever, no to falls", "never been treated for cancer or anything like it",
    "wouldnt dream of hurting myself", "physio has set no limits at all", "surgeon signed me off with no restrictions",
    "my doctor never said i cant lift", "toes lift fine, no dragging", "chap at work passed out in a meeting",
    "girl behind me fainted on the bike", "a lad i train with slipped a disc", "my coworkers ticker is dodgy",
    "mum-in-law is on warfarin", "her doctor said no bending", "watched a drama about cancer", "had covid in about 2020",
    "fell off the swings as a kid, still laugh about it", "overdosed on cheese last night",
]  # fmt: skip
STILL_HEARD = [
    (Flag.CHEST, "no dizziness but i fainted"), (Flag.CHEST, "a guy at work saw that i fainted"),
    (Flag.CHEST, "never felt anything like this chest pain"), (Flag.HEART_HISTORY, "my dad and i both had a heart attack"),
    (Flag.FEVER, "parents both have the flu and so do i"), (Flag.BLADDER_BOWEL, "bladder is regular but i cant hold it"),
    (Flag.RESTRICTION, "her doctor said no bending and mine did too"),
    (Flag.FALL, "fell when i was a kid and my back has been bad ever since"), (Flag.SELF_HARM, "no to living"),
    (Flag.SELF_HARM, "nobody would notice if i was gone"), (Flag.SELF_HARM, "overdosed on tablets last night"),
    (Flag.SELF_HARM, "nobody needs me, took all my tablets"), (Flag.CHEST, "no strength in my foot, chest pain"),
    (Flag.WEAKNESS, "i cant stand on my left leg anymore"),
]  # fmt: skip


@each_row("text", DENIED_OR_NOBODYS_NOW)
def test_the_rules_hear_nothing_denied_nor_of_others_nor_long_over(text: str) -> None:
    assert rules.by_the_rules(text) == ()


@each_row(("flag", "text"), STILL_HEARD)
def test_the_rules_hear_what_a_denial_or_somebody_else_stands_beside(flag: Flag, text: str) -> None:
    assert flag in {heard.flag for heard in rules.by_the_rules(text)}


@pytest.mark.parametrize(("flag", "text"), [
    (Flag.BLADDER_BOWEL, "nearly wet myself getting to the loo, third time"), (Flag.SELF_HARM, "id rather die than live like this"),
    (Flag.SELF_HARM, "i cant go on like this"), (Flag.HEART_HISTORY, "my uncle and i both had a heart attack"),
    (Flag.FALL, "i had a car accident on the motorway"), (Flag.SELF_HARM, "i gave all my things away"),
    (Flag.SEXUAL, "cant get it up for my wife")])  # fmt: skip
def test_what_is_like_it_and_meant_still_is(flag: Flag, text: str) -> None:
    assert flag in flags_of(text)


@pytest.mark.parametrize("text", UNFORESEEN)
def test_what_no_rule_foresaw_is_asked_about(text: str) -> None:
    assert rules.by_the_rules(text) == ()
    assert [one.sure for one in hear_flags(text)] == [False]


def test_what_the_rules_drop_is_not_weighed() -> None:
    for text, sign in (("no fever, left 11", "fever"), ("my dad had a heart attack", "attack")):
        left, words = rules.unexplained(text)
        assert sign not in words
        assert sign not in left


def test_the_words_of_a_suspected_flag_are_its_sentence() -> None:
    text = f"left 11, right 12. {UNFORESEEN[0]}. done"
    assert [one.words for one in hear_flags(text)] == [UNFORESEEN[0]]


def test_the_shipped_weights_of_flags_were_learnt_from_the_corpus_as_it_is() -> None:
    """Else run tests.corpus.learn_flags."""
    file = zlib.decompress((corpus.LANGUAGE / "flags" / "weights.bin").read_bytes())
    assert file.endswith(messages_hash().encode())


@pytest.mark.skipif(not BY_NIGHT, reason="a minute of fitting: HYPOTHESIS_PROFILE=night runs it")
def test_the_shipped_weights_of_flags_are_what_the_corpus_gives() -> None:
    """A step of rounding apart at most."""
    learnt, shipped = learn_flags.learn_flags(learn_flags.messages()), classifier.weights()
    for flag in learnt:
        assert abs(learnt[flag].start - shipped[flag].start) <= 1
        assert all(abs(one - other) <= 1 for one, other in zip(learnt[flag].at, shipped[flag].at, strict=True))


def test_the_weights_of_flags_are_written_as_they_are_read_and_small() -> None:
    file = (corpus.LANGUAGE / "flags" / "weights.bin").read_bytes()
    assert classifier.written(classifier.weights(), messages_hash()) == file
    assert len(file) < 1_100_000


@pytest.mark.skipif(not BY_NIGHT, reason="a minute of fitting a writer: HYPOTHESIS_PROFILE=night runs it")
def test_the_second_layer_hears_a_writer_it_has_not_learnt_from(told: Callable[[str], None]) -> None:
    """Four ordinary messages in a hundred are what it may cost."""
    found = learn_flags.flag_figures(learn_flags.flags_left_out(learn_flags.messages()), classifier.THRESHOLD)
    told(f"flags, second layer alone, writer left out: heard {found.heard} of {found.flagged}, added {found.added} of {found.unflagged}")
    assert found.heard / found.flagged >= 0.6
    assert found.added / found.unflagged <= 0.04


SETS = pytest.mark.parametrize("of", ["unseen", *(pytest.param(one, marks=pytest.mark.skipif(
    not BY_NIGHT, reason="five more sets of 8,300 lines: HYPOTHESIS_PROFILE=night runs them")) for one in list(FLOORS)[1:])])


@SETS
def test_unseen_flags_are_heard(told: Callable[[str], None], of: str) -> None:
    recall, named = _recall(f"flags_{of}.tsv"), _recall(f"flags_{of}.tsv", named=True)
    lines = corpus.flagged_lines(f"flags_{of}.tsv")
    asked = Counter(flag for flags, text in lines if _hear_once(text) for flag in flags)
    both, alone = sum(bool(_hear_once(text)) for _, text in lines), sum(bool(rules.by_the_rules(text)) for _, text in lines)
    told(f"flags, {of}: a flag is heard in {both} of {len(lines)} messages, by the rules alone in {alone}")
    assert both > alone, "the rules were not written from these either"
    for flag, (heard, said) in recall.items():
        told(f"flags, {of}: {flag.value} asked about {asked[flag]} of {said}, heard or named {named[flag][0]}, named first {heard}")
    rest = frozenset(recall) - URGENT
    in_rest = sum(asked[flag] for flag in rest) / sum(recall[flag][1] for flag in rest)
    told(f"flags, {of}: the rest asked about {in_rest:.3f}, heard or named {_share(named, rest):.3f}; "
         f"urgent heard or named {_share(named, URGENT):.3f}")
    assert sum(said - asked[flag] for flag, (_, said) in recall.items() if flag in URGENT) <= FLOORS[of].urgent_missed
    assert in_rest >= FLOORS[of].rest
    assert _share(named, rest) >= FLOORS[of].rest_named
    assert _share(named, URGENT) >= FLOORS[of].urgent_named


@SETS
def test_unseen_ordinary_messages_seldom_raise_a_flag(told: Callable[[str], None], of: str) -> None:
    (false, lines), (by_rules, _) = _false(f"not_flags_{of}.txt"), _false(f"not_flags_{of}.txt", rules.by_the_rules)
    told(f"flags, {of}: {false} false of {lines}; the rules alone {by_rules}")
    assert false / lines <= FLOORS[of].false_most


@each_row(("whole", "near", "heard"), [(-1000, -1000, False), (-1000, 1000, True), (1000, -1000, True)])
def test_what_the_rules_hear_is_dropped_only_where_what_stands_near_it_speaks_against_it_too(whole: int, near: int, heard: bool) -> None:
    text = "left side was 11 today and the right one 12, got a fever this morning, will do the other test tomorrow after work then"
    with pytest.MonkeyPatch.context() as patch:
        each = dict.fromkeys(Flag, -1000)
        patch.setattr(rules, "weigh", lambda said, *_: classifier.Weighed(whole if said == text else near, each))
        assert [one.flag for one in hear_flags(text)] == [Flag.FEVER] * heard


def test_in_a_short_sentence_nothing_is_lost_beside_what_stands_near_it() -> None:
    """"No dizziness" is nothing, however the words right around "dizziness" may look alone."""
    text = "left side was 11 today and the right one 12, got a fever this morning"
    with pytest.MonkeyPatch.context() as patch:
        each = dict.fromkeys(Flag, -1000)
        patch.setattr(rules, "weigh", lambda said, *_: classifier.Weighed(-1000 if said == text else 1000, each))
        assert flags_of(text) == set()
        assert flags_of(f"{text}, so that was that") == {Flag.FEVER}


def test_a_message_of_few_words_is_what_the_rules_hear() -> None:
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(rules, "weigh", lambda *_: classifier.Weighed(-1000, dict.fromkeys(Flag, -1000)))
        assert flags_of("got a fever") == {Flag.FEVER}
        assert flags_of("still got a fever") == set()


@pytest.mark.parametrize(("sure", "urgent"), classifier.AGAINST)
def test_the_surer_or_the_more_urgent_the_more_must_speak_against_it(sure: bool, urgent: bool) -> None:
    heard, most = Heard(Flag.CHEST if urgent else Flag.FEVER, sure, ""), classifier.AGAINST[sure, urgent]
    assert classifier.Weighed(most, {}).against(heard)
    assert not classifier.Weighed(most + 1, {}).against(heard)
    assert most <= classifier.AGAINST[False, False]
    assert classifier.AGAINST[True, True] < min(most for of, most in classifier.AGAINST.items() if not all(of))


@each_row(("some", "urgent", "rest", "words", "asked"), [
    (0, -300, -300, 5, False), (1, -300, -300, 5, True), (-300, -70, -300, 9, False), (-300, -69, -300, 9, True),
    (-300, -20, -300, 8, False), (-300, -19, -300, 8, True), (-300, -300, 300, 5, False), (150, 300, 300, 1, False),
    (151, -300, -300, 1, True)])
def test_for_an_urgent_flag_less_must_speak_and_for_a_single_word_more(some: int, urgent: int, rest: int, words: int, asked: bool) -> None:
    each = {flag: urgent if flag is Flag.SADDLE else rest if flag is Flag.FEVER else -300 for flag in Flag}
    assert classifier.Weighed(some, each).asked(words) is asked


@each_row(("odds", "words", "asked"), [(0, 9, False), (1, 9, True), (60, 8, False), (61, 8, True)])
def test_thoughts_of_self_harm_are_asked_about_from_a_sum_of_their_own(odds: int, words: int, asked: bool) -> None:
    each = {flag: odds if flag is Flag.SELF_HARM else -300 for flag in Flag}
    assert classifier.Weighed(-300, each).asked(words) is asked


@each_row(("sentence", "whole", "heard"), [(-1000, 1000, [Flag.CHEST]), (-1000, -1000, []), (1000, -1000, [Flag.FEVER, Flag.CHEST])])
def test_what_the_rules_hear_is_judged_sentence_by_sentence_and_what_is_urgent_in_the_whole_too(
    sentence: int, whole: int, heard: list[Flag],
) -> None:
    text = "throwing up a new shelf in the garage tonight. we all nearly fainted in the heat of the hall"
    with pytest.MonkeyPatch.context() as patch:
        each = dict.fromkeys(Flag, -1000)
        patch.setattr(rules, "weigh", lambda said, *_: classifier.Weighed(whole if said == text else sentence, each))
        assert {one.flag for one in rules.by_the_rules(text)} == {Flag.FEVER, Flag.CHEST}
        assert {one.flag for one in hear_flags(text)} >= set(heard)
        assert bool(hear_flags(text)) is bool(heard or whole > 0)


def test_beside_ordinary_sentences_a_sign_is_heard_and_they_raise_few() -> None:
    """Of twelve notes of eight sentences each, none of which raises a flag by itself; a sign is heard among them all the same."""
    notes = [line for line in corpus.lines_of("not_flags_more_zzb.txt")[:300] if len(line.split()) > 5 and not hear_flags(line)]
    texts = [". ".join(notes[at : at + 8]) for at in range(0, 96, 8)]
    assert sum(bool(hear_flags(text)) for text in texts) <= 5
    assert all(hear_flags(f"{text}. {UNFORESEEN[2]}") for text in texts)


@each_row("text", ["depth was consistent on every single set today. i have a stent though",
                   "had no fever all of last week, felt good. today i have a fever"])
def test_a_flag_is_judged_where_its_words_stand_and_not_where_they_are_part_of_others(text: str) -> None:
    with pytest.MonkeyPatch.context() as patch:
        against, for_it = (classifier.Weighed(some, dict.fromkeys(Flag, some)) for some in (-1000, 1000))
        patch.setattr(rules, "weigh", lambda said, *_: for_it if said.startswith(("i have", "today")) else against)
        assert next(one.flag for one in hear_flags(text)) in (Flag.HEART_HISTORY, Flag.FEVER)


STROKES = ["half of my face just went numb", "my smile is all lopsided", "one corner droops, i mean my mouth droops",
           "my right hand is limp and my speech is garbled", "the words come out all jumbled", "suddenly i cant talk properly",
           "the left side of my body went weak", "cheek numb and my arm is weak"]
NO_STROKES = ["slurred a bit after six pints", "lips numb from the chilli", "my face dropped when i saw the score",
              "face in the pillow, arms dead",
              "arm numb from sleeping on it", "my uncle had slurred speech", "no slurred speech, face is fine", "knees drooping inwards",
              "cant get the words on the screen any bigger", "in a few words: my arm is weaker on the press"]  # fmt: skip


@each_row("text", STROKES)
def test_a_stroke_is_heard_surely_and_needs_the_emergency_number(text: str) -> None:
    assert (Flag.CHEST, True) in [(one.flag, one.sure) for one in hear_flags(text)]


@each_row("text", NO_STROKES)
def test_what_sounds_like_a_stroke_and_is_none(text: str) -> None:
    assert Flag.CHEST not in flags_of(text)


@each_row(("flag", "said", "unsaid"), [
    (Flag.FALL, "i tipped over backwards off the box", "i tip backwards at the bottom"),
    (Flag.CHEST, "bit light headed now", "lightheaded from the rollercoaster"), (Flag.CHEST, "head is swimming", "giddy from the carousel"),
    (Flag.FALL, "lost my footing and landed on my hip", "lost my balance on the third rep"),
    (Flag.FALL, "i toppled over sideways off the stool", "the phone tipped over"),
    (Flag.FALL, "i fell on my hip", "we fell pregnant in march"), (Flag.PREGNANCY, "fell pregnant last month", "fell behind last month"),
    (Flag.WEIGHT_LOSS, "weight dropping off by itself", "the clinic said not to put any weight through my foot"),
    (Flag.FEVER, "i have a bug", "i have a plan"), (Flag.FEVER, "not before monday, when the fever is gone", "no fever this week"),
])  # fmt: skip
def test_what_tips_the_scale_in_plain_talk(flag: Flag, said: str, unsaid: str) -> None:
    assert flag in flags_of(said)
    assert flag not in flags_of(unsaid)


@each_row(("flag", "text", "denied"), [
    (Flag.CANCER_BONE, "no stent but i had lymphoma", Flag.HEART_HISTORY), (Flag.FEVER, "not dizzy, just shivery", Flag.CHEST),
    (Flag.CHEST, "its not pain just woozy", Flag.FEVER), (Flag.FEVER, "no falls but chills since tuesday", Flag.FALL),
    (Flag.PREGNANCY, "never had a heart attack but im pregnant", Flag.HEART_HISTORY),
    (Flag.ANTICOAGULANTS, "no cancer though im on warfarin", Flag.CANCER_BONE),
])  # fmt: skip
def test_after_a_denial_but_and_just_begin_a_clause_of_their_own(flag: Flag, text: str, denied: Flag) -> None:
    assert flag in flags_of(text)
    assert denied not in flags_of(text)


@each_row(("first", "second", "text"), [
    (Flag.FEVER, Flag.HEART_HISTORY, "ive got a temperature and had a bypass in 2012"),
    (Flag.HEART_HISTORY, Flag.PREGNANCY, "had a heart attack in 2018, plus im pregnant now"),
    (Flag.CANCER_BONE, Flag.FEVER, "breast cancer ten years ago and i feel feverish"),
    (Flag.CHEST, Flag.PREGNANCY, "fainted last year, i might be pregnant"),
    (Flag.SPINE_HISTORY, Flag.FEVER, "slipped disc in 2016 but i have the flu"),
])  # fmt: skip
def test_a_time_in_the_past_belongs_to_its_own_clause(first: Flag, second: Flag, text: str) -> None:
    assert flags_of(text) >= {first, second}


@each_row("text", ["had the flu in 2015 and it was bad", "when i was 9 i had measles, and im fine",
                   "pneumonia years ago, healed, no trouble"])
def test_what_is_all_in_the_past_stays_there(text: str) -> None:
    assert hear_flags(text) == ()


@each_row("text", ["necked a box of codeine", "ive taken thirty paracetamol", "downed two packs of ibuprofen",
                   "swallowed 24 tablets last night",
                   "took a handful of sleepers", "took seven painkillers in one go", "took way too many painkillers"])
def test_an_overdose_is_heard_surely_whatever_was_meant_by_it(text: str) -> None:
    assert [(one.flag, one.sure) for one in hear_flags(text)][:1] == [(Flag.SELF_HARM, True)]


@each_row("text", ["took two ibuprofen after the session", "took 400 ibuprofen for my knee", "took a whole pack of biscuits",
                   "took twenty minutes", "took 30 off the bar", "my mate took 20 paracetamol"])  # fmt: skip
def test_a_dose_is_no_overdose(text: str) -> None:
    assert Flag.SELF_HARM not in flags_of(text)


@each_row("text", ["in june 2019", "for about six weeks", "since last tuesday", "3 or 4 months", "end of march 2021", "i cleared it myself",
                   "it wakes me every night and painkillers dont touch it", "worst headache ever, out of nowhere"])
def test_in_a_bare_time_or_in_pain_nothing_more_is_suspected(text: str) -> None:
    assert hear_flags(text) == ()


def test_what_is_said_with_a_time_is_weighed() -> None:
    assert flags_of(f"since may, {UNFORESEEN[2]}") == {Flag.SELF_HARM}


@pytest.mark.parametrize("words", ["dizzy on the last set", "woozy after the third rep", "bit light headed on the last one",
                                   "saw stars at the top", "giddy after five reps",
                                   "dizy on the last set", "lite headed after set two", "ok set done, bit dizzy after the last one"])
def test_light_in_the_head_after_a_set_is_asked_about_however_ordinary_it_is(words: str):
    assert [(one.flag, one.also) for one in hear_flags(words)] == [(Flag.CHEST, ())]


@pytest.mark.parametrize("text", ["cant feel either leg", "no feeling in my legs", "legs numb", "both feet tingling", "my legs went dead"])
def test_both_legs_numb_may_be_of_the_saddle_sign(text):
    assert Flag.SADDLE in {flag for one in hear_flags(text) for flag in one.named}


@pytest.mark.parametrize("text", ["my legs are dead", "dead after legs", "i cant feel my legs working in the squat", "my feet are asleep"])
def test_tired_legs_are_no_such_sign(text):
    assert Flag.SADDLE not in {flag for one in hear_flags(text) for flag in one.named}
