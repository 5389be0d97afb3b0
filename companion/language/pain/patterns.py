"""Word patterns: compiling the lines of ``tables``, and matching them."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from itertools import chain
from typing import NamedTuple

from companion.language.pain.degree import Pain
from companion.language.pain.tables import PAIN_SECTIONS, PAIN_WORDS


class PatternStep(NamedTuple):
    """One position in a pattern."""

    words: frozenset[str]
    optional: bool = False
    gap: bool = False


class Rule(NamedTuple):
    """A pattern, and the degree of pain it means while the body is at work and at rest."""

    steps: tuple[PatternStep, ...]
    at_work: Pain = Pain.NO
    at_rest: Pain = Pain.NO
    thing: bool = True
    sore: bool = False
    instead: tuple[str, ...] = ()


class Hit(NamedTuple):
    """A rule's match in the words, from ``start`` up to ``end``."""

    start: int
    end: int
    rule: Rule


Index = dict[str, list[Rule]]
CLAUSE_END, QUESTION, COMMA, FULL_STOP, EXCLAMATION = "$", "¿", ",", ".", "!"
SENTENCE_ENDS = frozenset((QUESTION, FULL_STOP, EXCLAMATION))
PUNCTUATION = SENTENCE_ENDS | {COMMA}
_CLAUSE_ENDS = PUNCTUATION | {"and", "but", "when", "so", "while", "then"}
_GAP = 3  # most words a ``~`` may skip


@cache
def word_set(table: str) -> frozenset[str]:
    """Return the words of a table, its groups expanded."""
    words = table.replace("|", " ").split()
    if "<" not in table:
        return frozenset(words)
    opened = (word_set(PAIN_SECTIONS["word_groups"][word[1:-1]]) if word.startswith("<") else (word,) for word in words)
    return frozenset(chain.from_iterable(opened))


def listed(*keys: str) -> frozenset[str]:
    """Return the words of some lists of the tables."""
    return word_set(" ".join(PAIN_WORDS[key] for key in keys))


def rules(
    *patterns: str, levels: tuple[Pain, Pain] = (Pain.NO, Pain.NO), thing: bool = True, sore: bool = False
) -> Iterator[Rule]:
    """Yield the rules of some patterns, one per line; a further indented line continues the one before."""
    for line in re.sub(r"\n {5,}", " ", "\n".join(patterns)).replace("| ", "|").split("\n"):
        pattern, _, instead = line.partition("->")
        if steps := tuple(map(_step, pattern.split())):
            yield Rule(steps, *levels, thing, sore, tuple(instead.split()))


@cache
def _step(part: str) -> PatternStep:
    return PatternStep(frozenset(), gap=True) if part == "~" else PatternStep(word_set(part.removesuffix("?")), optional=part.endswith("?"))


def by_first_word(*of_tables: Iterator[Rule]) -> Index:
    """Return rules by the words they may begin with. Raises ValueError if one does not begin with a word."""
    index: Index = {}
    for rule in chain(*of_tables):
        first = rule.steps[0]
        if first.optional or first.gap:
            raise ValueError(f"a pattern must begin with a word: {rule.steps}")
        for word in first.words:
            index.setdefault(word, []).append(rule)
    return index


def words_of(index: Index) -> frozenset[str]:
    """Return every word of every rule."""
    every = {id(rule): rule for rule in chain(*index.values())}  # each once, though it stands under many words
    return frozenset().union(*(step.words for rule in every.values() for step in rule.steps))


NO_WORDS, WITHOUT_WORDS, NOT_WORDS, HARDLY_WORDS = map(listed, ("no_forms", "without", "not_forms", "hardly"))
DENIALS = NO_WORDS | WITHOUT_WORDS | NOT_WORDS | HARDLY_WORDS
EVERYDAY_WORDS = DENIALS | word_set("<my> <feel> <day>") | listed("everyday", "between", "between_verbs", "openers", "degree", "listed")


def found(words: list[str], index: Index) -> Iterator[Hit]:
    """Yield every match of a rule."""
    for at, word in enumerate(words):
        for rule in index.get(word, ()):
            if (end := match(rule.steps, 0, words, at)) > at:
                yield Hit(at, end, rule)


def match(steps: tuple[PatternStep, ...], k: int, words: list[str], at: int) -> int:
    """Return where the pattern from its k-th step ends in the words, or -1."""
    if k == len(steps):
        return at
    step = steps[k]
    if step.gap:
        for skipped in range(_GAP + 1):
            if (end := match(steps, k + 1, words, at + skipped)) >= 0:
                return end
            if at + skipped >= len(words) or words[at + skipped] in PUNCTUATION or words[at + skipped] in DENIALS:
                return -1
        return -1
    if at < len(words) and words[at] in step.words and (end := match(steps, k + 1, words, at + 1)) >= 0:
        return end
    if step.optional or (CLAUSE_END in step.words and (at >= len(words) or words[at] in _CLAUSE_ENDS)):
        return match(steps, k + 1, words, at)
    return -1


def holds(words: list[str], index: Index) -> bool:
    """True if any rule matches anywhere."""
    return next(found(words, index), None) is not None


_SURE, _UNSURE = (Pain.YES, Pain.YES), (Pain.ASK, Pain.ASK)
HITS = by_first_word(
    rules(*PAIN_SECTIONS["sure_things"].values(), levels=_SURE),
    rules(*PAIN_SECTIONS["sure_events"].values(), levels=_SURE, thing=False),
    rules(*PAIN_SECTIONS["soreness"].values(), levels=_SURE, sore=True),
    rules(*PAIN_SECTIONS["unsure_things"].values(), levels=_UNSURE),
    rules(*PAIN_SECTIONS["unsure_events"].values(), levels=_UNSURE, thing=False),
    rules(*PAIN_SECTIONS["vague"].values(), levels=(Pain.ASK, Pain.NO)),
)
ORDINARY_RULES = by_first_word(rules(*PAIN_SECTIONS["ordinary"].values()))
CAUSE_RULES, PAST_RULES, NOW_RULES, ELLIPSIS_RULES, LONG_AGO_RULES, WHOLLY_OVER_RULES = (
    by_first_word(rules(PAIN_WORDS[key])) for key in ("soreness_causes", "past", "still_now", "ellipsis", "long_ago", "wholly_over")
)
