"""The channels' source of pictures: cached poses, and charts and squats drawn from a lifter's log."""

from __future__ import annotations

import logging
import re
import sqlite3
from asyncio import wait_for
from collections.abc import Collection, Mapping
from pathlib import Path
from typing import Final

from companion.base.clock import Clock
from companion.channels.pictures import Picture
from companion.pictures.cache import PictureCache, save
from companion.port import Address
from companion.record import coaching, people, picture_files
from companion.record.picture_files import FILM_KEPT, WHOLE_FILM, film_kept_for
from companion.record.writer import Writer

_log = logging.getLogger(__name__)

LOCAL_CHANNEL: Final = "terminal"
"""The one channel that shows pictures as files: only there a person's own chart is written to disk."""


OWN_PICTURE_OF: Final = re.compile(r"([a-z_]+) of ([0-9]{1,18})")
"""Name of a lifter's own picture for their coach: "chart_leg_raise of 17"."""

WHOLE_FILMS: Final = 2 * 2**30
"""Bytes of whole films kept in all, a hundred of the largest (choice); after that none is kept until one goes."""

PATIENCE: Final = 10.0
"""Seconds a message waits for its picture before it goes without (choice). A drawing that was begun is finished and cached for next
time. The first chart imports matplotlib, which takes seconds on a small machine."""


def folder_beside(database: Path) -> Path:
    """Return the picture folder of a database."""
    return database.with_name(f"{database.stem}-pictures")


class PictureStore:
    """The pictures of one companion. Nothing here raises, and drawing runs off the loop."""

    def __init__(self, db: sqlite3.Connection, writer: Writer, clock: Clock, folder: Path, patience: float = PATIENCE) -> None:
        self._db, self._writer, self._clock, self._patience = db, writer, clock, patience
        self.cache = PictureCache(folder)

    def close(self) -> None:
        """Stop drawing."""
        self.cache.close()

    async def find(self, name: str, address: Address) -> Picture | None:
        """Return a pose, or a person's own picture for them or for a coach who sees them now; None if there is none, or it failed or
        took too long."""
        from companion.pictures import personal  # imports everything drawn from a log, so only with the first picture

        try:
            mine, of = (found[1], int(found[2])) if (found := OWN_PICTURE_OF.fullmatch(name)) else (name, None)
            return await wait_for(self._own(mine, address, of) if personal.is_own(mine)
                                  else self.cache.pose(name, address.channel != LOCAL_CHANNEL), self._patience)
        except TimeoutError:
            _log.warning("the picture %s takes too long, its text goes alone", name)
            return None
        except Exception:  # the message's text matters more
            _log.exception("the picture %s could not be drawn", name)
            return None

    async def file_id(self, bot: str, key: str) -> str | None:
        """Return the channel's id of a picture this bot has sent before."""
        return picture_files.file_of(self._db, bot, key)

    async def keep_file_id(self, bot: str, key: str, file_id: str | None) -> None:
        """Store the channel's id of a picture; None deletes it."""
        await self._writer.do(lambda db: picture_files.keep_file(db, bot, key, file_id, self._clock.now()))

    def forget(self, person: int) -> None:
        """Delete the saved files of a person's own pictures; those of their film stay as long as their word that they may."""
        for path in self.cache.folder.glob(f"own-{person}-*"):
            name = path.stem.removeprefix(f"own-{person}-")
            if name not in FILM_KEPT or film_kept_for(self._db, person, name) == "no":
                path.unlink(missing_ok=True)

    def keep_film(self, person: int, files: Mapping[str, bytes]) -> Collection[str]:
        """Keep what is given of a person's film, by file name, in place of that of an earlier one: what they said may be kept, the whole
        film while there is room. Returns the names that are kept."""
        kept = set[str]()
        for path in self.cache.folder.glob(f"own-{person}-film_*"):
            path.unlink(missing_ok=True)
        for file, data in files.items():
            name, path = Path(file).stem, self.cache.folder / f"own-{person}-{file}"
            room = WHOLE_FILMS - sum(one.stat().st_size for one in self.cache.folder.glob(f"own-*-{WHOLE_FILM}.*"))
            if film_kept_for(self._db, person, name) != "no" and (name != WHOLE_FILM or len(data) <= room):
                save(path, data)
                kept |= {name} if path.is_file() else set()
        return kept

    async def _film(self, name: str, person: int, of: int | None) -> Picture | None:
        kept_for = film_kept_for(self._db, person, name)
        if kept_for == "no":
            self.forget(person)
        path = next(self.cache.folder.glob(f"own-{person}-{name}.*"), None)
        if path is None or kept_for not in ("coach", "mine" if of is None else "coach"):
            return None
        words = "as it was sent." if name == WHOLE_FILM else "its cards outlined, degrees from standing written."
        return Picture(path, await self.cache.off_loop(path.read_bytes), f"The filmed squat: {words}", path.suffix == ".mp4")

    async def _own(self, name: str, address: Address, of: int | None) -> Picture | None:
        from companion.pictures import personal

        person = self._whose(address, of)  # checked again when drawing: the message may have waited past the end of the coach's view
        if person is None:
            return None
        if name in FILM_KEPT:
            return await self._film(name, person, of)
        made = await self.cache.off_loop(personal.from_log(self._db, person, name, address.channel != LOCAL_CHANNEL))
        if made is None:
            return None
        data, words, ending = made
        path = self.cache.folder / f"own-{person}-{name}.{ending}"
        if address.channel == LOCAL_CHANNEL:
            await self.cache.off_loop(lambda: save(path, data))
        if self._whose(address, of) != person:  # erased, or the view ended, while it was drawn
            self.forget(person)
            return None
        return Picture(path, data, words, ending != "png")

    def _whose(self, address: Address, of: int | None) -> int | None:
        """Return the person whose picture may be shown now: oneself, or a lifter one coaches; None if neither."""
        person = people.person_at(self._db, address.channel, address.id)
        return person if of is None or person is None else of if coaching.sees(self._db, person, of) else None
