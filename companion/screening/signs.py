"""Signs that a lifter may write of at any time, and what each asks for. Pain has questions of its own (``safety.level_from_pain``).

The levels are those of the safety check (``safety.level_from_check``), after cauda equina guidance (BMJ Best Practice, read), regional
back-pain pathways (second-hand) and ACSM pre-participation logic (Riebe 2015, read). Blood thinners, a clinician's restriction and being
under 18 are our cautious choice.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from typing import Final

from companion.screening.safety import OF_LATE, Level, SafetyOutcome, Value, level_from_check


@dataclass(frozen=True, slots=True)
class Sign:
    """One sign: its id (``language.flags.Flag``), the answer of the safety check it amounts to, the level it asks for until more
    is known, its words, which fit after "I understand:", and its name on a button."""

    id: str
    answers: str
    level: Level
    words: str
    button: str


SCREENED_SIGNS: Final = {sign.id: sign for sign in (
    Sign("bladder_bowel", "bladder", Level.EMERGENCY, "new trouble with bladder or bowel", "Bladder or bowel trouble"),
    Sign("saddle", "bladder", Level.EMERGENCY, "numbness or odd feeling between the legs, or numb legs", "Numb between the legs"),
    Sign("sexual", "bladder", Level.EMERGENCY, "a loss of sexual function or feeling", "Sexual function lost"),
    Sign("chest", "chest", Level.EMERGENCY,
         "chest pain, faintness, being unusually short of breath, a drooping face or slurred speech", "Chest, breath, fainting, stroke"),
    Sign("weakness", "weakness", Level.SAME_DAY, "a leg that is weak or getting weaker, or a foot that drops", "A weak leg or foot"),
    Sign("fall", "fall", Level.SAME_DAY, "a hard fall or blow", "A hard fall or blow"),
    Sign("fever", "fever", Level.NOT_TODAY, "fever, an infection or feeling ill", "Fever or feeling ill"),
    Sign("heart_history", "history", Level.CLINICIAN, "a heart condition", "A heart condition"),
    Sign("cancer_bone", "history", Level.CLINICIAN, "cancer, weak bones or long use of prednisone-type tablets", "Cancer or weak bones"),
    Sign("weight_loss", "history", Level.CLINICIAN, "weight loss you did not aim for", "Weight loss, not meant"),
    Sign("pregnancy", "pregnant", Level.CLINICIAN, "being pregnant, or having given birth lately", "Pregnancy or a birth"),
    Sign("spine_history", "history", Level.CLINICIAN, "a disc or spine diagnosis, or an operation", "A spine problem or an operation"),
    Sign("anticoagulants", "history", Level.CLINICIAN, "taking blood thinners", "Blood thinners"),
    Sign("restriction", "", Level.NOT_TODAY, "a clinician told you what to leave out", "A clinician's limit"),
    Sign("under_18", "", Level.NOT_TODAY, "being under 18", "Being under 18"),
)}
"""Every sign but thoughts of self-harm, which have a conversation of their own."""

CLEARABLE: Final = frozenset(sign.id for sign in SCREENED_SIGNS.values() if sign.answers in ("history", "pregnant"))
"""Signs that a clinician can clear."""

HISTORY_GROUPS: Final[Mapping[str, str]] = {
    "history": "cancer, weak bones or steroid tablets", "history_signs": "weight loss, pain at night, or chest pain at hard work",
    "history_care": "a disc or nerve problem, an operation or a broken bone"}
"""The three questions of the safety check about a history, by their keys, and what a yes to each may be."""

_ALL_WELL: Final[Mapping[str, Value]] = dict.fromkeys(
    ("bladder", "chest", "weakness", "fall", "fever", "history", "pregnant", "leg_signs", "soreness"), "no") | {"pain": 0.0}


def words_of(signs: Collection[str]) -> str:
    """Return the signs in words, joined: "fever, an infection or feeling ill; and a hard fall or blow"."""
    return "; and ".join(SCREENED_SIGNS[one].words for one in signs if one in SCREENED_SIGNS)


def history_in_words(told: Collection[str]) -> str:
    """Return a history in a few words, by signs and groups as they were told: "blood thinners; a heart condition"."""
    names = [HISTORY_GROUPS.get(one) or SCREENED_SIGNS[one].button for one in told if one in HISTORY_GROUPS or one in SCREENED_SIGNS]
    return "; ".join(f"{name[:1].lower()}{name[1:]}" for name in names)


def level_until_answered(signs: Collection[str], *, sure: bool) -> Level:
    """Return the level while the questions about signs are open: what they ask for if they are so, or, where the words were
    doubtful, nothing more today."""
    return max((SCREENED_SIGNS[one].level for one in signs if one in SCREENED_SIGNS), default=Level.NOT_TODAY) if sure else Level.NOT_TODAY


def level_from_signs(signs: Collection[str], answers: Mapping[str, Value | None]) -> SafetyOutcome:
    """Return the outcome of signs that are so, or may be.

    ``answers``: those of the questions about them, by the keys of ``level_from_check``; and ``when``, where chest pain or faintness was
    before today: "lately", which is to be looked at today, or "earlier": then it is history, which a clinician clears. What was not
    asked counts as no, but for what the signs themselves say.
    """
    told: dict[str, Value | None] = {**_ALL_WELL, **{key: value for key, value in answers.items() if value is not None}}
    for one in signs:
        key = SCREENED_SIGNS[one].answers if one in SCREENED_SIGNS else ""
        if key == "chest" and answers.get("when") == "earlier":
            key = "history"
        if key:
            told[key] = OF_LATE if answers.get("when") == OF_LATE else "yes"
    return level_from_check(told)
