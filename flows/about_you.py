"""About you: body, squat, and what is at hand."""

from companion.conversation.condition import fact
from companion.conversation.flow import Ask, Flow
from companion.conversation.kinds import YesNo, choice
from companion.conversation.number_kinds import Number
from flows.shared import BANDS

FLOW = Flow(
    "about_you", version=1, title="About you",
    steps=(
        Ask("height", "How tall are you?", Number("cm", 120, 230, usual=(145, 205), example_value=175)),
        Ask("mass", "What do you weigh? Skip it if you like.", Number("kg", 30, 300, usual=(45, 150), example_value=78)),
        Ask("sex", "Woman or man? It only sets how exact one of the tests is taken to be. You can skip it.", choice(
            ("woman", "Woman", "female", "f", "women", "lady", "girl"), ("man", "Man", "male", "m", "men", "guy", "bloke"),
            ("unsaid", "Rather not say"))),
        Ask("years", "For how many years have you squatted with a bar?",
            Number("years", 0, 70, usual=(0, 40), example_value=2)),
        Ask("load", "What do you usually squat for your working sets? Skip it if you don't use a bar yet.",
            Number("kg", 0, 500, usual=(15, 300), example_value=80)),
        Ask("bar", "Where does the bar sit?", choice(
            ("high", "High on the back", "high bar"), ("low", "Low on the back", "low bar"),
            ("front", "In front", "front squat"), ("none", "No bar yet", "none", "no bar")),
            only_if=fact("load").known),
        Ask("usual_depth", "How deep do you usually squat? Parallel: the top of the thigh level with the floor.", BANDS,
            picture="squat_bands"),
        Ask("tape", "Now what is at hand. A tape measure or a ruler?", YesNo()),
        Ask("level", "A level on your phone that shows degrees? Many phones have one built in.", YesNo()),
        Ask("stick", "A broomstick, or an empty bar?", choice(
            ("broomstick", "Broomstick", "stick", "broom"), ("bar", "Empty bar", "barbell", "bar"), ("none", "Neither"))),
        Ask("view", "Can you see yourself from the side while you squat?", choice(
            ("film", "Phone on a stand, filming", "film", "phone", "video"), ("mirror", "Mirror"), ("neither", "Neither"))),
    ),
)
