"""Where the channels get their pictures: poses from the album, charts and the lifter's own squat from their log."""

from __future__ import annotations

import logging
import re
import sqlite3
from pathlib import Path
from typing import Final

from companion.channels.pictured import Picture
from companion.channels.port import Address
from companion.clock import Clock
from companion.pictures.album import Album, save
from companion.record import coaching, people, picture_files
from companion.record.writer import Writer

_log = logging.getLogger(__name__)

OWN_SCREEN: Final = "terminal"
"""The channel whose pictures are looked at as files: only there a person's own chart is written to disk."""


OF: Final = re.compile(r"([a-z_]+) of ([0-9]{1,18})")
"""A picture of somebody's own that goes to their coach: "chart_leg_raise of 17"."""


def folder_beside(database: Path) -> Path:
    """Where the pictures of a database are kept."""
    return database.with_name(f"{database.stem}-pictures")


class Shelf:
    """The pictures of one companion. Nothing here raises, and drawing goes on beside the loop."""

    def __init__(self, db: sqlite3.Connection, writer: Writer, clock: Clock, folder: Path) -> None:
        self._db, self._writer, self._clock = db, writer, clock
        self.album = Album(folder)

    def close(self) -> None:
        """Draw nothing more."""
        self.album.close()

    async def find(self, name: str, address: Address) -> Picture | None:
        """A pose, or a person's own chart, for them or for a coach who sees them now; None where there is none or it could not
        be drawn."""
        from companion.pictures import own  # all that is drawn from a log: with the first picture, not with the first words

        try:
            mine, of = (found[1], int(found[2])) if (found := OF.fullmatch(name)) else (name, None)
            if own.is_own(mine):
                return await self._own(mine, address, of)
            return await self.album.pose(name)
        except Exception:  # the words matter more than any picture
            _log.exception("the picture %s could not be drawn", name)
            return None

    async def file_id(self, bot: str, key: str) -> str | None:
        """What the channel calls a picture this bot has sent before."""
        return picture_files.file_of(self._db, bot, key)

    async def keep_file_id(self, bot: str, key: str, file_id: str | None) -> None:
        """Keep what the channel calls it, or forget it."""
        await self._writer.do(lambda db: picture_files.keep_file(db, bot, key, file_id, self._clock.now()))

    def forget(self, person: int) -> None:
        """Remove what was saved of a person's own pictures."""
        for path in self.album.folder.glob(f"own-{person}-*"):
            path.unlink(missing_ok=True)

    async def _own(self, name: str, address: Address, of: int | None) -> Picture | None:
        from companion.pictures import own

        person = people.person_at(self._db, address.channel, address.id)
        if person is None or (of is not None and not coaching.sees(self._db, person, of)):
            return None  # looked up once more as it is drawn: a message may have waited while the view was ended
        person = person if of is None else of
        path = self.album.folder / f"own-{person}-{name}.png"
        made = await self.album.off_loop(own.from_log(self._db, person, name))
        if made is None:
            return None
        data, words = made
        if address.channel == OWN_SCREEN:
            await self.album.off_loop(lambda: save(path, data))
        return Picture(path, data, words)
