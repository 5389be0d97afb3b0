"""A screening test as one frozen record; all messages, drawings, exports and conclusions about it derive from this record.

A record of answers (``Protocol.record``) is a frozen dataclass whose field names are the answer keys of the test's flow:
words for choices, floats for measures, "left_" and "right_" before what is asked of each side. None means not tested: never
asked, skipped, withdrawn, or given in pain.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Final, Generic, TypeVar

from companion.screening.about import About
from companion.screening.evidence import EvidenceRow, Finding, Grade
from companion.screening.limits import Work
from companion.screening.readings import Error, NumberFormat, Reading, Threshold, metric, sessions_to_average
from companion.screening.safety import BodyPosition
from companion.screening.sources import SOURCES, with_numbers

R = TypeVar("R")

SQUAT_MINUTES, FLOOR_MINUTES, BIRD_DOG_MINUTES, SQUAT_LOOK_MINUTES, FILM_MINUTES = map(int, SOURCES["test_minutes"].value)
"""The minutes that a test takes."""
GOING_DOWN: Final = with_numbers("{slow_down:count seconds}")


@dataclass(frozen=True, slots=True)
class FindingContext:
    """Inputs for findings besides the record: the lifter, the measurement error of a test by a method (this lifter's own if
    there is one), and the number format."""

    about: About
    error: Callable[[str, str], Error]
    show: NumberFormat = metric


@dataclass(frozen=True, slots=True)
class Gain:
    """The published training gain in a measured test; it sets the retest date and the number of sessions.

    ``amount``: the gain of a training programme. ``mdc``: the minimal detectable change in the gain's own unit, if readings
    may be in another; None: that of the readings. ``method``: the method whose error counts before the test has been done.
    ``what``: the part in a sentence ("calf" work), "" for none. ``not_by``: the effort it was not published for, "" for none.
    """

    amount: float
    mdc: float | None = None
    method: str = ""
    what: str = ""
    not_by: str = ""

    @property
    def sessions(self) -> int:
        """The number of sessions to average at each end, by the published errors."""
        return 1 if self.mdc is None else sessions_to_average(self.mdc, self.amount)


@dataclass(frozen=True, slots=True)
class Noted:
    """A number of each side that is shown as reported, without error or threshold: its answer key without the side."""

    key: str
    unit: str
    title: str


@dataclass(frozen=True, slots=True)
class Starts(Generic[R]):
    """The start of rounding in a test, in bands of depth, for its chart and its change: a title, a button's label, and
    a function to the two answers of a record (rounds or not, how deep)."""

    title: str
    label: str
    said: Callable[[R], tuple[str | None, str | None]]


@dataclass(frozen=True, slots=True)
class Detail:
    """A test's own table in the report: its name in the page, a caption, columns, rows of cells, the text when empty, a note."""

    name: str
    caption: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    empty: str
    note: str = ""


EyeBand = tuple[float | None, float | None]
"""The low and the high edge of a reading by eye; None for an open side."""


@dataclass(frozen=True, slots=True)
class Derived:
    """A measure derived for exports, for a test whose answers are not themselves the measure.

    ``code`` and ``display`` name the measure; ``unit`` is its unit. ``way``: the method that an answer key belongs to, "" for any
    other question. ``value``: from the key, the side, the answer and all valid answers of the run; None if it gives none.
    """

    code: str
    display: str
    unit: str
    way: Callable[[str], str]
    value: Callable[[str, str, float | str | None, Mapping[str, float | str | None]], float | EyeBand | None]


@dataclass(frozen=True, slots=True)
class Protocol(Generic[R]):
    """One screening test.

    - ``id`` names its file, its flow and its answers in the log; ``title`` names it on a button, ``short_name`` in a
      sentence; ``looks_at`` completes "this looks at …"; ``minutes`` is its duration, ``needs`` the equipment.
    - ``place`` orders the route (loading tests last), ``ease`` orders tests of equal grade
      by ease of doing them right (1 is the easiest, choice). ``posture``, ``uses`` and ``scored`` decide when it is open: a
      clinician's limit closes it where it closes what it uses (the tuple is empty where that is only to move); scored tests
      wait until the lifter is warmed up, rested and not sore.
    - ``record`` holds its answers, ``rows`` are its rows of the evidence table, ``findings`` yields those of a record alone;
      findings that need a second test are in ``pairs``. ``part`` is the part whose drill it points to, "" for none.
    - A measured test gives ``readings`` of a record and a side, and ``doubts``: by side, why its readings are not scored and what to
      repeat; with ``errors`` by method (``errors_men`` in their place for men),
      ``thresholds`` they are compared with (``lines_named``: the pattern that names these in a question), and ``gain``. ``noted``
      are its other numbers.
    - ``starts``, ``detail``, ``derived``: specials of its chart, report and export. ``note``: a remark on a record in the results,
      "" for none; ``would_tell``: its sentence as the most informative test to do next, if not the usual one.
    - ``on_route``: false for a test that needs what few have, so that screen, retest and progress leave it out.
    - ``picture`` is the drawing of its movement, or the prefix of its drawings' names.
    """

    id: str
    title: str
    short_name: str
    looks_at: str
    minutes: int
    place: int
    ease: int
    posture: BodyPosition
    uses: tuple[Work, ...]
    record: type[R]
    rows: tuple[EvidenceRow, ...]
    findings: Callable[[R, FindingContext], Iterator[Finding]]
    needs: tuple[str, ...] = ()
    scored: bool = True
    part: str = ""
    readings: Callable[[R, str], tuple[Reading, ...]] | None = None
    doubts: Callable[[R, FindingContext], Mapping[str, str]] | None = None
    errors: tuple[Error, ...] = ()
    errors_men: tuple[Error, ...] = ()
    thresholds: tuple[Threshold, ...] = ()
    lines_named: str = ""
    gain: Gain | None = None
    noted: tuple[Noted, ...] = ()
    starts: Starts[R] | None = None
    detail: Callable[[R | None, NumberFormat], Detail] | None = None
    derived: Derived | None = None
    note: Callable[[R], str] | None = None
    would_tell: str = ""
    picture: str = ""
    on_route: bool = True

    @property
    def name(self) -> str:
        """Its short name as a heading."""
        return self.short_name.capitalize()

    @property
    def chart(self) -> str:
        """The name of its chart, of readings or of the start of rounding."""
        return f"chart_{self.id}"

    @property
    def sessions(self) -> int:
        """The number of sessions that a retest averages at each end."""
        return self.gain.sessions if self.gain else 1

    def key(self, answer: str) -> str:
        """Return the fact name of one of its answers: "knee_to_wall.method"."""
        return f"{self.id}.{answer}"

    def error(self, method: str, sex: str | None = None) -> Error:
        """Return the error of a method, or of the way it is one of ("level" for "level_strap"); men's only if sex is "man".

        Raises ValueError for a method without one.
        """
        for named in (method, method.split("_")[0]):
            for error in (*(self.errors_men if sex == "man" else ()), *self.errors):
                if error.method == named:
                    return error
        raise ValueError(f"no measurement error is known for {self.id} by {method}")

    def thresholds_in(self, unit: str) -> tuple[Threshold, ...]:
        """Return the thresholds for readings in a unit."""
        return tuple(one for one in self.thresholds if one.unit == unit)

    def grade_about(self, part: str) -> Grade:
        """Return the best grade among its rows about a part."""
        return max((row.grade for row in self.rows if row.part == part), default=Grade.NONE)
