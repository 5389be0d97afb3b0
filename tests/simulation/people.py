"""Simulated people: what they do when the bot has written, by habit."""

from __future__ import annotations

import random
from typing import TYPE_CHECKING

from companion.port import Address, Edited, Event, Outgoing, Tapped, Typed

if TYPE_CHECKING:
    from tests.simulation.world import World

PAIN = ("I have a sharp pain in my lower back", "ouch", "my knee hurts", "it hurts")
WORDS = ("menu", "knee to wall", "leg raise", "safety check", "squat days", "my data", "stop", "back", "help", "again", "skip", "11", "yes",
         "no", "progress", "go on", "/start", "results")
PLACES = ("I'm in Lisbon this week", "I'm in Auckland until sunday", "I'm in New York for a week", "I'm back home", "my squat days")


class Person:
    """One chat. ``canary``: a word nobody else says, to be found nowhere once they are erased."""

    def __init__(self, world: World, chat: int, habit: str) -> None:
        self.world, self.chat, self.habit = world, chat, habit
        self.address = Address("telegram", str(chat))
        self.rng = random.Random(f"{world.plan.seed} {chat}")
        self.canary = f"zq{world.plan.seed}x{chat}qz"
        self.latest: Outgoing | None = None
        self.erased = self.asked_to_erase = self.back = False
        self.turns = 0
        self.thinking = False

    def begin(self) -> None:
        """Write for the first time, at some moment."""
        if self.habit == "flooder":
            for number in range(self.world.plan.floods):
                self._later(5 + number * 12 / self.world.plan.floods, Typed("it hurts"))
        elif self.habit == "insists":
            for number in range(42):  # so often that each way in which it is answered comes again within PAIN_LATE
                self._later(3 + 2 * number, Typed(PAIN[0]))
        elif self.habit == "in pain":
            self._later(self.rng.uniform(2, 4), Typed(PAIN[0]))
        elif self.habit != "silent":
            self._later(self.rng.uniform(0, 2 if self.habit == "stranger" else 20), Typed("/start" if self.habit == "stranger" else "menu"))

    def got(self, message: Outgoing) -> None:
        """Something arrived; answer after a while, once to what came together."""
        self.latest = message
        if "It is all erased" in message.text:
            self.erased = True
        if self.thinking or self.habit in ("silent", "flooder", "insists") or not self.world.lively:
            return
        self.thinking = True
        self.world.loop.call_later(self.rng.uniform(1.5, 15), self._answer)

    def _answer(self) -> None:
        self.thinking = False
        if self.world.lively and (event := self._choice()) is not None:
            self.turns += 1
            self.world.arrives(self, event)

    def _choice(self) -> Event | None:
        rng = self.rng
        if self.habit in ("erases", "stranger"):
            script = ([Typed(f"{self.canary} my knee hurts") if rng.random() < 0.5 else Typed(self.canary), Typed("/erase")]
                      if self.habit == "stranger" and self.chat % 2 else [Typed(f"send a note {self.canary}"), Typed("/erase")])
            if self.turns < len(script):
                return script[self.turns]
            if not self.asked_to_erase and self.turns < 6:
                return self._tap("Yes, erase it all")
            if self.erased and not self.back:
                self.back = True
                return Typed("hello")
            return (self._tap("Yes, keep them") or self._tap()) if self.back else None
        if self.habit == "hurt" and rng.random() < 0.4:
            return Typed(rng.choice(PAIN))
        if self.habit == "wanderer" and rng.random() < 0.5:
            return Edited("menu") if rng.random() < 0.1 else Typed(rng.choice(WORDS))
        if self.habit == "traveller" and rng.random() < 0.4:
            return Typed(rng.choice(PLACES))
        if self.habit == "typist" and rng.random() < 0.5:
            return Typed(rng.choice(("11", "170", "yes", "no", "about 12 cm", self._label() or "ok")))
        return self._tap()

    def _tap(self, label: str = "") -> Event | None:
        rows = self.latest.buttons if self.latest else ()
        there = [one for row in rows for one in row if not label or one.label == label]
        if not there:
            return None if label else Typed("menu")
        self.asked_to_erase = self.asked_to_erase or bool(label)
        return Tapped(self.rng.choice(there).data)

    def _label(self) -> str:
        return self.rng.choice([one.label for row in self.latest.buttons for one in row] or [""]) if self.latest else ""

    def _later(self, seconds: float, event: Event) -> None:
        self.world.loop.call_later(seconds, self.world.arrives, self, event)
