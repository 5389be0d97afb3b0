"""About you: body, squat, what is at hand, and with a tape three lengths. A test that needs one of these asks for that alone."""

from companion.conversation.condition import Condition, Value, fact
from companion.conversation.flow import Ask, Flow, Known
from companion.conversation.kinds import Kind, YesNo, choice
from companion.conversation.number_kinds import Number
from flows.shared import BANDS

PROPORTIONS = "tape,shin,thigh,trunk"


def asked_for(known: Known) -> dict[str, Value]:
    """Return which details are asked: those it was begun with by name, else all."""
    asked = PROPORTIONS if known.asked == "proportions" else known.asked
    wanted = [key for key in asked.split(",") if key in KEYS] or KEYS
    return {f"asks_{key}": "yes" for key in wanted}


def _about(key: str, say: str, kind: Kind, only_if: Condition | None = None, picture: str = "") -> Ask:
    asks = fact(f"asks_{key}").known
    return Ask(key, say, kind, only_if=asks if only_if is None else asks & only_if, picture=picture)


STEPS = (
    _about("height", "How tall are you?", Number("cm", 120, 230, usual=(145, 205), example_value=175)),
    _about("mass", "What do you weigh? Skip it if you like.", Number("kg", 30, 300, usual=(45, 150), example_value=78)),
    _about("sex", "Woman or man? It only sets how exact one of the tests is taken to be. You can skip it.", choice(
        ("woman", "Woman", "female", "f", "women", "lady", "girl"), ("man", "Man", "male", "m", "men", "guy", "bloke"),
        ("unsaid", "Rather not say"))),
    _about("years", "For how many years have you squatted with a bar?",
        Number("years", 0, 70, usual=(0, 40), example_value=2)),
    _about("load", "What do you usually squat for your working sets? Skip it if you don't use a bar yet.",
        Number("kg", 0, 500, usual=(15, 300), example_value=80)),
    _about("bar", "Where does the bar sit?", choice(
        ("high", "High on the back", "high bar"), ("low", "Low on the back", "low bar"),
        ("front", "In front", "front squat"), ("none", "No bar yet", "none", "no bar")),
        fact("load").known),
    _about("usual_depth", "How deep do you usually squat? Parallel: the top of the thigh level with the floor.", BANDS,
        picture="squat_bands"),
    _about("tape", "Now what is at hand. A tape measure or a ruler?", YesNo()),
    _about("level", "A level on your phone that shows degrees? Many phones have one built in.", YesNo()),
    _about("stick", "A broomstick, or an empty bar?", choice(
        ("broomstick", "Broomstick", "stick", "broom"), ("bar", "Empty bar", "barbell", "bar"), ("none", "Neither"))),
    _about("view", "Can you see yourself from the side while you squat?", choice(
        ("film", "Phone on a stand, filming", "film", "phone", "video"), ("mirror", "Mirror"), ("neither", "Neither"))),
    _about("shin", "If you like, three lengths draw your own squat instead of an average one. Your shin: from the outer knee joint to the "
        "knob of the ankle?", Number("cm", 15, 90, usual=(33, 52), example_value=43), fact("tape").is_("yes")),
    _about("thigh", "Your thigh: from the bony knob at the side of the hip to the outer knee joint?",
        Number("cm", 15, 90, usual=(33, 54), example_value=43), fact("tape").is_("yes")),
    _about("trunk", "Your trunk: sitting tall, from the knob at the side of the hip to the top of the shoulder?",
        Number("cm", 15, 90, usual=(38, 64), example_value=50), fact("tape").is_("yes")),
)
KEYS = [step.key for step in STEPS]

FLOW = Flow("about_you", version=3, compatible=(2,), title="About you", at_start=asked_for, steps=STEPS,
            sentences=(r"(?:measure )?my (?P<asked>proportions)",))
