"""Policies: the few ways in which a flow stands among others. Each flow names one."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import ClassVar


@dataclass(frozen=True, slots=True)
class Policy:
    """Data that the engine reads wherever flows meet. A flow that differs in one point takes ``replace(Policy.TALK, quiet=True)``.

    ``counted``: its questions show how far along they are, and who comes back after hours is asked whether to go on.
    ``hears_pain``: false where the flow itself asks about pain, or where a coach writes about somebody else.
    ``hears_signs``: false where the flow itself asks about them, or where a coach writes about somebody else.
    ``holds``: no other flow may begin over its questions, unless that one is for ``always``.
    ``resumes``: false where an interruption makes it begin anew. ``reopens``: false where its last answer can't be taken back
    once it is done. ``quiet``: no menu follows it. ``stops``: its questions show a stop button.
    """

    counted: bool = True
    hears_pain: bool = True
    hears_signs: bool = True
    holds: bool = False
    always: bool = False
    resumes: bool = True
    reopens: bool = True
    quiet: bool = False
    stops: bool = True

    TEST: ClassVar[Policy]
    TALK: ClassVar[Policy]
    PAGE: ClassVar[Policy]
    MENU: ClassVar[Policy]
    FOLLOW_UP: ClassVar[Policy]
    SAFETY: ClassVar[Policy]
    PAIN: ClassVar[Policy]
    SIGNS: ClassVar[Policy]
    CONSENT: ClassVar[Policy]
    RIGHTS: ClassVar[Policy]
    ABOUT_OTHERS: ClassVar[Policy]


Policy.TEST = Policy()
"""A row of questions to be gone through: a test, a drill, a questionnaire."""

Policy.TALK = Policy(counted=False)
"""Some questions or answers whose number nobody needs to know."""

Policy.PAGE = replace(Policy.TALK, quiet=True)
"""Something to read, after which nothing is asked."""

Policy.MENU = replace(Policy.TALK, stops=False)
"""What there is when nothing runs."""

Policy.FOLLOW_UP = replace(Policy.TALK, reopens=False)
"""Asked about something past; told once, it stays told."""

Policy.SAFETY = Policy(resumes=False, reopens=False)
"""The safety check: taken in one go, and never changed by going back."""

Policy.PAIN = replace(Policy.SAFETY, counted=False, hears_pain=False, holds=True)
"""The pain questions: nothing else begins before they are answered."""

Policy.SIGNS = replace(Policy.PAIN, hears_signs=False)
"""The questions about a sign, or about help."""

Policy.CONSENT = replace(Policy.TALK, holds=True)
"""What must be agreed before anything else."""

Policy.RIGHTS = replace(Policy.TALK, always=True)
"""One's own data and who sees it: open at any moment, over any question."""

Policy.ABOUT_OTHERS = replace(Policy.PAGE, hears_pain=False, hears_signs=False, reopens=False)
"""A coach writes about a lifter: words of pain are not the coach's own, and what was sent is sent."""
