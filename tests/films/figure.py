"""A jointed figure that squats in front of a wall, with cards on it, drawn by MuJoCo: every angle of it is known."""

from __future__ import annotations

import io
from dataclasses import dataclass
from math import cos, exp, log, pi, radians, tan
from typing import Final

import mujoco
import numpy as np
from PIL import Image

from companion.film.cards import BY_PLACE, CELLS, MARGIN_CELLS, ON_BODY, SQUARE_CM, Place, is_white

ACROSS: Final = CELLS + 2 * MARGIN_CELLS
CARD: Final = SQUARE_CM / 100 * ACROSS / CELLS
STATURE: Final = 1.75
SHANK, THIGH, TRUNK, ANKLE = .246 * STATURE, .245 * STATURE, .288 * STATURE, .039 * STATURE  # Drillis & Contini 1966
HIP_WIDE, SOFTNESS = .17, 3.0


@dataclass(frozen=True, slots=True)
class Squat:
    """What the figure does: seconds of standing, squats with their seconds down and up, how deep the thigh goes (deg), how the lower
    back bends: ``drift`` degrees a degree of depth from the start, and ``gain`` more from ``onset`` on (None: never)."""

    standing: float = 1.0
    squats: int = 3
    down: float = 1.2
    up: float = .9
    between: float = .3
    deepest: float = 105.0
    onset: float | None = 75.0
    gain: float = .5
    drift: float = .02
    ankle: float = .28
    hip: float = .38

    @property
    def seconds(self) -> float:
        return self.standing + self.squats * (self.down + self.up + self.between)

    def depth(self, at: float) -> float:
        """The thigh from upright, in degrees, at a time."""
        since = at - self.standing
        number, into = divmod(max(since, 0.0), self.down + self.up + self.between)
        if since < 0 or number >= self.squats:
            return 0.0
        if into < self.down:
            return self.deepest * (1 - cos(pi * into / self.down)) / 2
        into = min(into - self.down, self.up)
        return self.deepest * (1 + cos(pi * into / self.up)) / 2

    def flexion(self, depth: float) -> float:
        """The bend of the lower back at a depth, in degrees; 0 standing."""
        bend = self.drift * depth
        return bend if self.onset is None else bend + self.gain * SOFTNESS * log(1 + exp((depth - self.onset) / SOFTNESS))

    def angles(self, depth: float) -> dict[Place, float]:
        """Each segment's lean forward, in degrees from upright."""
        bend = self.flexion(depth)
        ribs = self.hip * depth + bend * .4
        return {"shank": self.ankle * depth, "thigh": -depth, "pelvis": ribs - bend, "ribs": ribs}


@dataclass(frozen=True, slots=True)
class Taped:
    """How one card is taped: off its place along and across (m), turned on the body and tilted out of its plane (deg), and how far it
    slides over the bone as the hip bends fully (deg)."""

    along: float = 0.0
    across: float = 0.0
    turned: float = 0.0
    tilted: tuple[float, float] = (0.0, 0.0)
    slides: float = 0.0


@dataclass(frozen=True, slots=True)
class View:
    """Where the camera stands: metres away and high, turned about the lifter, tilted down and rolled (deg), its vertical field (deg);
    and the wall behind."""

    distance: float = 2.8
    high: float = .95
    yaw: float = 0.0
    tilt: float = 0.0
    roll: float = 0.0
    field: float = 62.0
    wall: float = .7
    wall_turned: float = 0.0


@dataclass(frozen=True, slots=True)
class Looks:
    """Light and colours; an arm that hangs and swings, a plate at the shoulder; which way the figure faces (1 right, -1 left)."""

    light: float = .8
    cloth: tuple[float, float, float] = (.25, .28, .35)
    arm: bool = False
    plate: bool = False
    faces: int = 1
    wall_card: bool = True


def card_png(place: Place, cell: int = 24) -> bytes:
    """A card as it is printed."""
    card = BY_PLACE[place]
    squares = np.array([[255 if is_white(card, row, column) else 0 for column in range(ACROSS)] for row in range(ACROSS)], np.uint8)
    told = io.BytesIO()
    Image.fromarray(np.kron(squares, np.ones((cell, cell), np.uint8))).convert("RGB").save(told, "PNG")
    return told.getvalue()


def _spun(*turns: tuple[str, float]) -> str:
    """A quaternion for MJCF of turns about axes, applied one after the other in the body's frame."""
    total = np.array([1.0, 0, 0, 0])
    for axis, degrees in turns:
        one, out = np.zeros(4), np.zeros(4)
        mujoco.mju_axisAngle2Quat(one, np.array([axis == "x", axis == "y", axis == "z"], float), radians(degrees))
        mujoco.mju_mulQuat(out, total, one)
        total = out
    return " ".join(f"{value:.6f}" for value in total)


def _card(place: Place, taped: Taped, high: float, out: float) -> str:
    return (f'<body name="card_{place}" pos="{taped.across:.4f} {-out:.4f} {high + taped.along:.4f}">'
            f'<joint name="slide_{place}" axis="0 1 0"/><geom type="mesh" mesh="card" material="{place}" '
            f'quat="{_spun(("y", taped.turned), ("x", taped.tilted[0]), ("z", taped.tilted[1]))}"/></body>')


def _xml(taped: dict[Place, Taped], view: View, looks: Looks, size: tuple[int, int]) -> str:
    half = CARD / 2
    corners = [(x, y, z) for y in (0.0, .002) for x, z in ((-half, half), (half, half), (half, -half), (-half, -half))]
    front = "0 1 2  0 2 3  4 6 5  4 7 6  0 4 5  0 5 1  1 5 6  1 6 2  2 6 7  2 7 3  3 7 4  3 4 0"
    vertices = " ".join(f"{value:.5f}" for corner in corners for value in corner)
    # image up is the card's up; the rim takes the colour of the corner it is at, which is white
    uv = " ".join(f"{u} {v}" for _ in range(2) for u, v in ((0, 0), (1, 0), (1, 1), (0, 1)))
    places = [*ON_BODY, "wall"]
    assets = "".join(f'<texture name="{p}" type="2d" file="{p}.png"/><material name="{p}" texture="{p}" specular="0" shininess="0"/>'
                     for p in places)
    ambient, diffuse, sun = (" ".join([f"{share * looks.light:.3f}"] * 3) for share in (.35, .5, .4))
    grey = 'rgba=".62 .58 .53 1"'
    cloth = " ".join(f"{value:.2f}" for value in looks.cloth)
    arm = (f'<body pos="0 -.24 {TRUNK * .62:.3f}"><joint name="arm" axis="0 1 0"/>'
           '<geom type="capsule" fromto="0 0 0 0 -.02 -.5" size=".04" rgba=".7 .55 .45 1"/></body>') if looks.arm else ""
    plate = (f'<geom type="cylinder" fromto="-.02 -.42 {TRUNK * .8:.3f} -.02 -.45 {TRUNK * .8:.3f}" size=".16" rgba=".15 .15 .16 1"/>'
             if looks.plate else "")
    wall_card = (f'<body pos="{.62 * looks.faces:.2f} {view.wall - .01:.3f} 1.15"><geom type="mesh" mesh="card" material="wall" '
                 f'quat="{_spun(("y", view.wall_turned))}"/></body>') if looks.wall_card else ""
    # the figure faces +x, its cards on its right; facing the other way the whole is turned about and they are on its left
    turned = "1 0 0 0" if looks.faces > 0 else "0 0 0 1"
    cards = {p: _card(p, taped[p], high, out) for p, high, out in (
        ("shank", SHANK * .5, .12), ("thigh", THIGH * .5, .17), ("pelvis", .10, HIP_WIDE + .025), ("ribs", .16, HIP_WIDE + .005))}
    if looks.faces < 0:  # on the other side of the body: the same card, turned to look out there
        cards = {p: f'<body quat="0 0 0 1">{text}</body>' for p, text in cards.items()}
    return f"""<mujoco><compiler angle="degree"/>
<visual><global offwidth="{size[0]}" offheight="{size[1]}" fovy="{view.field}"/><quality shadowsize="0" offsamples="0"/>
<headlight ambient="{ambient}" diffuse="{diffuse}" specular="0 0 0"/></visual>
<asset><mesh name="card" inertia="shell" vertex="{vertices}" face="{front}" texcoord="{uv}"/>{assets}</asset>
<worldbody><light pos="{.8 * looks.faces} -3 3.5" dir="0 1 -.9" diffuse="{sun}"/>
<geom type="plane" size="6 6 .1" {grey}/><geom type="box" pos="0 {view.wall + .05:.3f} 1.5" size="5 .05 1.5" {grey}/>{wall_card}
<body name="foot" quat="{turned}"><geom type="box" pos=".07 0 .03" size=".13 .12 .03" rgba=".2 .2 .2 1"/>
<body name="shank" pos="0 0 {ANKLE:.4f}"><joint name="ankle" axis="0 1 0"/>
<geom type="capsule" fromto="0 -.06 .03 0 -.03 {SHANK:.3f}" size=".05" rgba="{cloth} 1"/>{cards["shank"]}
<body name="thigh" pos="0 0 {SHANK:.4f}"><joint name="knee" axis="0 1 0"/>
<geom type="capsule" fromto="0 -.05 0 0 -.09 {THIGH:.3f}" size=".07" rgba="{cloth} 1"/>{cards["thigh"]}
<body name="pelvis" pos="0 0 {THIGH:.4f}"><joint name="hip" axis="0 1 0"/>
<geom type="ellipsoid" pos="0 0 .08" size=".12 {HIP_WIDE} .12" rgba="{cloth} 1"/>{cards["pelvis"]}
<body name="ribs" pos="0 0 .16"><joint name="lumbar" axis="0 1 0"/>
<geom type="ellipsoid" pos="0 0 .17" size=".12 {HIP_WIDE - .02} .22" rgba="{' '.join(f'{min(1, v + .15):.2f}' for v in looks.cloth)} 1"/>
<geom type="sphere" pos="0 0 .52" size=".11" rgba=".7 .55 .45 1"/>{plate}{arm}{cards["ribs"]}
</body></body></body></body></body></worldbody></mujoco>"""


class Figure:
    """The figure, ready to be drawn at any moment of its squats."""

    def __init__(self, squat: Squat, taped: dict[Place, Taped] | None = None, view: View | None = None, looks: Looks | None = None,
                 size: tuple[int, int] = (720, 1280)) -> None:
        self.squat, self.view, self.looks = squat, view or View(), looks or Looks()
        self.taped = {place: (taped or {}).get(place, Taped()) for place in ON_BODY}
        files = {f"{place}.png": card_png(place) for place in (*ON_BODY, "wall")}  # type: ignore[arg-type]
        self.model = mujoco.MjModel.from_xml_string(_xml(self.taped, self.view, self.looks, size), files)
        self.data = mujoco.MjData(self.model)
        self.renderer = mujoco.Renderer(self.model, size[1], size[0])
        self.camera = self._camera()

    def _camera(self) -> mujoco.MjvCamera:
        camera = mujoco.MjvCamera()
        camera.type = mujoco.mjtCamera.mjCAMERA_FREE
        camera.distance, camera.azimuth, camera.elevation = self.view.distance, 90 + self.view.yaw, -self.view.tilt
        down = tan(radians(self.view.tilt)) * self.view.distance
        camera.lookat[:] = (0.0, 0.0, self.view.high - down)
        return camera

    def draw(self, at: float) -> np.ndarray:
        """The picture at a moment, RGB, not rolled yet."""
        depth = self.squat.depth(at)
        lean = self.squat.angles(depth)
        joints = {"ankle": lean["shank"], "knee": lean["thigh"] - lean["shank"], "hip": lean["pelvis"] - lean["thigh"],
                  "lumbar": lean["ribs"] - lean["pelvis"]}
        bent = (lean["pelvis"] - lean["thigh"]) / 130
        for place in ON_BODY:
            joints[f"slide_{place}"] = self.taped[place].slides * bent
        if self.looks.arm:
            joints["arm"] = -70 - lean["ribs"] + 30 * (1 - cos(2.2 * at))
        for name, degrees in joints.items():
            self.data.qpos[self.model.joint(name).qposadr[0]] = radians(degrees)
        mujoco.mj_kinematics(self.model, self.data)
        self.renderer.update_scene(self.data, self.camera)
        return self.renderer.render()

    def close(self) -> None:
        self.renderer.close()
