"""A lifter on squat days, for tests of the flows around them: a talk whose answers are kept, with results behind it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import asdict, replace
from datetime import timedelta
from typing import Any

from companion.conversation.condition import Value
from companion.conversation.effects import Began, Ended, Record
from companion.conversation.flow import Flow
from companion.conversation.session import Frame, Session
from companion.screening.screen import LoggedAnswer
from flows.catalogue import BOOK
from tests.drive import CHECKED, NOW, Talk
from tests.screening.build import ABOUT, CALF_LIKELY

SCREENED = [LoggedAnswer(flow, flow, key, value, "ok", "done", "", "", NOW - timedelta(days=61))
            for flow, record in {"about_you": ABOUT, **CALF_LIKELY}.items() for key, value in asdict(record).items() if value is not None]
RESULTS: Mapping[str, Value] = {
    **CHECKED, "person": "7", "drill": "calf", "overall": "length", "depth.keep": "a_little_above", "safety_check.pain": 0.0,
    "about_you.usual_depth": "below", "about_you.load": 80.0, "outcome.at": (NOW - timedelta(days=30)).isoformat(),
    "bar.bar": "full", "bar.which": "usual", "load.limit": ""}
"""Welcomed, checked today, tested, with a depth to keep to and a usual bar."""


class Lifter(Talk):
    """A talk whose answers count as kept from the next step on. ``asked``: what the flow is begun with."""

    def __init__(self, flow: Flow, known: Mapping[str, Value] | None = None, answers: Sequence[LoggedAnswer] = (), asked: str = "") -> None:
        self.asked_of: dict[str, str] = {}
        super().__init__(flow, {**RESULTS, **(known or {})}, BOOK, [*SCREENED, *answers])
        if asked:
            self.effects = []
            self.session = Session(stack=(Frame(flow.name, flow.version, "99", asked=asked),), runs=99)
            self._settle()

    def _take(self, taken: Any) -> None:
        super()._take(taken)
        for effect in taken.effects:
            if isinstance(effect, Began):
                self.asked_of[effect.run] = effect.asked
            elif isinstance(effect, Ended):
                self.kept = [replace(row, ending=effect.ending) if row.run == effect.run else row for row in self.kept]
            elif isinstance(effect, Record):
                self.kept.append(LoggedAnswer(effect.flow, effect.run, effect.key, effect.value, effect.status, None, effect.method,
                                        effect.placement, self.now, self.asked_of.get(effect.run, "")))
                if effect.status == "ok" and effect.value is not None:
                    self.known[f"{effect.flow}.{effect.key}"] = effect.value

    @property
    def heard(self) -> str:
        """All that was said, a line a message."""
        return "\n".join(say.text for say in self.says)

    @property
    def began(self) -> list[str]:
        """The flows that were begun, in order."""
        return [effect.flow for effect in self.effects if isinstance(effect, Began)]


def squatted(days_ago: float, run: str, ending: str = "done", **said: Value) -> list[LoggedAnswer]:
    """The answers of one squat day, before and after, told on the day itself."""
    before = {key: said.pop(key) for key in ("lot", "planned") if key in said}
    at = NOW - timedelta(days=days_ago)
    rows = [LoggedAnswer("squat_day", f"{run} before", key, value, "ok", ending, "", "", at)
            for key, value in {**before, "squatted": "ready"}.items()]
    return rows + [LoggedAnswer("squat_after", f"{run} after", key, value, "ok", "done", "", "", at + timedelta(minutes=9))
                   for key, value in said.items()]
