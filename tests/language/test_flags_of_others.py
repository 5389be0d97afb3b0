"""A sign is one's own beside a word of an animal, a thing, a title, a trade or a list; what is said of those is no sign."""

from __future__ import annotations

import pytest

from companion.language.flags import Flag
from companion.language.flags.rules import by_the_rules
from tests.table import each_row

# What is said of oneself, and its counterpart said of something or somebody else.
PAIRS = [
    (Flag.FEVER, "my dog's ill and i've got a fever too", "my dog's ill"),
    (Flag.FEVER, "the hamster's poorly and i'm poorly with it", "poorly hamster, kids in tears"),
    (Flag.FEVER, "i'm infected, the laptop's fine", "infected laptop, had to wipe it"),
    (Flag.FEVER, "my cat scratched me and it's infected", "the rabbit's infected ear"),
    (Flag.FEVER, "dog bite is infected", "the dog is infected"),
    (Flag.FEVER, "septic toe", "septic tank man is here"),
    (Flag.FEVER, "i had tonic for my fever", "fever tree tonic was on offer"),
    (Flag.FEVER, "chills all night and a song in my head", "chills when that guitar solo starts"),
    (Flag.FEVER, "chickenpox since tuesday", "chickenpox at six, nothing since"),
    (Flag.FEVER, "covid two weeks back, still coughing", "covid two winters back, mild"),
    (Flag.PREGNANCY, "our ewe is pregnant with triplets and so am i", "our ewe is pregnant with triplets"),
    (Flag.PREGNANCY, "the goldfish looks pregnant but it's me who is", "the goldfish looks pregnant"),
    (Flag.PREGNANCY, "pregnant dog owner here", "pregnant cats at the vet's all day"),
    (Flag.PREGNANCY, "midwife, delivered three weeks ago", "midwife, delivered three"),
    (Flag.PREGNANCY, "expecting", "expecting company so i've tidied up"),
    (Flag.PREGNANCY, "pregnant, due date in june", "the due date on my tax is the 31st"),
    (Flag.CANCER_BONE, "i've got cancer like the cat had", "the cat's got cancer"),
    (Flag.CANCER_BONE, "cancer, stage two", "cancer, born july 3rd"),
    (Flag.CANCER_BONE, "on steroids for years", "that leg press looks like it's on steroids"),
    (Flag.CANCER_BONE, "oncology on thursday", "oncology pharmacist so my lunch is whenever"),
    (Flag.CANCER_BONE, "lump in my breast", "lump in the mat, carpet under it"),
    (Flag.WEAKNESS, "the handrail's fine, my leg gave way", "the handrail gave way in the stairwell"),
    (Flag.WEAKNESS, "clutch foot gives way", "clutch gives way in second"),
    (Flag.WEAKNESS, "my legs quit on me", "my legs quit on rep 12 so i racked it"),
    (Flag.FALL, "the handrail gave way and i fell down the stairs", "the exhaust fell off"),
    (Flag.FALL, "shelf fell on my hip", "the roof fell in"),
    (Flag.FALL, "prices fell and so did i, off a ladder", "prices fell again"),
    (Flag.FALL, "the ladder slipped yesterday", "lambs keep slipping on ice"),
    (Flag.FALL, "walking the dog and slipped on ice", "the dog slipped on ice"),
    (Flag.PREGNANCY, "i'm a teacher and pregnant", "my hairdresser is pregnant"),
    (Flag.HEART_HISTORY, "i'm a dad and had a heart attack", "my dad had a heart attack"),
    (Flag.CHEST, "never not faint when i stand", "never smoked, never fainted, never broke anything"),
    (Flag.SELF_HARM, "thinking of kms", "ran 10 kms"),
    (Flag.WEAKNESS, "in bird dog the left leg gave way", "the dog's leg gave way"),
    (Flag.CHEST, "cat cow got me dizzy", "the cat got dizzy"),
    (Flag.FALL, "slipped on the ice", "slipped on the app, hit stop"),
    (Flag.CHEST, "fainted when the goats came in", "fainting goats between sets"),
    (Flag.CHEST, "coffee, then palpitations", "the coffee is too weak, the line is faint"),
    (Flag.CHEST, "i'm breathless, reading that novel in bed", "breathless prose in that novel"),
    (Flag.CHEST, "stairs, got dizzy", "flatmate fainted at the blood bank"),
    (Flag.CHEST, "chest pain", "paramedic, chest pain calls all night"),
    (Flag.CHEST, "out cold for a minute", "out cold by nine every night"),
    (Flag.BLADDER_BOWEL, "boiler's leaking and so am i, every time i cough", "boiler's leaking"),
    (Flag.BLADDER_BOWEL, "donkey's fine but i can't pee", "donkey won't pass water for the vet"),
    (Flag.BLADDER_BOWEL, "bladder won't empty", "football bladder's perished"),
    (Flag.BLADDER_BOWEL, "catheter fitted tuesday", "teaching catheter care to students"),
    (Flag.BLADDER_BOWEL, "bowels not working", "bowels like clockwork"),
    (Flag.SADDLE, "numb between my legs since the horse trek", "saddle sore from a six hour horse trek"),
    (Flag.SEXUAL, "impotent since march", "impotent rage at the railway"),
    (Flag.ANTICOAGULANTS, "i dispense warfarin and i'm on it myself", "i dose warfarin for other people"),
    (Flag.HEART_HISTORY, "heart attack last year", "heart attack on a plate, that fry up"),
    (Flag.HEART_HISTORY, "heart rate strap over my pacemaker", "heart rate strap says low battery"),
    (Flag.SPINE_HISTORY, "slipped disc in 2015", "floppy disc collection props up the platform"),
    (Flag.RESTRICTION, "surgeon gave me a weight restriction", "bridge has a weight restriction"),
    (Flag.RESTRICTION, "doc gave me the green light for bodyweight only", "doc gave me the green light at the check"),
    (Flag.WEIGHT_LOSS, "lost weight without trying", "lost weight off the barbell"),
    (Flag.UNDER_18, "fourteen", "i counted holes from the bottom: fourteen"),
    (Flag.SELF_HARM, "i want out of everything", "i want out of these reminders"),
    (Flag.SELF_HARM, "don't want to be here any more, in this world", "i don't want to be here any more, in this chat group"),
    (Flag.SELF_HARM, "i no longer wish to exist", "i no longer wish to exist in your database"),
    (Flag.SELF_HARM, "vanish from everyone's life", "how to vanish from the public rankings"),
    (Flag.SELF_HARM, "phone's dying and i want to die too", "my phone's about to die, one sec"),
    (Flag.SELF_HARM, "i'm a burden to my family", "i'm a burden to the floorboards"),
    (Flag.SELF_HARM, "the bar's a burden and so am i", "the bar's a burden"),
    (Flag.SELF_HARM, "nothing to live for", "nothing to live for but pizza"),
    (Flag.SELF_HARM, "wrote my letter to the kids", "wrote my letter to the council"),
    (Flag.SELF_HARM, "said goodbye to my kids", "said goodbye to my old belt"),
    (Flag.SELF_HARM, "world would be better without me", "world would be better without 3/4 reps"),
    (Flag.SELF_HARM, "wish i'd never been born", "wish i'd never been born with these femurs"),
    (Flag.SELF_HARM, "on suicide watch last month", "on suicide watch duty tonight"),
]  # fmt: skip
IMPLICIT = [
    (Flag.CHEST, "fainted in the gym"), (Flag.SADDLE, "numb down there"), (Flag.PREGNANCY, "pregnant btw"),
    (Flag.FEVER, "ill since friday"), (Flag.PREGNANCY, "not pregnant, unless the test lies"), (Flag.HEART_HISTORY, "train with pacemaker"),
    (Flag.FALL, "fell horse riding on sunday"), (Flag.SELF_HARM, "i want out"),
]  # fmt: skip


def flags_of(text: str) -> set[Flag]:
    return {heard.flag for heard in by_the_rules(text)}


@each_row(("flag", "own", "others"), PAIRS)
def test_ones_own_is_heard_and_what_is_said_of_something_else_is_not(flag: Flag, own: str, others: str) -> None:
    assert flag in flags_of(own)
    assert flag not in flags_of(others)


@pytest.mark.parametrize(("flag", "text"), IMPLICIT)
def test_where_nobody_is_named_it_is_the_writers(flag: Flag, text: str) -> None:
    assert flag in flags_of(text)
