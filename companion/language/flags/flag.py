"""The signs that are listened for, and one that was heard."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum


class Flag(Enum):
    """A sign that decides whether, or how, somebody should train; the most urgent first."""

    SELF_HARM = "self_harm"
    """Thoughts of killing or harming oneself, or of not wanting to live."""
    BLADDER_BOWEL = "bladder_bowel"
    """New trouble passing or holding urine or stool."""
    SADDLE = "saddle"
    """A numb, odd or missing feeling between the legs, in the genitals or the inner buttocks."""
    CHEST = "chest"
    """Chest pain or pressure, unusual breathlessness, faintness, fainting, palpitations."""
    WEAKNESS = "weakness"
    """New or growing weakness in a leg or foot."""
    SEXUAL = "sexual"
    """New loss of sexual function or feeling."""
    FALL = "fall"
    """A recent fall, accident or blow to back, hip or head."""
    CANCER_BONE = "cancer_bone"
    """Cancer at any time, steroid tablets for long, thin bones."""
    FEVER = "fever"
    """Fever, chills, an infection, or being ill now."""
    WEIGHT_LOSS = "weight_loss"
    """Weight lost without meaning to."""
    HEART_HISTORY = "heart_history"
    """Heart attack, stent, bypass, arrhythmia, pacemaker, heart failure, valve."""
    PREGNANCY = "pregnancy"
    """Pregnant, perhaps pregnant, or lately given birth."""
    ANTICOAGULANTS = "anticoagulants"
    """Blood thinners."""
    SPINE_HISTORY = "spine_history"
    """A disc, a break, an illness or an operation of the spine, at any time."""
    RESTRICTION = "restriction"
    """A limit set by a clinician, or lifting, bending, squatting or stretching forbidden by one."""
    UNDER_18 = "under_18"
    """Younger than 18."""


URGENT = frozenset((Flag.SELF_HARM, Flag.BLADDER_BOWEL, Flag.SADDLE, Flag.CHEST, Flag.WEAKNESS))


@dataclass(frozen=True, slots=True)
class Heard:
    """A flag heard in a message.

    ``sure`` is False where the wording leaves it open: ask, with both answers named. ``words`` is the part of the
    message that carried it, as it was typed. ``also``: what else a doubtful wording may mean, the likeliest first.
    """

    flag: Flag
    sure: bool
    words: str
    also: tuple[Flag, ...] = ()

    @property
    def named(self) -> tuple[Flag, ...]:
        """The flags it may be, the likeliest first."""
        return (self.flag, *self.also)
