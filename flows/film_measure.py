"""Filmed squat with cards: a film that measures where the lower back begins to round, and with one change each.

Films of one run are of one taping; at most two test shots: choice.
"""

from __future__ import annotations

from typing import Final

from companion.conversation.condition import Condition, Fact, Facts, Value, fact
from companion.conversation.effects import SendCards
from companion.conversation.flow import END, Ask, Do, Gate, Jump, Known, Step, Tell
from companion.conversation.kinds import Film, Ready, choice
from companion.conversation.number_kinds import Number
from companion.language.units import METRIC
from companion.screening.load_limit import limit_now, over_by
from companion.screening.protocols.film_measure import FILMED_CHANGES, LOADED, OF_EACH, OF_SQUATS, PROTOCOL, FilmMeasure
from companion.screening.setups import CHANGES, SquatChange
from companion.screening.sources import counted, with_numbers
from flows.block import AMOUNTS
from flows.by_film import FILMS_READ, reading
from flows.protocol_flow import flow_of
from flows.shared import BODY_WEIGHT, NO_BAR, SHARP

READS_FILMS: Final = Gate(~FILMS_READ,
                          "Films can't be read here: this bot was installed without its film part. All other tests work without it.")

SQUATS_A_SET: Final = with_numbers("{set_squats:count squats}")
STILL_THEN_SQUAT: Final = with_numbers("Start filming, stand still for {film_still:count seconds}, then "
                                       f"{SQUATS_A_SET}. Send the film here, best as a file.")
FILMS: Final = ("shot", "shot2", *OF_SQUATS)
KEEP_STILL: Final = SquatChange("still", "kept still", "try to keep the curve of your lower back still, all the way down and up",
                           CHANGES["slow"].caution)
ALL_CHANGES: Final = {**CHANGES, KEEP_STILL.name: KEEP_STILL}
SQUAT_TITLES: Final = {"heels": "Heels up", "front": "Weight in front", "slow": "Slower", "wide": "Wider", "still": "Kept still",
                 **dict.fromkeys(LOADED, "With that load")}


def at_start(known: Known) -> dict[str, Value]:
    """Return the amounts of the changes in the lifter's units, and words for films not read yet."""
    return {**AMOUNTS[str(known.facts.get("welcome.units", METRIC))], **{f"{film}_says": "That is read." for film in FILMS}}


def _told(squat: str) -> Fact:
    def of(got: Facts, side: str) -> Value | None:
        """Return what a squat's film tells against the plain one, with its interval; None before it is read."""
        taken = {key: got.get(key) for one in ("plain", "again", squat) for key in (f"{one}_{what}" for what in OF_EACH)}
        film = FilmMeasure(**{key: value for key, value in taken.items() if key.endswith("reading") or isinstance(value, float | int)})
        if film.told(squat, "reading") not in ("onset", "none"):
            return None
        change, moved = film.change(squat), film.moved(squat)
        if film.told("plain", "reading") == "none":
            told = "your back rounds, and without it does not." if film.onset(squat) else "your back keeps its shape there too."
        elif moved is None:
            told = "no film can tell that apart from the plain squat."
        elif change is None:
            told = "your back does not round, as deep as it does without and deeper."
        else:
            way = {1: "later than without", 0: "at the same depth as without", -1: "earlier than without"}[moved]
            by, off = change
            told = f"your back rounds {way}: {by:+.0f}° (95 in 100: {by - off:+.0f} to {by + off:+.0f}°; + is later)."
        return f"{SQUAT_TITLES[squat]}: {told}"

    return Fact(f"{squat}_told", of=of)


def _limit(got: Facts, side: str) -> Value | None:
    """Return the load limit that holds, in kg; None without any."""
    found = limit_now(got)
    return found[1] if found else None


def _over(squat: str) -> Fact:
    def of(got: Facts, side: str) -> Value | None:
        """Return whether a set's load is above the limit that holds, so that it is not asked for."""
        limit = _limit(got, side)
        return "yes" if over_by(float(got[f"{squat}_kg"]), None if limit is None else float(limit)) else "no"

    return Fact(f"{squat}_over", values=("yes", "no"), of=of)


def _apart(got: Facts, side: str) -> Value | None:
    """Return by how many degrees the onset of two plain films differs; None if one has none."""
    onsets = [got[f"{film}_onset"] for film in ("plain", "again") if got.get(f"{film}_reading") == "onset"]
    return round(abs(float(onsets[0]) - float(onsets[1]))) if len(onsets) == 2 else None


DEGREES: Final = {"onset": (40, 100), "spread": (0, 5), "deepest": (60, 120), "low": (40, 100), "high": (40, 100), "bend": (0, 40)}
READ_NUMBERS: Final = tuple(Fact(f"{film}_{name}", *DEGREES[name], step=.1) for film, names in OF_SQUATS.items()
                            for name in names if name in DEGREES)
"""Degrees that a film may give; the reading puts them there."""
HAS_ONSET: Final = fact("plain_reading").is_("onset")


def _compared(squat: str, say: str, only_if: Condition, caution: str, picture: str = "") -> tuple[Step, ...]:
    """Return the film of one more squat, and what it tells against the plain one."""
    return (Ask(f"{squat}_video", say, Film(), caution=caution, only_if=only_if, picture=picture), *reading(squat, "squats"),
            Tell(f"{{{squat}_told}}", fact(f"{squat}_told").known))


def _change(change: str) -> tuple[Step, ...]:
    wanted = HAS_ONSET & ~BODY_WEIGHT if change == "front" else HAS_ONSET
    one, picture = ALL_CHANGES[change], "hand_on_back" if change == "still" else f"squat_{change}"
    return _compared(change, f"{SQUAT_TITLES[change]}: {one.say}. All else as before, cards untouched. Film it the same way and send it. "
                     "Not today? Tap Skip.", wanted, one.caution, picture)


def _loaded(squat: str, before: Condition) -> tuple[Step, ...]:
    """Return a set with a load, which was to be done anyway."""
    first = squat == LOADED[0]
    say = (f"Squatting with a bar today anyway? Then film up to {counted(len(LOADED))} of those sets, cards untouched, the lightest first; "
           "nothing is lifted for this, and nothing above the load set for you. How heavy is the first? Else tap Skip." if first else
           "One more set that you do anyway? How heavy is it? Else tap Skip.")
    return (Ask(f"{squat}_kg", say, Number("kg", 1, 500, usual=(15, 300), example_value=60), only_if=before & ~BODY_WEIGHT & ~NO_BAR),
            Tell("That is above the {most:kg} to keep to for now, so leave that set out.", fact(f"{squat}_over").is_("yes")),
            *_compared(squat, f"That set, as you do it anyway. {STILL_THEN_SQUAT.replace(SQUATS_A_SET, 'your squats')}",
                       fact(f"{squat}_over").is_("no"), f"Safety arms in place. {SHARP}", PROTOCOL.picture))


FLOW = flow_of(
    PROTOCOL, at_start=at_start, before_check=(READS_FILMS,), command=("film with cards", "measure my squat"),
    facts=(*READ_NUMBERS, Fact("apart", 0, 60, step=1, of=_apart), *map(_told, (*FILMED_CHANGES, *LOADED)),
           Fact("most", 0, 500, step=.5, of=_limit), *map(_over, LOADED)),
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
        Ask("setup", with_numbers("Phone upright on a stand, at hip height, side-on, {phone_steps_0:count} big steps away. All of you and "
                                  "card 5 in view. No light from behind you."), Ready(), picture=PROTOCOL.picture),
        Ask("shot_video", with_numbers("First a test shot: a photo, or {film_still:count seconds} of film, standing side-on. Send it "
                                       "here."), Film(("video", "photo", "document"))),
        *reading("shot", "shot"),
        Ask("shot2_video", "Mend that and send one more test shot. Or tap Skip and film as it is.", Film(("video", "photo", "document")),
            only_if=fact("shot_reading").is_("mend")),
        *reading("shot2", "shot"),
        Ask("keep_film", "Each film is deleted here once it is read, unless you say so. May I keep two pictures of your plain squat, "
            "cards outlined and degrees written: where rounding begins, and a clip of seconds? They go when you erase your data, or say no "
            "here another time.", choice(
                ("coach", "Keep, coaches may see", "keep", "yes", "coach"), ("mine", "Keep, only for me", "only me", "mine"),
                ("no", "Keep nothing", "no", "nothing"))),
        Ask("keep_whole", "And the film itself? Up to 20 MB on the machine this bot runs on: your face in it, not locked, in no backup, "
            "seen by whoever may see the pictures. It goes when you erase your data, or say no here.", choice(
                ("yes", "Keep the film too", "keep", "yes"), ("no", "Delete it", "no", "delete")),
            only_if=fact("keep_film").one_of("coach", "mine")),
        Ask("plain_video", f"Now your usual squat, without load. {STILL_THEN_SQUAT}", Film(), caution=SHARP),
        *reading("plain", "squats", picture="chart_film"),
        Tell("On the chart: how far your lower back bends on the way down, a line a squat. The upright line is where rounding begins, the "
             "grey around it how far that may be off. Cards on cloth slide over the bones, so take the depth as an estimate; it says "
             "nothing of harm.", HAS_ONSET, picture="film_still"),
        Tell("“Back” takes you to the film again, or try another day.", fact("plain_reading").is_("mend")),
        Ask("again_video", "Once more just the same, cards untouched: it shows by how much two films of yours differ, before anything is "
            "changed. Film it the same way and send it. Not today? Tap Skip.", Film(), caution=SHARP, only_if=HAS_ONSET,
            picture="film_clip"),
        *reading("again", "squats"),
        Tell("Filmed twice, your rounding began {apart:deg} apart. A change counts only beyond what they differ.", fact("apart").known),
        *(step for change in FILMED_CHANGES for step in _change(change)),
        *(step for number, squat in enumerate(LOADED)
          for step in _loaded(squat, fact(f"{LOADED[number - 1]}_kg").known if number else fact("plain_reading").one_of("onset", "none"))),
    ),
)
