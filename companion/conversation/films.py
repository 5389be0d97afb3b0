"""A film that has been read: its numbers become answers of the run that waits for it."""

from __future__ import annotations

from typing import Final

from companion.conversation.draft import Draft
from companion.conversation.effects import Find, Record
from companion.conversation.events import FilmRead
from companion.conversation.flow import Ask
from companion.conversation.kinds import Answer, BeingRead
from companion.conversation.moves import answer

GONE_ON: Final = "Your film has been read, but you had gone on meanwhile. To use it, begin the filmed squat again and send it there."


def waits_for(draft: Draft, film: FilmRead) -> bool:
    """True if the open question is the one that waits for this film."""
    if not draft.session.stack or draft.session.aside is not None or draft.top.paused or draft.top.run != film.run:
        return False
    stop = draft.compiled.stops.get(draft.top.state) if draft.top.flow in draft.book.flows else None
    return isinstance(stop, Ask) and isinstance(stop.kind, BeingRead) and stop.key == f"{film.squat}_reading"


def film_read(draft: Draft, film: FilmRead) -> None:
    """Take a film's outcome. A number that an earlier film gave and this one does not is withdrawn."""
    if not waits_for(draft, film):
        draft.say(GONE_ON)
        return
    frame, flow = draft.top, draft.compiled.flow
    got = {**frame.got, f"{film.squat}_says": film.says}
    for name, value in film.numbers:
        key = f"{film.squat}_{name}"
        if value is not None:
            draft.effects.append(Record(frame.run, flow.name, flow.version, key, draft.ask.side, f"{value:g}", value, "deg", method="film"))
            got[key] = value
        elif key in got:
            draft.effects.append(Record(frame.run, flow.name, flow.version, key, draft.ask.side, "", None, status="withdrawn"))
            del got[key]
    if film.curve:
        draft.effects.append(Find(f"film.{film.squat}_curve", film.curve, because="what its chart is drawn from", run=frame.run))
    draft.top = frame._replace(got=got)
    answer(draft, Answer(film.outcome, "film"))
