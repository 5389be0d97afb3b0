"""The chart of a filmed squat shows what the film gave, in lines and in words."""

from __future__ import annotations

from io import BytesIO

from PIL import Image

from companion.pictures.film_chart import _drawn, film_chart, film_curves

TEXT = "72 66 78|10,0 40,1 72,1.5 104,14|12,0.5 40,1 70,2 102,13"


def test_each_squat_is_a_line_and_the_onset_stands_in_its_band():
    axes = _drawn(film_curves(TEXT)).axes[0]
    lines = [line for line in axes.lines if line.get_label().startswith("squat")]
    assert [tuple(line.get_xdata()) for line in lines] == [(10, 40, 72, 104), (12, 40, 70, 102)]
    assert len({line.get_linestyle() for line in lines}) == 2
    assert next(line for line in axes.lines if line not in lines).get_xdata()[0] == 72
    assert axes.patches[0].get_x() == 66
    assert axes.patches[0].get_width() == 12


def test_the_words_say_the_same():
    words = film_curves(TEXT).words
    assert "begins at about 72°, between 66° and 78°" in words
    assert "13° to 14°" in words


def test_without_an_onset_none_is_drawn():
    curves = film_curves("|10,0 40,1 72,1.5 104,2")
    assert curves.onset is None
    assert not _drawn(curves).axes[0].patches
    assert "No onset" in curves.words


def test_nothing_is_drawn_of_nothing_or_of_what_is_no_curve():
    assert film_curves("") is None
    assert film_curves("72 66 78|") is None
    assert film_curves("what else") is None


def test_it_is_a_picture_of_a_phones_width():
    picture = Image.open(BytesIO(film_chart(film_curves(TEXT))))
    assert picture.width >= 800
    assert picture.format == "PNG"
