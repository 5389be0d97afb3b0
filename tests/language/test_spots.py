"""Where it hurts, as a sentence tells it."""

import pytest

from companion.language.pain.spots import spots_told


@pytest.mark.parametrize(("text", "spots"), [
    ("my knee is sore", "knee"),
    ("my back hurts", "back"),
    ("the back of my knee hurts", "knee"),
    ("my upper back hurts", "other"),
    ("my knee hurts, and my lower back too", "knee back"),
    ("my knee and my chest hurt", "chest knee"),
    ("my hip hurts but my back doesn't hurt", "hip"),
    ("last year my knee hurt, now my hip hurts", "hip"),
    ("pain going from my back down my leg", "back"),
    ("sharp pain in my calf", "leg"),
    ("it hurts", ""),
    ("my knee is fine", ""),
    ("does my back round?", "")])
def test_each_place_that_hurts_now_is_told_the_chest_first(text: str, spots: str):
    assert " ".join(spots_told(text)) == spots
