"""Dispatch: one handler per effect, called in the order of the step, in the turn's transaction."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from datetime import timedelta
from typing import Any, Final

from companion.base.clock import local_date
from companion.calendar.words import DAY_NAMES
from companion.coach import actions, links
from companion.coach.letters import NOT_YOURS, Letter, alert_letters, lifter_looked_at, order_over, post
from companion.conversation.effects import (
    Act,
    Alert,
    Began,
    Calendar,
    CountAgain,
    Effect,
    Ended,
    Erase,
    Export,
    Find,
    Link,
    ReadFilm,
    Record,
    Redeem,
    Remind,
    Reopened,
    Replan,
    Say,
    SendCards,
    Show,
    StopReminders,
    Void,
)
from companion.export.registry import FORMATS, ExportSource, Format
from companion.record import late_pain, orders, people, persist
from companion.record.coaching import ReportWanted
from companion.record.context import SAFETY_LEVEL
from companion.record.picture_files import CURVE_FACT, FILM_KEPT, WHOLE_FILM, film_kept_for
from companion.record.turn import FilmWanted, Turn
from companion.record.unanswered import told_since
from companion.reminders import planner
from companion.screening.levels import REFERRED
from companion.screening.safety import Level
from companion.screening.standing import QUESTIONS_OPEN

CHECK: Final = "safety_check"
CHECK_DONE: Final = "safety.checked"
"""The finding with which a safety check ends, also where the level from before stands."""

CALENDAR_SAYS: Final = "Your squat days and reminders, for your own calendar. Open the file on your phone to add them."

CARDS_SAY: Final = "Five cards on three pages. Print them at 100 %: the check line must measure 10 cm. Where each goes stands beside it."

Handler = Callable[[Turn, Any], None]


def carry_out(turn: Turn, effects: Sequence[Effect]) -> None:
    """Carry out a step's effects in order; nothing more once the person is erased."""
    for effect in effects:
        HANDLERS[type(effect)](turn, effect)
        if turn.erased:
            return


def _find(turn: Turn, effect: Find) -> None:
    """Store a finding. A safety level that sends the lifter to a clinician also plans the question, from the next day on, whether they have
    been; any other level ends it. While a level holds only until its questions are answered, these are asked for instead, the next day. A
    day that is closed, and new results, end a load limit that a coach has raised."""
    shut = effect.name == SAFETY_LEVEL and effect.value != Level.GO.value
    anew = effect.name == "load.limit" and effect.value != turn.known.facts.get("load.limit")
    raised = (shut or anew) and turn.known.facts.get("load.raised", "")
    persist.finding(turn, effect)
    if raised:
        why = "a day was closed" if shut else "there are new results"
        coaches = orders.end_all(turn.db, turn.person, "raise_load", why, turn.now)
        turn.changed()
        post(turn, [order_over(turn.db, one, turn.person, f"the load limit you raised holds as the tests say again, since {why}.")
                    for one in coaches])
    if effect.name not in (SAFETY_LEVEL, CHECK_DONE):
        return
    tomorrow, asks = (local_date(turn.now, turn.zone) + timedelta(days=1)).isoformat(), QUESTIONS_OPEN.get(effect.rule)
    if asks is None:
        persist.remind(turn, Remind("unanswered", "unanswered", ""))
        if effect.name == SAFETY_LEVEL:
            persist.remind(turn, Remind("referral", "referral", tomorrow if effect.value in REFERRED else ""))
    elif asks != CHECK or effect.value in REFERRED:
        persist.remind(turn, Remind("unanswered", asks, tomorrow))


def _stop_reminders(turn: Turn, effect: StopReminders) -> None:
    planner.stop_all(turn.db, turn.person, turn.now)
    turn.changed()


def _replan(turn: Turn, effect: Replan) -> None:
    planner.replan(turn.db, turn.person, turn.known.facts, turn.now)
    turn.changed()


def _alert(turn: Turn, effect: Alert) -> None:
    """Store an alert and send it. Whoever is sent to emergency care at once, before the questions are answered, is asked the next day
    whether they have been. A second alert of a run with the same words and level says that it was confirmed; one that was raised when the
    same questions were begun before is not raised again. Of pain or a sign that was told on an earlier day, it says on which."""
    if persist.alerted_before(turn, effect):
        return
    if effect.level and (words := effect.because.partition("”")[0]) != effect.because and persist.alerted_with(turn, effect, words):
        effect = replace(effect, because=f"confirmed: {effect.because}")
    told, today = told_since(turn.db, turn.person, effect.run), local_date(turn.now, turn.zone)
    if told and (day := local_date(told, turn.zone)) != today:
        effect = replace(effect, because=f"{effect.because.rstrip('.')}. Told on {DAY_NAMES[day.weekday()]} {day.day} {day:%B}.")
    alert = persist.alert(turn, effect)
    if effect.level == Level.EMERGENCY.value:
        persist.remind(turn, Remind("referral", "referral", (today + timedelta(days=1)).isoformat()))
    post(turn, alert_letters(turn.db, turn.person, effect.because, effect.level, alert))


def _erase(turn: Turn, effect: Erase) -> None:
    people.erase(turn.db, turn.person, turn.now)
    turn.erased = True


def _export(turn: Turn, effect: Export) -> None:
    """Send a copy of a person's data in each format meant for the chat, all made before any is put in the outbox; and what is kept of
    their film."""
    for says, file in [(one.said, _file(turn, one)) for one in FORMATS.values() if one.said]:
        _send(turn, says, file)
    for name, label in FILM_KEPT.items() if CURVE_FACT in turn.known.facts else ():
        if film_kept_for(turn.db, turn.person, name) != "no":
            persist.put_message(turn.db, turn.person, Say(f"{label}, if one is kept.", picture=name), turn.now, turn.to)


def _file(turn: Turn, wanted: Format) -> persist.Document:
    return persist.Document(wanted.file, wanted.made(ExportSource(turn.db, turn.person, turn.now, turn.known.facts, turn.book)))


def _send(turn: Turn, says: str, file: persist.Document) -> None:
    persist.put_message(turn.db, turn.person, Say(says), turn.now, turn.to, file)


def _read_film(turn: Turn, effect: ReadFilm) -> None:
    if turn.to is not None:
        shown, whole = (effect.squat == "plain" and film_kept_for(turn.db, turn.person, name) != "no"
                        for name in ("film_still", WHOLE_FILM))
        turn.films.append(FilmWanted(turn.person, turn.to, effect.film, effect.run, effect.squat, effect.what, shown, whole))


def _cards(turn: Turn, effect: SendCards) -> None:
    from companion.film.sheet import cards_pdf

    _send(turn, CARDS_SAY, persist.Document("cards.pdf", cards_pdf("letter" if effect.paper == "letter" else "A4")))


def show(turn: Turn, effect: Show) -> None:
    """Show a lifter their coaches, or a coach the view they asked for."""
    if effect.view == "my_coaches":
        post(turn, links.my_coaches(turn))
    elif effect.view == "pooled_trial":
        from companion.coach.pooled_page import own_say

        post(turn, [Letter(turn.person, own_say(turn.db, turn.person))])
    elif effect.view == "lifter_report":
        _report(turn, effect.of)
    elif effect.view == "lifter_named":
        from companion.coach.typed import answer_to

        said = answer_to(turn, effect.of)
        post(turn, [Letter(turn.person, said)]) if isinstance(said, Say) else show(turn, said)
    else:
        from companion.coach import views

        of = views.in_their_copy(turn.db, turn.person, effect.view, effect.of)
        post(turn, [Letter(turn.person, say, about=of) for say in views.show(turn, effect.view, effect.of)])


def _report(turn: Turn, of: str) -> None:
    lifter = lifter_looked_at(turn, of, "report")
    if lifter is None:
        post(turn, [Letter(turn.person, Say(NOT_YOURS))])
    else:
        turn.reports.append(ReportWanted(turn.person, lifter, turn.to))


HANDLERS: Final[Mapping[type[Effect], Handler]] = {
    Say: persist.message, Began: persist.began, Ended: persist.ended, Reopened: persist.reopened, Record: persist.answer,
    Void: late_pain.void, CountAgain: late_pain.count_again,
    Find: _find, Remind: persist.remind, StopReminders: _stop_reminders, Replan: _replan, Alert: _alert, Erase: _erase, Export: _export,
    Calendar: lambda turn, effect: _send(turn, CALENDAR_SAYS, _file(turn, FORMATS["ics"])),
    Link: lambda turn, effect: post(turn, links.link(turn, effect)), Redeem: links.redeem,
    Act: lambda turn, effect: post(turn, actions.act(turn, effect)), Show: show, ReadFilm: _read_film,
    SendCards: _cards,
}
"""The handler of each effect."""
