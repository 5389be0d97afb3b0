"""Charts: what is on them, in whose units, with one point, with gaps, with forty."""

from __future__ import annotations

import time
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from io import BytesIO
from itertools import pairwise
from pathlib import Path

import pytest
from PIL import Image

from companion.pictures import charts
from companion.pictures.draw import PHONE, font
from companion.pictures.series import Chart, ChartOwner, all_charts, chart_of
from companion.pictures.series import readings as measured
from companion.screening.readings import MDC_FACTOR
from companion.screening.screen import LoggedAnswer

BEGAN = datetime(2026, 3, 2, 18, tzinfo=UTC)


def said(flow: str, run: int, key: str, value: float | str, day: float, method: str = "", placement: str = "",
         ending: str = "done") -> LoggedAnswer:
    return LoggedAnswer(flow, str(run), key, value, "ok", ending, method, placement, BEGAN + timedelta(days=day))


def raises(days: list[int], left: float = 60.0, method: str = "level_own", placement: str = "shin", first: int = 1) -> list[LoggedAnswer]:
    return [row for n, day in enumerate(days, first) for row in (
        said("leg_raise", n, "method", "level", day), said("leg_raise", n, "effort", "own", day),
        said("leg_raise", n, "placement", placement, day),
        said("leg_raise", n, "left_lean", "short", day), said("leg_raise", n, "right_lean", "short", day),
        said("leg_raise", n, "left_level", left + n, day, method, placement),
        said("leg_raise", n, "right_level", left + 10 + n, day, method, placement))]


def walls(days: list[int]) -> list[LoggedAnswer]:
    return [row for n, day in enumerate(days, 1) for row in (
        said("knee_to_wall", n, "method", "tape", day), said("knee_to_wall", n, "left_1", 10.0, day, "tape"),
        said("knee_to_wall", n, "left_2", 10.4, day, "tape"), said("knee_to_wall", n, "right_1", 12.0, day, "tape"))]


def axes_of(chart: Chart):
    return charts.draw(chart).axes


def texts(axes) -> list[str]:
    return [text.get_text() for text in axes.texts]


def leg_raise(days: list[int], **more) -> Chart:
    chart = measured("leg_raise", raises(days, **more), ChartOwner())
    assert chart is not None
    return chart


def test_left_and_right_have_an_axis_each_with_the_same_scale():
    one, other = axes_of(leg_raise([0, 28, 60]))
    assert (one.get_title(loc="left"), other.get_title(loc="left")) == ("Left", "Right")
    assert one.get_ylim() == other.get_ylim()
    assert one.get_xlim() == other.get_xlim()


def test_lines_and_values_are_labelled_where_they_are():
    left, _ = axes_of(leg_raise([0, 28, 60]))
    assert {"70°", "80°", "61°", "62°", "63°"} <= set(texts(left))
    level = {line.get_ydata()[0] for line in left.lines if line.get_linestyle() == "--"}
    assert level == {70.0, 80.0}


@pytest.mark.parametrize("days", [[0], [0, 14, 28, 150, 171], list(range(0, 280, 7))])
@pytest.mark.parametrize("low", [58.0, 61.0, 64.0, 67.0])
def test_a_value_never_stands_on_a_line_of_another_value(days, low):
    """As drawn: no line at 70 or 80 degrees goes through the words of a reading."""
    figure = charts.draw(leg_raise(days, left=low))
    figure.canvas.draw()
    for axes in figure.axes:
        for text in (text for text in axes.texts if text.get_text() not in ("70°", "80°")):
            box = text.get_window_extent()
            for mark in (70.0, 80.0):
                assert not box.y0 < axes.transData.transform((0, mark))[1] < box.y1, (text.get_text(), mark)


def test_error_bars_are_those_of_the_lifter_s_own_error():
    """Published SEM for nobody's sex 4.2 degrees (screening.readings); 1.96 SEM to each side."""
    chart = leg_raise([0])
    assert chart.tracks[0].dots[0].error == pytest.approx(1.96 * 4.2, abs=0.06)
    assert chart.tracks[0].band == pytest.approx((61 - MDC_FACTOR * 4.2, 61 + MDC_FACTOR * 4.2), abs=0.11)


def test_the_mean_of_repeats_has_the_error_of_one_reading():
    chart = measured("knee_to_wall", walls([0]), ChartOwner())
    assert chart is not None
    left, right = chart.tracks
    assert left.dots[0].value == 10.2
    assert left.dots[0].error == right.dots[0].error


def test_an_imperial_lifter_reads_inches():
    chart = measured("knee_to_wall", walls([0, 30]), ChartOwner(system="imperial"))
    assert chart is not None
    assert (chart.unit, chart.tracks[0].dots[0].value) == (" in", 4.0)
    assert [mark.label for mark in chart.marks] == ["4 in", "5 in"]
    assert "cm" not in chart.words
    left = axes_of(chart)[0]
    assert left.yaxis.get_major_formatter()(4.0, 0) == "4 in"


def test_one_point_is_a_chart_of_its_own():
    chart = leg_raise([0])
    left = axes_of(chart)[0]
    low, high = left.get_xlim()
    assert high - low >= 12
    assert [tick.get_text() for tick in axes_of(chart)[1].get_xticklabels()] == ["2 Mar"]
    assert "61° on 2 Mar 2026" in chart.words


def test_over_a_gap_the_line_is_dotted():
    left, _ = axes_of(leg_raise([0, 14, 200]))
    styles = [line.get_linestyle() for line in left.lines if len(line.get_xdata()) == 2 and line.get_linestyle() in ("-", ":")]
    assert styles == ["-", ":"]


def test_forty_points_keep_their_labels_apart():
    left, _ = axes_of(leg_raise(list(range(0, 280, 7))))
    labels = [text for text in left.texts if text.get_text().endswith("°") and text.get_text() not in ("70°", "80°")]
    assert 2 <= len(labels) <= 4
    span = left.get_xlim()[1] - left.get_xlim()[0]
    at = sorted(text.xy[0].toordinal() for text in labels)
    assert all(b - a > span * 0.1 for a, b in pairwise(at))


def test_readings_taken_another_way_are_left_out_and_told():
    rows = raises([0, 10], placement="thigh") + raises([20, 30], first=3)
    chart = measured("leg_raise", rows, ChartOwner())
    assert chart is not None
    assert [len(track.dots) for track in chart.tracks] == [2, 2]
    assert "Left out: 4 measured another way." in chart.words


def test_days_are_those_where_the_lifter_is():
    late = [said("safety_check", 1, "pain", 2.0, 0.2)]  # 22:48 in UTC
    chart = chart_of("chart_pain", late, ChartOwner(zone="Asia/Tokyo"))
    assert chart is not None
    assert chart.tracks[0].dots[0].day == date(2026, 3, 3)


def test_pain_in_the_knee_is_not_drawn_as_back_or_hip():
    chart = chart_of("chart_pain", [said("pain", 1, "where", "knee", 1), said("pain", 1, "bad", 5.0, 1),
                                    said("pain", 2, "where", "hip", 2), said("pain", 2, "bad", 3.0, 2)], ChartOwner())
    assert chart is not None
    assert {track.title: [dot.value for dot in track.dots] for track in chart.tracks} == {"Back or hip": [3.0], "Somewhere else": [5.0]}


def test_pain_before_a_test_and_pain_that_came_are_told_apart_without_colour():
    chart = chart_of("chart_pain", [said("safety_check", 1, "pain", 2.0, 0), said("pain", 2, "bad", 5.0, 1)], ChartOwner())
    assert chart is not None
    axes, = axes_of(chart)
    assert {line.get_marker() for line in axes.lines if line.get_marker() != "None"} == {"o", "X"}
    assert axes.get_ylim() == (-0.6, 10.6)
    assert "before a test: 2" in chart.words
    assert "something hurt: 5" in chart.words
    legend = charts.draw(chart).legends[0]
    assert [text.get_text() for text in legend.get_texts()] == ["before a test", "something hurt"]


def test_the_start_of_the_rounding_is_a_named_level_and_no_rounding_is_above_all():
    rows = [said("squat_look", 1, "plain_rounds", "clearly", 0), said("squat_look", 1, "plain_depth", "parallel", 0),
            said("squat_look", 2, "plain_rounds", "no", 30)]
    chart = chart_of("chart_squat_look", rows, ChartOwner())
    assert chart is not None
    assert [dot.value for dot in chart.tracks[0].dots] == [2, 4]
    axes, = axes_of(chart)
    assert [tick.get_text() for tick in axes.get_yticklabels()] == ["well above", "little above", "parallel", "below", "no rounding"]


def test_squat_days_with_and_without_the_drill_are_drawn_as_they_were_drawn_by_lot():
    from companion.screening.priming_trial import arm_of

    rows = [said("trial", 1, "join", "yes", 0)] + [row for n in range(6) for row in (
        said("squat_day", 2 * n + 2, "lot", "draw", n + 0.1), said("squat_after", 2 * n + 3, "felt", float(n), n + 0.15))]
    chart = chart_of("chart_trial", rows, ChartOwner("7"))
    assert chart is not None
    seed = f"7 {BEGAN.isoformat()}"
    assert [dot.kind for dot in chart.tracks[0].dots] == [arm_of(seed, n) for n in range(6)]
    assert [dot.value for dot in chart.tracks[0].dots] == [0, 1, 2, 3, 4, 5]


def test_a_squat_day_without_a_lot_or_one_that_hurt_is_not_in_the_chart_of_the_trial():
    rows = [said("trial", 1, "join", "yes", 0), said("squat_after", 2, "felt", 5.0, 0.1),
            said("squat_day", 3, "lot", "draw", 1), said("squat_after", 4, "felt", 6.0, 1), said("squat_after", 4, "hurt", "yes", 1),
            said("squat_day", 5, "lot", "draw", 2), said("squat_after", 6, "felt", 7.0, 2)]
    chart = chart_of("chart_trial", rows, ChartOwner("7"))
    assert chart is not None
    assert [dot.value for dot in chart.tracks[0].dots] == [7]


def test_what_hurt_is_not_in_a_chart_of_readings():
    assert measured("leg_raise", [row for row in raises([0]) if row.ending != "done"], ChartOwner()) is None
    assert chart_of("chart_trial", [said("trial", 1, "join", "yes", 0), said("squat_day", 2, "lot", "draw", 0, ending="pain"),
                                    said("squat_after", 3, "felt", 9.0, 0)], ChartOwner()) is None


def told(run: int, back: str, day: float, asked: str = "") -> list[LoggedAnswer]:
    return [replace(said("squat_after", run, key, value, day), asked=asked) for key, value in (("back", back), ("kept", "kept"))]


def test_a_back_that_could_not_be_told_is_not_drawn_as_still():
    rows = told(1, "still", 0) + told(2, "cant_tell", 2) + told(3, "moved", 4)
    steps = tuple((date(2026, 3, day), "parallel") for day in (2, 4, 6, 8))
    chart = chart_of("chart_depth", rows, ChartOwner(steps=steps))
    assert chart is not None
    assert [dot.kind for dot in chart.tracks[0].dots] == ["still", "untold", "moved", "untold"]
    assert "back still: parallel on 2 Mar 2026;" in chart.words
    assert "no answer" in chart.words
    axes, = axes_of(chart)
    assert {line.get_marker() for line in axes.lines if line.get_marker() != "None"} == {"o", "D", "v"}


def test_many_days_close_together_never_cover_one_that_hurt_or_one_whose_back_moved():
    """A day without an answer and one that was still lie under one that moved, and all of them under one that hurt."""
    rows = [said("squat_after", 1, "hurt", "yes", 0), *told(2, "moved", 1), *told(3, "cant_tell", 2), *told(4, "still", 3)]
    chart = chart_of("chart_depth", rows, ChartOwner(steps=tuple((date(2026, 3, 2 + n), "parallel") for n in range(4))))
    assert chart is not None
    axes, = axes_of(chart)
    assert [line.get_marker() for line in axes.lines if line.get_marker() != "None"] == ["D", "o", "v", "X"]


def test_a_squat_day_told_the_morning_after_stands_at_its_own_day_as_it_was_told():
    chart = chart_of("chart_depth", told(1, "moved", 1, asked="2026-03-02"), ChartOwner(steps=((date(2026, 3, 3), "parallel"),)))
    assert chart is not None
    dot, = chart.tracks[0].dots
    assert (dot.day, dot.kind) == (date(2026, 3, 2), "moved")


def test_no_label_hides_a_point_or_stands_on_the_axis_words():
    from matplotlib.backends.backend_agg import FigureCanvasAgg

    for days in ([0, 14, 28, 150, 171], list(range(0, 280, 7))):
        figure = charts.draw(leg_raise(days))
        FigureCanvasAgg(figure).draw()
        for axes in figure.axes:
            labels = [text.get_window_extent() for text in axes.texts if hasattr(text, "xy")]
            values = [tick.get_window_extent() for tick in axes.get_yticklabels()]
            dots = next(line for line in axes.lines if line.get_marker() == "o")
            at = axes.transData.transform([(axes.convert_xunits(x), y) for x, y in zip(dots.get_xdata(), dots.get_ydata(), strict=True)])
            assert labels
            assert not any(label.contains(*point) for label in labels for point in at)
            assert not any(label.overlaps(value) for label in labels for value in values)


def test_the_words_say_what_the_lines_stand_for():
    assert "Lines: least that serves a squat (common practice) 70°; comfortable (common practice) 80°." in leg_raise([0]).words
    chart = measured("knee_to_wall", walls([0]), ChartOwner())
    assert chart is not None
    assert "Lines: enough for most squats (common practice), from 10 cm to 12.5 cm." in chart.words


@pytest.mark.parametrize("name", all_charts())
def test_without_answers_there_is_no_chart(name):
    assert chart_of(name, [], ChartOwner()) is None


def test_a_chart_fits_a_phone_and_takes_less_than_300_milliseconds_once_warm():
    chart = leg_raise(list(range(0, 280, 7)))
    data = charts.png(chart)
    image = Image.open(BytesIO(data))
    assert image.width >= 2 * PHONE
    assert image.height / image.width < 1.6
    took = []
    for _ in range(3):
        began = time.process_time()
        charts.png(chart)
        took.append(time.process_time() - began)
    assert min(took) < 0.3


def test_words_on_a_chart_are_large_enough_for_a_phone():
    """At 390 pixels wide a point is 100 / 72 pixels: nothing under 11 of them."""
    for axes in axes_of(leg_raise([0, 30])):
        sizes = [text.get_fontsize() for text in (*axes.texts, *axes.get_yticklabels(), axes.title)]
        assert min(sizes) * 100 / 72 >= 11


def trial_rows(felt: dict[str, float], days: int = 12) -> list[LoggedAnswer]:
    """A trial in which each arm is felt as said, at one depth and load."""
    from companion.screening.priming_trial import arm_of

    seed = f"7 {BEGAN.isoformat()}"
    rows = [said("trial", 1, "join", "yes", 0)]
    for n in range(days):
        rows += [said("squat_day", 2 * n + 2, "lot", "draw", n + 0.1), said("squat_after", 2 * n + 3, "load", 60.0, n + 0.15)]
        rows += [said("squat_after", 2 * n + 3, key, value, n + 0.15)
                 for key, value in (("felt", felt[arm_of(seed, n)] + n // 4), ("kept", "kept"))]
    return rows


def test_the_trial_shows_means_difference_and_interval_and_no_colour_that_judges():
    """Felt 5 and 3 in pairs of equal days: the difference is 2 in each, so its interval has no width."""
    from companion.pictures.ink import GOOD_INK, WATCH_INK

    chart = chart_of("chart_trial", trial_rows({"plain": 5.0, "prime": 3.0}), ChartOwner("7"))
    assert chart is not None
    means = {mark.kind: mark.value for mark in chart.marks}
    assert means == pytest.approx({"plain": 6.0, "prime": 4.0})
    assert "no drill minus drill +2.0" in chart.words
    assert "95 % interval +2.0 to +2.0" in chart.words
    figure = charts.draw(chart)
    assert not {GOOD_INK, WATCH_INK} & {line.get_color() for line in figure.axes[0].lines}
    assert "+2.0" in figure.axes[0].get_xlabel()
    lines = [line for line in figure.axes[0].lines if len(set(line.get_ydata())) == 1 and len(line.get_ydata()) == 2]
    assert {line.get_ydata()[0] for line in lines} == {6.0, 4.0}
    drawn = {line.get_color(): line._unscaled_dash_pattern for line in lines}
    named = {line.get_color(): line._unscaled_dash_pattern for line in figure.legends[0].legend_handles}
    assert drawn == named, "the legend names each mean by its dash"
    assert len(set(drawn.values())) == 2


def test_charts_are_written_in_the_font_of_the_drawings():
    from matplotlib.font_manager import findfont

    axes = axes_of(leg_raise([0, 28]))[0]
    for text in (*axes.texts, *axes.get_yticklabels(), axes.title):
        assert Path(findfont(text.get_fontproperties())).name == Path(font(10).path).name == "DejaVuSans.ttf"


def test_one_pair_of_days_gives_no_interval():
    chart = chart_of("chart_trial", trial_rows({"plain": 5.0, "prime": 3.0}, days=2), ChartOwner("7"))
    assert chart is not None
    assert "Pairs of days alike: 1, too few for a difference." in chart.words


def test_deep_is_drawn_down():
    rows = [said("squat_look", 1, "plain_rounds", "clearly", 0), said("squat_look", 1, "plain_depth", "parallel", 0)]
    for chart in (chart_of("chart_squat_look", rows, ChartOwner()),
                  chart_of("chart_depth", told(1, "still", 0), ChartOwner(steps=((date(2026, 3, 2), "parallel"),)))):
        assert chart is not None
        axes, = axes_of(chart)
        low, high = axes.get_ylim()
        assert low > high, "the deeper band has the greater rank and stands lower"
        assert "further down" in chart.words


def test_what_the_lines_are_and_their_standing_is_written_in_the_picture():
    below = charts.draw(leg_raise([0, 28])).axes[-1].get_xlabel()
    assert "70°: least that serves a squat (common practice)" in below
    assert "80°: comfortable (common practice)" in below


def test_what_is_under_a_chart_fits_a_phone_and_two_lines_of_one_meaning_are_one_row():
    chart = measured("knee_to_wall", walls([0, 28]), ChartOwner())
    assert chart is not None
    figure = charts.draw(chart)
    label = figure.axes[-1].xaxis.label
    assert label.get_text().startswith("10 to 12.5 cm: enough for most squats (common")
    assert label.get_text().endswith("Grey: no change shown.")
    figure.canvas.draw()
    assert label.get_window_extent().x1 <= figure.bbox.width


def test_a_gap_of_seventy_days_is_joined_and_a_longer_one_is_dotted():
    """Seventy days: our choice."""
    left, _ = axes_of(leg_raise([0, 69, 140]))
    styles = [line.get_linestyle() for line in left.lines if len(line.get_xdata()) == 2 and line.get_linestyle() in ("-", ":")]
    assert styles == ["-", ":"]
