"""Filmed squat with cards: a film that measures where the lower back begins to round, and with one change each.

Films of one run are of one taping. Three squats a film, two seconds of standing still first, at most two test shots: choice.
"""

from __future__ import annotations

from typing import Any, Final

from companion.conversation.condition import Fact, Facts, Value, fact
from companion.conversation.effects import SendCards
from companion.conversation.flow import END, Ask, Do, Gate, Jump, Known, Step, Tell
from companion.conversation.kinds import Film, Ready, choice
from companion.language.units import IMPERIAL
from companion.screening.protocols.film_measure import FILMED_CHANGES, PROTOCOL, FilmMeasure
from companion.screening.setups import CHANGES
from flows.by_film import FILMS_READ, reading
from flows.protocol_flow import flow_of
from flows.shared import BODY_WEIGHT, SHARP

READS_FILMS: Final = Gate(~FILMS_READ,
                          "Films can't be read here: this bot was installed without its film part. All other tests work without it.")

STILL_THEN_SQUAT: Final = "Start filming, stand still for two seconds, then three squats. Send the film here, best as a file."
FILMS: Final = ("shot", "shot2", "plain", "again", *FILMED_CHANGES)
MOVED_WORDS: Final = {1: "later", 0: "same", -1: "earlier"}
CHANGE_TITLES: Final = {"heels": "Heels up", "front": "Weight in front", "slow": "Slower", "wide": "Wider"}


def at_start(known: Known) -> dict[str, Value]:
    """Return the amounts of the changes in the lifter's units, and words for films not read yet."""
    inches = known.facts.get("welcome.units") == IMPERIAL
    return {"rise": "about an inch" if inches else "2 to 3 cm", "weight": "5 to 10 lb" if inches else "2 to 5 kg",
            **{f"{film}_says": "That is read." for film in FILMS}}


def _moved(change: str) -> Fact:
    def of(got: Facts, side: str) -> Value | None:
        """Return "later", "same" or "earlier" for a changed squat on film; None if the films can't tell."""
        taken: dict[str, Any] = {}
        for film in ("plain", "again", change):
            taken[f"{film}_reading"] = got.get(f"{film}_reading")
            numbers = {key: got.get(f"{film}_{key}") for key in ("onset", "spread", "deepest")}
            taken |= {f"{film}_{key}": value for key, value in numbers.items() if isinstance(value, float | int)}
        moved = FilmMeasure(**taken).moved(change)
        return None if moved is None else MOVED_WORDS[moved]

    return Fact(f"{change}_moved", values=("later", "same", "earlier"), of=of)


def _apart(got: Facts, side: str) -> Value | None:
    """Return by how many degrees the onset of two plain films differs; None if one has none."""
    onsets = [got[f"{film}_onset"] for film in ("plain", "again") if got.get(f"{film}_reading") == "onset"]
    return round(abs(float(onsets[0]) - float(onsets[1]))) if len(onsets) == 2 else None


OF_EACH: Final = (("onset", 40, 100), ("spread", 0, 5), ("deepest", 60, 120))
OF_PLAIN: Final = (("low", 40, 100), ("high", 40, 100), ("bend", 0, 40))
READ_NUMBERS: Final = tuple(Fact(f"{film}_{name}", low, high, step=.1) for film in ("plain", "again", *FILMED_CHANGES)
                            for name, low, high in (*OF_EACH, *(OF_PLAIN if film == "plain" else ())))
"""Degrees that a film may give; the reading puts them there."""
HAS_ONSET: Final = fact("plain_reading").is_("onset")


def _change(change: str) -> tuple[Step, ...]:
    """Return the film with one change, and what it tells against the plain one."""
    wanted = HAS_ONSET & ~BODY_WEIGHT if change == "front" else HAS_ONSET
    moved, title = fact(f"{change}_moved"), CHANGE_TITLES[change]
    return (
        Ask(f"{change}_video", f"{title}: {CHANGES[change].say}. All else as before, cards untouched. Film it the same way and send it. "
            "Not today? Tap Skip.", Film(), caution=CHANGES[change].caution, only_if=wanted, picture=f"squat_{change}"),
        *reading(change, "squats"),
        Tell(f"{title}: your back rounds later than without, by more than two films may differ.", moved.is_("later")),
        Tell(f"{title}: your back rounds earlier than without, by more than two films may differ.", moved.is_("earlier")),
        Tell(f"{title}: your back rounds at the same depth as without, as near as a film can tell.", moved.is_("same")),
        Tell(f"{title}: no film can tell that apart from the plain squat.",
             fact(f"{change}_reading").one_of("onset", "none") & ~moved.known),
    )


FLOW = flow_of(
    PROTOCOL, at_start=at_start, before_check=(READS_FILMS,), command=("film with cards", "measure my squat"),
    facts=(*READ_NUMBERS, Fact("apart", 0, 60, step=1, of=_apart), *map(_moved, FILMED_CHANGES)),
    steps=(
        Ask("cards", "This measures where your back begins to round, with five printed cards on your side. You need a printer, tape, tight "
            "clothes, a phone on a stand and good light. Are the cards printed?", choice(
                ("ready", "Yes, they are ready", "yes", "printed", "done"), ("a4", "Send them, A4", "a4", "send"),
                ("letter", "Send them, letter", "letter"), ("no", "No printer", "no", "none")),
            then=(Jump(fact("cards").is_("no") | ~fact("cards").known, END,
                       "Then leave it out. Nothing is lost: every other test works without it."),)),
        Do(SendCards("A4"), fact("cards").is_("a4")),
        Do(SendCards("letter"), fact("cards").is_("letter")),
        Ask("taped", "Tape cards 1 to 4 flat on the side that faces the phone, arrows up: ribs, belt line, mid-thigh, shin. Card 5 on the "
            "wall behind you. Hands and sleeves clear of them.", Ready(), picture="film_cards"),
        Ask("setup", "Phone upright on a stand, at hip height, side-on, three big steps away. All of you and card 5 in view. No light from "
            "behind you.", Ready(), picture=PROTOCOL.picture),
        Ask("shot_video", "First a test shot: a photo, or two seconds of film, standing side-on. Send it here.",
            Film(("video", "photo", "document"))),
        *reading("shot", "shot"),
        Ask("shot2_video", "Mend that and send one more test shot. Or tap Skip and film as it is.", Film(("video", "photo", "document")),
            only_if=fact("shot_reading").is_("mend")),
        *reading("shot2", "shot"),
        Ask("plain_video", f"Now your usual squat, without load. {STILL_THEN_SQUAT}", Film(), caution=SHARP),
        *reading("plain", "squats"),
        Tell("On the chart: how far your lower back bends on the way down, a line a squat. The upright line is where rounding begins, the "
             "grey around it how far that may be off. Cards on cloth slide over the bones, so take the depth as an estimate; it says "
             "nothing of harm.", HAS_ONSET, picture="chart_film"),
        Tell("“Back” takes you to the film again, or try another day.", fact("plain_reading").is_("mend")),
        Ask("again_video", "Once more just the same, cards untouched: it shows by how much two films of yours differ, before anything is "
            "changed. Film it the same way and send it. Not today? Tap Skip.", Film(), caution=SHARP, only_if=HAS_ONSET),
        *reading("again", "squats"),
        Tell("Filmed twice, your rounding began {apart:deg} apart. A change counts only beyond what they differ.", fact("apart").known),
        *(step for change in FILMED_CHANGES for step in _change(change)),
    ),
)
