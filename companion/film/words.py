"""A film in words: every angle for the terminal, and the line that says what to mend before the real film."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

import numpy as np

from companion.film.angles import angles_of
from companion.film.cards import BY_PLACE, CARDS, ON_BODY
from companion.film.footage import Footage
from companion.film.measure import SquatFilm
from companion.film.moves import MoveFilm

DARK: Final = 55.0
"""Mean brightness (0 to 255) under which a picture is too dark (choice)."""
LEAST_SIDE: Final = 17.0
"""Pixels of a card's side under which its squares blur into each other: three a square (choice)."""
SEEN_WELL: Final = 0.85
HIGH: Final = 0.62
"""How far down the picture the pelvis may be, as a part of its height; as far from below, the camera is too low (choice)."""
TURNED: Final = 25.0
"""Degrees that the cards on the body may be turned away from the camera (choice; the error grows with the square of it)."""
SQUEEZED: Final = 400_000.0
"""Bits a second under which a film was squeezed too much for its cards, where they were lost (choice)."""
STEP: Final = 0.25


def to_mend(footage: Footage) -> str:
    """Return the one thing to mend in a test shot, the worst first; "" if it will do."""
    light, height = float(np.median(footage.light)), footage.size[1]
    if all(footage.share(place) == 0 for place in ON_BODY):
        if light < DARK:
            return "Too dark: I find no card. Put on a lamp or open a curtain, the light not behind you."
        return "I find no card at all. Are they flat, with their white rim, on the side that faces the phone?"
    hidden = [card for card in CARDS if footage.share(card.place) < SEEN_WELL]
    sides = {place: footage.side(place) for place in ON_BODY}
    if hidden and light < DARK:
        return "Too dark for some of the cards. Put on a lamp or open a curtain, the light not behind you."
    if hidden and 0 < footage.bits < SQUEEZED and len(footage.times) > 1:
        return "It was squeezed too much on the way. Send it as a file: paper clip, File, then choose the film."
    if min((side for side in sides.values() if np.isfinite(side)), default=LEAST_SIDE) < LEAST_SIDE:
        return "The cards are too small in the picture. Put the phone upright, and a big step nearer."
    if hidden:
        card = hidden[0]
        return (f"Card {card.number} ({card.title.lower()}) is out of view or hidden, by a hand, a sleeve or the edge of the picture. "
                "Free it and send another test shot.")
    turned = _turned_away(footage)
    if turned > TURNED:
        return "You are not side-on: turn until your hip points at the phone, and send another test shot."
    level = float(np.nanmedian(footage.corners["pelvis"][..., 1])) / height
    if level > HIGH:
        return "The phone is too high, or tilted: put it at hip height, upright, and send another test shot."
    if level < 1 - HIGH:
        return "The phone is too low, or tilted: put it at hip height, upright, and send another test shot."
    return ""


def _turned_away(footage: Footage) -> float:
    """Return the median turn of the cards on the body away from the camera, from their width against their height, in degrees."""
    found = []
    for place in ON_BODY:
        corners = footage.corners[place]
        corners = corners[np.isfinite(corners).all(axis=(1, 2))]
        if len(corners):
            sides = np.linalg.norm(corners - np.roll(corners, -1, axis=1), axis=2)
            across, down = np.median(sides[:, 0::2]), np.median(sides[:, 1::2])
            found.append(float(np.degrees(np.arccos(min(1.0, across / down)))))
    return float(np.median(found)) if found else 0.0


def seen_lines(footage: Footage) -> Iterator[str]:
    """Yield what the decoder saw: the picture, the light, and each card's share of frames and size."""
    seconds = float(footage.times[-1])
    width, height = footage.size
    yield (f"{len(footage.times)} frames, {seconds:.1f} s, {width} × {height}, brightness {np.median(footage.light):.0f} of 255"
           + (", mirrored (turned back)" if footage.mirrored else ""))
    for card in CARDS:
        share = footage.share(card.place)
        yield f"  card {card.number} {card.title:7}" + (f"in {100 * share:3.0f} % of frames, {footage.side(card.place):.0f} pixels a side"
                                                       if share else "never found")


def result_lines(film: SquatFilm) -> Iterator[str]:
    """Yield the result of a film of squats."""
    onset = film.onset
    yield f"{_counted(film)}, {film.deepest:.0f}° deep (90: thigh level), {film.speed:.0f}°/s going down, " \
          f"{100 * film.angles.left_out:.0f} % of frames left out"
    if onset.depth is None:
        yield f"no onset: the lower back bends {film.amplitude:.1f}° at the deepest point, without a kink"
    else:
        yield (f"rounding begins at {onset.depth:.0f}° of the thigh (95 in 100: {onset.low:.0f} to {onset.high:.0f}), "
               f"and comes to {film.amplitude:.0f}° at the deepest point")
    yield f"standing after against before: {film.slipped:+.1f}°"
    if not film.angles.by_wall:
        yield f"card {BY_PLACE['wall'].number} (wall) was not seen: angles hold against standing only"


PHOTO_ZERO: Final = {"shin": "upright", "leg": "the floor", "fold": "the pelvis"}
MOVES_NAMED: Final = {"shin": "the shin leans by", "leg": "the leg comes up by", "fold": "the thigh comes up by"}


def move_lines(film: MoveFilm) -> Iterator[str]:
    """Yield the result of a film of a test, the way it is said in the chat too."""
    if film.move == "trunk":
        yield (f"By the cards, on hands and knees: the pelvis turns by up to {film.turns[0]:.0f}°, the lower back bends by up to "
               f"{film.turns[1]:.0f}°. From the side a hip that drops or turns out can't be seen.")
        return
    zero = PHOTO_ZERO[film.move] if film.photo else "keeping still"
    yield f"By the cards {MOVES_NAMED[film.move]} {', '.join(f'{turn:.0f}°' for turn in film.turns)}, counted from {zero}."
    if film.onset is not None:
        yield (f"The pelvis begins to turn at {film.onset.depth:.0f}° ({film.onset.low:.0f} to {film.onset.high:.0f})."
               if film.onset.depth is not None else "The pelvis does not begin to turn on that way.")


def turn_lines(footage: Footage) -> Iterator[str]:
    """Yield every card's turn four times a second, in degrees clockwise in the picture from its first moment; also where nothing is
    measured, so that a single card on a board can be held against a level."""
    angles = angles_of(footage)
    if angles is None:
        return
    yield "     s" + "".join(f"{BY_PLACE[place].title.lower():>8}" for place in ON_BODY) + "   turned from the first moment"
    zero = {place: next(iter(angles.raw[place][np.isfinite(angles.raw[place])]), np.nan) for place in ON_BODY}
    for at in range(0, len(angles.times), max(1, round(STEP * angles.rate))):
        row = (angles.raw[place][at] - zero[place] for place in ON_BODY)
        yield f"{angles.times[at]:6.2f}" + "".join(f"{one:8.1f}" if np.isfinite(one) else "       –" for one in row)


def _counted(film: SquatFilm) -> str:
    squats = f"{film.found} squat{'' if film.found == 1 else 's'}"
    return f"{len(film.squats)} of {squats}" if len(film.squats) < film.found else squats


def said(film: SquatFilm) -> str:
    """Return a film's result as one message for the lifter."""
    onset, left = film.onset, film.angles.left_out
    seen = f" You went down at {film.speed:.0f}° a second" + (f"; {100 * left:.0f} in 100 frames were left out." if left >= .005 else ".")
    if onset.depth is None:
        return (f"{_counted(film)} read, down to {film.deepest:.0f}° of the thigh. 90° is level with the floor. By the cards your "
                f"lower back keeps its shape, as far as a film can tell.{seen}")
    return (f"{_counted(film)} read. By the cards your lower back begins to round at about {onset.depth:.0f}° of the thigh, "
            f"between {onset.low:.0f}° and {onset.high:.0f}°. 90° is level with the floor. At the bottom it "
            f"has bent by {film.amplitude:.0f}°.{seen}")


def curve_text(film: SquatFilm) -> str:
    """Return the curves for a chart as one short line: the onset with its interval (empty if there is none), then each squat's points
    "depth,flexion" in whole and half degrees, every second one."""
    onset = film.onset
    ends = "" if onset.depth is None else f"{onset.depth:.0f} {onset.low:.0f} {onset.high:.0f}"
    squats = (" ".join(f"{depth:g},{round(2 * bend) / 2:g}" for depth, bend in zip(shape.depth[::2], shape.flexion[::2], strict=True))
              for shape in film.shapes)
    return "|".join((ends, *squats))


def angle_lines(film: SquatFilm) -> Iterator[str]:
    """Yield every angle four times a second, in degrees from standing."""
    curves = film.curves
    yield "     s   thigh    shin  pelvis    ribs  lower back    hip"
    every = max(1, round(STEP * film.angles.rate))
    for at in range(0, len(curves.times), every):
        row = (curves.depth, curves.shank, curves.pelvis, curves.ribs, curves.flexion, curves.hip)
        cells = [f"{one[at]:8.1f}" if np.isfinite(one[at]) else "       –" for one in row]
        yield f"{curves.times[at]:6.2f}{''.join(cells[:4])}{cells[4]:>12}{cells[5][1:]:>7}"
