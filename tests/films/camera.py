"""What a phone's camera and its file make of a drawn picture: lens, roll, shake, blur, light, noise, H.264, turned and mirrored."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from fractions import Fraction
from pathlib import Path

import av
import cv2
import numpy as np

from companion.film.cards import ON_BODY, Place
from tests.films.figure import Figure, Looks, Squat, Taped, View


@dataclass(frozen=True, slots=True)
class Phone:
    """The phone: its picture, frames a second and whether they come unevenly, bits a second, lens (barrel below 0), shake and its removal,
    blur of lens and movement, noise, and how the file holds the picture."""

    size: tuple[int, int] = (720, 1280)
    rate: float = 30.0
    uneven: bool = False
    bits: int = 1_600_000
    lens: float = 0.0
    shake: float = 0.0
    blur: float = 0.0
    moving: bool = False
    noise: float = 0.0
    gain: float = 1.0
    mirrored: bool = False
    flag: int = 0


@dataclass(frozen=True, slots=True)
class Film:
    """One made film: what is done in it, how it is taped, seen, lit and taken, and the seed of its chances."""

    seed: int = 0
    squat: Squat = field(default_factory=Squat)
    taped: dict[Place, Taped] = field(default_factory=dict)
    view: View = field(default_factory=View)
    looks: Looks = field(default_factory=Looks)
    phone: Phone = field(default_factory=Phone)


def times_of(film: Film) -> list[float]:
    """The times of its frames, in seconds."""
    chance = np.random.default_rng(film.seed + 10**6)
    times, at = [], 0.0
    while at < film.squat.seconds:
        times.append(at)
        at += (1 / film.phone.rate) * (chance.uniform(.6, 1.4) if film.phone.uneven else 1.0)
    return times


ENCODED = "threads=1:rc-lookahead=0:mbtree=0:bframes=0"
"""As a phone encodes what it films, without looking ahead; with that, the same pictures gave another file each time they were encoded."""


def make(film: Film, path: Path) -> list[float]:
    """Write a film; returns the times of its frames."""
    phone, chance = film.phone, np.random.default_rng(film.seed)
    cv2.setRNGSeed(film.seed)  # of the grain, which is drawn by OpenCV: else it hangs on what was drawn before in this process
    width, height = phone.size
    larger = (int(width * 1.25) // 2 * 2, int(height * 1.25) // 2 * 2)
    figure = Figure(film.squat, film.taped, film.view, film.looks, larger)
    times, walk = times_of(film), np.zeros(3)
    lens = _lens(phone) if phone.lens else None
    blotches = cv2.resize(chance.uniform(.82, 1.0, (40, 24, 1)).astype(np.float32), (width, height), interpolation=cv2.INTER_CUBIC)
    shade = (blotches * phone.gain * 200).clip(0, 255).astype(np.uint8)
    try:
        with av.open(str(path), "w") as out:
            stream = out.add_stream("libx264", rate=round(phone.rate), options={"preset": "veryfast", "x264-params": ENCODED})
            turned = phone.flag % 180 != 0
            stream.width, stream.height = (height, width) if turned else (width, height)
            stream.pix_fmt, stream.bit_rate = "yuv420p", phone.bits
            stream.codec_context.time_base = stream.time_base = Fraction(1, 90000)
            for at in times:
                drawn = _grey(figure.draw(at))
                if phone.moving:  # half the frame's time, as a phone has it indoors
                    drawn = cv2.addWeighted(drawn, .5, _grey(figure.draw(at + .25 / phone.rate)), .5, 0)
                picture = cv2.resize(drawn, (width, height), interpolation=cv2.INTER_AREA)
                walk = .9 * walk + chance.normal(0, phone.shake, 3)
                picture = cv2.multiply(picture, shade, scale=1 / 200)  # light and wall are uneven
                picture = _taken(picture, phone, film.view.roll, walk, lens, chance)
                frame = av.VideoFrame.from_ndarray(np.ascontiguousarray(np.rot90(picture, phone.flag // 90)), format="gray")
                frame.pts, frame.time_base = round(at * 90000), Fraction(1, 90000)
                out.mux(stream.encode(frame))
            out.mux(stream.encode(None))
    finally:
        figure.close()
    if phone.flag:
        _flag(path, phone.flag)
    return times


def _grey(picture: np.ndarray) -> np.ndarray:
    """Cards are read by brightness alone, and a third of the picture is made in half the time."""
    return cv2.cvtColor(picture, cv2.COLOR_RGB2GRAY)


def _taken(picture: np.ndarray, phone: Phone, roll: float, walk: np.ndarray, lens: tuple[np.ndarray, np.ndarray] | None,
           chance: np.random.Generator) -> np.ndarray:
    height, width = picture.shape[:2]
    if roll or phone.shake:  # a stabiliser leaves slow drift, turning and zoom
        turn = cv2.getRotationMatrix2D((width / 2, height / 2), roll + .1 * walk[2], 1 + .0006 * walk[2])
        turn[:, 2] += walk[:2]
        picture = cv2.warpAffine(picture, turn, (width, height), borderMode=cv2.BORDER_REPLICATE)
    if lens is not None:
        picture = cv2.remap(picture, *lens, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)
    if phone.blur:
        picture = cv2.GaussianBlur(picture, (0, 0), phone.blur)
    if phone.noise:
        grain = cv2.randn(np.empty((height, width), np.int16), 0, phone.noise)
        picture = cv2.add(picture, grain, dtype=cv2.CV_8U)
    return picture[:, ::-1] if phone.mirrored else picture


def _lens(phone: Phone) -> tuple[np.ndarray, np.ndarray]:
    """The map of a lens that bends straight lines: r' = r (1 + k r²), r as a part of half the diagonal."""
    width, height = phone.size
    x, y = np.meshgrid(np.arange(width, dtype=np.float32) - width / 2, np.arange(height, dtype=np.float32) - height / 2)
    grown = 1 - phone.lens * (x**2 + y**2) / (width**2 / 4 + height**2 / 4)
    return (x * grown + width / 2).astype(np.float32), (y * grown + height / 2).astype(np.float32)


def _flag(path: Path, degrees: int) -> None:
    """Write the rotation into the track's matrix, as a phone does: the picture lies on its side in the file."""
    told = bytearray(path.read_bytes())
    at = told.index(b"tkhd") + 4
    at += 40 if told[at] == 0 else 52
    c, s = {90: (0, 1), 180: (-1, 0), 270: (0, -1)}[degrees]
    for place, value in zip((0, 4, 12, 16), (c, s, -s, c), strict=True):
        told[at + place:at + place + 4] = int(value * 65536).to_bytes(4, "big", signed=True)
    path.write_bytes(bytes(told))


def drawn_by_chance(seed: int, size: tuple[int, int] = (720, 1280)) -> Film:
    """A film of chance within what a lifter at home may do; one in six has no onset."""
    chance = np.random.default_rng(seed)
    flat = chance.random() < 1 / 6
    deepest = chance.uniform(95, 120)
    squat = Squat(standing=chance.uniform(.9, 1.2), down=chance.uniform(1.0, 1.6), up=chance.uniform(.7, 1.0), between=.3, deepest=deepest,
                  onset=None if flat else chance.uniform(50, deepest - 22), gain=chance.uniform(.25, .7),
                  drift=chance.uniform(-.01, .02) if flat else chance.uniform(-.03, .05),
                  ankle=chance.uniform(.2, .33), hip=chance.uniform(.3, .45))
    taped: dict[Place, Taped] = {place: Taped(*chance.uniform(-.02, .02, 2), chance.uniform(-10, 10), tuple(chance.uniform(-10, 10, 2)),
                                             chance.normal(0, SLIDES[place])) for place in ON_BODY}
    view = View(chance.uniform(2.4, 3.2), chance.uniform(.8, 1.1), chance.uniform(-10, 10), chance.uniform(-4, 4), chance.uniform(-3, 3),
                wall=chance.uniform(.4, 1.0), wall_turned=chance.uniform(-1, 1))
    looks = Looks(chance.uniform(.6, 1.1), tuple(chance.uniform(.1, .5, 3)), chance.random() < .15, chance.random() < .15,
                  int(chance.choice((-1, 1))))
    taped["thigh"] = replace(taped["thigh"], slides=taped["thigh"].slides + looks.faces * THIGH_LAGS)
    phone = Phone(size, float(chance.choice((24, 25, 30, 30, 30, 30, 60))), chance.random() < .2, int(chance.uniform(1.0, 3.0) * 1e6),
                  chance.choice((0.0, 0.0, -.06)), chance.choice((0.0, 0.0, .4)), chance.uniform(0, .8), chance.random() < .2,
                  chance.uniform(0, 6), 1.0, chance.random() < .15, int(chance.choice((0, 0, 90, 270))))
    return replace(Film(seed), squat=squat, taped=taped, view=view, looks=looks, phone=phone)


SLIDES: dict[Place, float] = {"ribs": 1.5, "pelvis": 2.5, "thigh": 2.5, "shank": 1.5}
"""The standard deviation of how far a card slides over the bone as the hip bends fully, degrees. Of abstracts read on 2026-11-29: skin
clusters turn over the femur by about 10° and over the tibia by about 7° in walking, about all axes together (Ancillao 2021 Hum Mov Sci,
pmc.ncbi.nlm.nih.gov/articles/PMC8631460); skin markers err at the hip by 1.9° in flexion, 5.8° in turning and 0.6° sideways (Fiorentino
2017 Gait Posture 55:184), by which the thigh's share in the plane of a squat is 10° × 1.9 ÷ 6.1 = 3.1°, here 1.9° of lag and 2.5° either
way; the back's skin at the pelvis lags by 1.5° in 10° of tilt (Drerup & Hierholzer 1987 J Biomech 20:971), and the skin of the lower back
slides by 13.5 mm, of the upper lumbar back by 4 mm, in bending (Xi 2022 Front Bioeng Biotechnol 10:960063); a card is 11 cm long. In
deep squats the outer thigh may do worse (README.md)."""
THIGH_LAGS = 1.9
"""How far the thigh card stays behind the bone as the hip bends fully, degrees, on average (Fiorentino 2017)."""
