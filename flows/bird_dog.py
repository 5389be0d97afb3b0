"""Bird dog: stillness of the trunk while an arm and a leg lift. The side is that of the leg.

No norms for the hold were found with their reliability: the lifter's own baseline only. Where the phone films there is nothing to tap:
both legs in one go, counted by oneself, and the questions after them.
"""

from dataclasses import replace

from companion.conversation.condition import Fact, fact
from companion.conversation.flow import Ask, Jump, Tell, both, each_side
from companion.conversation.kinds import Hold, Option, Ready, choice
from companion.conversation.number_kinds import Number
from companion.screening.protocols.bird_dog import HOLD_SECONDS, PROTOCOL
from companion.screening.sources import value, with_numbers
from flows.block import LEFT_OUT, SIDES_HURT, did
from flows.by_film import FILMS_READ, films_unread, side_film
from flows.protocol_flow import flow_of
from flows.shared import SHARP

STILL = Number("s", low=0, high=HOLD_SECONDS, usual=(0, HOLD_SECONDS), example_value=8, step=1)
MOVED_FIRST = choice(
    ("clean", "Nothing moved", "nothing", "it kept", "kept", "it held", "clean", "still", "stayed still", "it stayed still", "none"),
    ("hip", "A hip lifted or turned", "hip", "hips", "hip turned", "hip lifted", "hip dropped", "hips turned"),
    ("back", "The back bent or sagged", "back bent", "back sagged", "it sagged", "sagged", "my back sagged"),
)
ENDED_IT = choice(
    Option("clean", "I came down, nothing moved", ("nothing moved", "nothing", "tired", "arm", "balance", "i came down", "clean")),
    *MOVED_FIRST.choices[1:])
FILMS_ITSELF = fact("seen_by").is_("film")
BY_FILM_TOO = FILMS_ITSELF & FILMS_READ
BY_STICK = fact("seen_by").is_("stick")
COME_DOWN = "Come down as soon as you can't keep it still. " + SHARP

FLOW = flow_of(
    PROTOCOL, version=2, at_start=films_unread, facts=both(*(Fact(f"{{side}}_film_{part}", 0, 90, step=.1) for part in ("pelvis", "back"))),
    steps=(
        Ask("seen_by", f"This shows {PROTOCOL.looks_at}. Who or what will tell "
            "you?", choice(
                ("film", "Film, from the side", "film", "video", "camera", "phone"),
                ("mirror", "Mirror", "in a mirror"),
                ("friend", "A friend watches", "friend", "partner", "somebody"),
                ("stick", "A stick on my back", "stick", "broomstick", "a stick"),
                ("feel", "By feel", "feel", "felt it", "nobody"))),
        Ask("setup", "Hands and knees, hands under the shoulders, knees under the hips, something soft under the "
            "knees. This phone on the floor, within reach.", Ready(), only_if=~BY_STICK & ~FILMS_ITSELF, picture="bird_dog_setup"),
        Ask("setup_stick", "Hands and knees, hands under the shoulders, knees under the hips, something soft under "
            "the knees. Phone on the floor, within reach. Each time before you begin, lay the stick along your "
            "spine: if it tips or slides, something moved.", Ready(), only_if=BY_STICK,
            picture="bird_dog_setup_stick"),
        Tell(with_numbers("With printed cards the film measures too: card 1 on the ribs and card 2 on the belt line, on the side that "
                          "faces the phone, card 5 upright behind you. Keep still for {film_still:count seconds} before each leg. One "
                          "film a leg."), BY_FILM_TOO),
        Tell(with_numbers("Hands and knees, hands under the shoulders, knees under the hips, something soft under the knees. Prop the "
                          "phone side-on, {phone_steps_0:count} big steps away, and film; nothing to tap meanwhile. Push the floor away, "
                          "then reach one leg straight back and the other arm straight ahead, no higher than your body."), FILMS_ITSELF,
             picture="bird_dog_setup"),
        replace(did(with_numbers("Left leg first: hold it while you count to {bird_dog_hold:count}, rest, then {bird_dog_slow:count} slow "
                                 "ones: out, to the floor, out again. Then the right leg."),
                    COME_DOWN, *SIDES_HURT, only_if=FILMS_ITSELF, picture="bird_dog_left"),
                then=(Jump(fact("did").is_(LEFT_OUT.value)),)),
        *each_side(
            Ask("{side}_do", "Now the {side} leg. Tap Start, push the floor away, then reach that leg straight back "
                "and the other arm straight ahead, no higher than your body. Hold until I say time.",
                Hold(seconds=int(HOLD_SECONDS), count_in=int(value("bird_dog_place"))), caution=COME_DOWN, only_if=~FILMS_ITSELF,
                then=(Jump(~fact("{side}_do").known, "{side}_slow_do"),), picture=PROTOCOL.picture),
            Ask("{side}_hold", with_numbers("With the {side} leg up: for how many of the {bird_dog_hold:count seconds} did your hips and "
                                            "back stay still? {bird_dog_hold_0} if for all of them."), STILL, method="{seen_by}"),
            Ask("{side}_shape", "What ended it, or moved first?", ENDED_IT, only_if=fact("{side}_hold") < HOLD_SECONDS),
            Ask("{side}_slow_do", with_numbers("Rest a moment. Then {bird_dog_slow:count} slow ones with the {side} leg and the other arm: "
                                               "out, back to the floor, out again. Then tap Done."), Ready("Done"), caution=COME_DOWN,
                only_if=~FILMS_ITSELF, picture="bird_dog_slow_{side}"),
            Ask("{side}_slow", with_numbers("In those {bird_dog_slow:count}, {side} leg: what moved first?"), MOVED_FIRST,
                only_if=fact("{side}_slow_do").known | FILMS_ITSELF),
            *side_film("Cards on? Send the film of the {side} leg, and I read how still pelvis and back are kept.", "trunk", "{side}",
                       BY_FILM_TOO & fact("{side}_hold").known),
        ),
    ),
)
