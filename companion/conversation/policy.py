"""Policies: the behaviour of a flow among other flows. Each flow names one."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import ClassVar


@dataclass(frozen=True, slots=True)
class Policy:
    """A flow's behaviour where flows meet. One that differs in a single point uses ``replace(Policy.TALK, quiet=True)``.

    ``counted``: its questions show progress, and somebody who returns after hours is asked whether to go on. ``hears_pain``: false where
    the flow itself asks about pain, or where a coach writes about somebody else. ``hears_signs``: false where a coach does.
    ``holds``: no other flow may begin over its questions, except one with ``always``. ``resumes``: false if it begins again after
    an interruption. ``reopens``: false if its last answer can't be taken back once it is done. ``quiet``: no menu follows it.
    ``pages``: its messages may wait until the person asks for more. ``told``: it asks what a clinician said, so that words which may be
    a sign that is not urgent are mostly its answers.
    ``looks``: a view of somebody else's without questions: shown over questions about pain, a sign or help, which stand again after it.
    ``ends_all``: at its end nothing goes on that waited for it; open questions about signs and pain stay parked. ``stops``: its questions
    have a stop button. ``beside``: it begins over the open question, which is asked again after it.
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
    beside: bool = False
    pages: bool = False
    told: bool = False
    looks: bool = False
    ends_all: bool = False

    TEST: ClassVar[Policy]
    TALK: ClassVar[Policy]
    PAGE: ClassVar[Policy]
    VIEW: ClassVar[Policy]
    BESIDE: ClassVar[Policy]
    MENU: ClassVar[Policy]
    FOLLOW_UP: ClassVar[Policy]
    TOLD: ClassVar[Policy]
    SAFETY: ClassVar[Policy]
    PAIN: ClassVar[Policy]
    SIGNS: ClassVar[Policy]
    CONSENT: ClassVar[Policy]
    RIGHTS: ClassVar[Policy]
    ABOUT_OTHERS: ClassVar[Policy]


Policy.TEST = Policy()
"""A series of questions: a test, a drill, a questionnaire."""

Policy.TALK = Policy(counted=False)
"""A few questions, without a progress line."""

Policy.PAGE = replace(Policy.TALK, quiet=True)
"""A page to read, without questions."""

Policy.VIEW = replace(Policy.PAGE, looks=True)
"""A coach's page of a lifter, or of all."""

Policy.BESIDE = replace(Policy.PAGE, reopens=False, beside=True)
"""An answer to a question of the person's, over whatever is open."""

Policy.MENU = replace(Policy.TALK, stops=False)
"""The menu, which runs when nothing else does."""

Policy.FOLLOW_UP = replace(Policy.TALK, reopens=False)
"""Questions about the past; once answered, they are not reopened."""

Policy.TOLD = replace(Policy.FOLLOW_UP, told=True)
"""Questions about what a clinician said."""

Policy.SAFETY = Policy(resumes=False, reopens=False)
"""The safety check: done in one go, and never changed by going back."""

Policy.PAIN = replace(Policy.SAFETY, counted=False, hears_pain=False, holds=True)
"""The pain questions: no other flow begins before they are answered."""

Policy.SIGNS = replace(Policy.PAIN, hears_pain=True)
"""The questions about a sign, or about help; another sign, or pain, told meanwhile is asked about first."""

Policy.CONSENT = replace(Policy.TALK, holds=True)
"""The questions of consent, before anything else."""

Policy.RIGHTS = replace(Policy.TALK, always=True)
"""The person's own data and who sees it: open at any time, over any question."""

Policy.ABOUT_OTHERS = replace(Policy.PAGE, hears_pain=False, hears_signs=False, reopens=False)
"""Flows in which a coach writes about a lifter: pain words are not about the coach, and a message sent can't be taken back."""
