"""Inks against the paper, by the formula of WCAG 2.2."""

from __future__ import annotations

from typing import Final

import pytest

from companion.pictures.charts import SHAPES
from companion.pictures.ink import INKS, PAPER
from companion.pictures.poses import poses
from companion.pictures.scene import Label

from .contrast import contrast, luminance

ENOUGH: Final = 4.5
"""Least contrast of text against its background: WCAG 2.2, success criterion 1.4.3, level AA."""


@pytest.mark.parametrize(("one", "other", "ratio"), [
    ("#000000", "#FFFFFF", 21.0), ("#FFFFFF", "#FFFFFF", 1.0), ("#777777", "#FFFFFF", 4.48), ("#767676", "#FFFFFF", 4.54)])
def test_contrast_is_that_of_the_standard(one, other, ratio):
    """Black on white is 21; #767676 is the lightest grey that passes 4.5 on white (both well known, from memory)."""
    assert contrast(one, other) == pytest.approx(ratio, abs=0.01)
    assert contrast(other, one) == contrast(one, other)


@pytest.mark.parametrize("ink", INKS)
def test_every_ink_stands_out_from_the_paper(ink):
    assert contrast(ink, PAPER) >= ENOUGH


def test_the_chart_s_band_lets_its_words_stand_out():
    from companion.pictures.charts import BAND
    from companion.pictures.ink import GUIDE, INK

    assert contrast(INK, BAND) >= ENOUGH
    assert contrast(GUIDE, BAND) >= ENOUGH


def test_every_word_in_every_pose_is_written_in_an_ink_that_stands_out():
    for drawing in poses().values():
        for frame in drawing.shown():
            for panel in frame:
                assert all(contrast(item.ink, PAPER) >= ENOUGH for item in panel.items if isinstance(item, Label))


def test_kinds_of_points_are_told_apart_by_shape_not_by_colour():
    for pair in (("before", "hurt"), ("prime", "plain")):
        one, other = (SHAPES[kind] for kind in pair)
        assert one[0] != other[0]


def test_grey_is_as_light_as_its_green():
    assert luminance("#808080") == pytest.approx(0.2159, abs=0.001)


def turned_dark(colour: str) -> str:
    """A colour under the filter of a dark page: inverted, then its hue turned by half (W3C Filter Effects, from memory)."""
    red, green, blue = (1 - int(colour[n:n + 2], 16) / 255 for n in (1, 3, 5))
    turned = (-0.574 * red + 1.430 * green + 0.144 * blue, 0.426 * red + 0.430 * green + 0.144 * blue,
              0.426 * red + 1.430 * green - 0.856 * blue)
    return "#" + "".join(f"{round(255 * min(1.0, max(0.0, part))):02X}" for part in turned)


@pytest.mark.parametrize("ink", INKS)
def test_every_ink_stands_out_on_a_dark_page_too(ink):
    from companion.pictures.charts import BAND

    assert luminance(turned_dark(PAPER)) < 0.01
    assert min(contrast(turned_dark(ink), turned_dark(ground)) for ground in (PAPER, BAND)) >= ENOUGH
