"""The reading grade of a text by Flesch and Kincaid's formula (Kincaid 1975, Naval Technical Training report 8-75, from memory)."""

from __future__ import annotations

import re
from functools import cache

_VOWELS = re.compile(r"[aeiouy]+")
_SILENT = re.compile(r"(?:[^laeiouy]e|[aeiouy]le|(?<![td])ed|(?<![cgsxz])(?<!ch)(?<!sh)es)$")
_TWO = re.compile(r"ia(?!l|n\b)|io(?!n|us)|iu|eo(?!n\b|us)|ua(?!l|r)|uo(?!u)|[aeouy]ing\b")
KNOWN = {"degrees": 2, "degree": 2, "squat": 1, "squats": 1, "something": 2, "somebody": 3, "sometimes": 2, "anything": 3, "everything": 3,
         "once": 1, "move": 1, "moves": 1, "moved": 1, "heel": 1, "heels": 1, "level": 2, "tape": 1, "lower": 2, "back": 1, "clearly": 2,
         "safety": 2, "use": 1, "used": 1, "useful": 2, "likely": 2, "home": 1, "time": 1, "times": 1, "sides": 1, "shoulders": 2}
"""Syllables of words that the rules below miscount, or that occur most."""

NAMES = frozenset((
    "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday", "january", "february", "march", "april", "may", "june",
    "july", "august", "september", "october", "november", "december"))
"""Names of days and months, known to everybody: one syllable each (choice)."""


@cache
def syllables(word: str) -> int:
    """Return the syllables of a word, at least one; a number is read as one for each digit group."""
    word = re.sub(r"[^a-z]", "", word.lower())
    if not word:
        return 1
    if word in NAMES:
        return 1
    if word in KNOWN:
        return KNOWN[word]
    count = len(_VOWELS.findall(word)) + len(_TWO.findall(word))
    if _SILENT.search(word) and count > 1:
        count -= 1
    return max(count, 1)


def words_and_sentences(text: str) -> tuple[list[str], int]:
    """Return a text's words, and how many sentences they make; a new line ends one too."""
    parts = [part for part in re.split(r"[.?!\n]+(?=\s|$|”)|\n", text) if re.search(r"[A-Za-z0-9]", part)]
    return re.findall(r"[A-Za-z][A-Za-z'’-]*|\d+(?:[.,]\d+)?", text), max(len(parts), 1)


def grade(text: str) -> float:
    """Return the grade: 0.39 words a sentence + 11.8 syllables a word - 15.59."""
    words, sentences = words_and_sentences(text)
    return 0.39 * len(words) / sentences + 11.8 * sum(map(syllables, words)) / max(len(words), 1) - 15.59
