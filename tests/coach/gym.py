"""A companion with coaches and lifters, each with a screen of their own."""

from __future__ import annotations

from companion.port import Address, Inbound, Tapped, Typed
from companion.record import coaching
from tests.app.test_service import ABOUT, WELCOME, Life

KIM, ODA = Address("terminal", "kim"), Address("terminal", "oda")
SAM, MIA = Address("terminal", "sam"), Address("terminal", "mia")


class Gym(Life):
    """A companion with coaches and lifters; each sees only their own screen."""

    async def coach(self, who: Address) -> None:
        code = coaching.invite(self.db, "coach", None, who.id.title(), self.clock.now())
        await self.say(f"/start {code}", "Yes, keep it", "Yes", "UTC", "yes", who=who)

    async def lifter(self, who: Address) -> None:
        await self.say("hello", *WELCOME, *ABOUT, who=who)

    async def code_for(self, name: str, coach: Address = KIM) -> str:
        said = await self.say("invite a lifter", name, who=coach)
        return next(text for text in said if "“code " in text).split("“code ")[1].split("”")[0]

    async def say(self, *replies: str, who: Address = SAM) -> list[str]:
        said: list[str] = []
        for reply in replies:
            mine = [message for message in self.shown if message.address == who][-3:]
            data = next((button.data for message in reversed(mine) for row in message.buttons for button in row
                         if button.label == reply), None)
            await self.companion.take(Inbound(who, Tapped(data) if data else Typed(reply), name=who.id))
            said = await self.listen(who)
        return said

    async def tap(self, who: Address, data: str) -> None:
        await self.companion.take(Inbound(who, Tapped(data), name=who.id))
        await self.listen(who)

    async def listen(self, who: Address = SAM) -> list[str]:
        await super().listen(who)
        return [message.text for message in self.shown if message.address == who][-6:]

    async def linked(self) -> None:
        await self.coach(KIM)
        await self.lifter(SAM)
        await self.say(f"code {await self.code_for('Sam')}", "Yes, I agree")

    def heard(self, who: Address) -> list[str]:
        return [row[0] for row in self.db.execute("select text from outbox where address = ? order by id", (who.id,))]

    def id_of(self, who: Address) -> int:
        return self.db.execute("select person from addresses where address = ?", (who.id,)).fetchone()[0]
