"""A screening test as one frozen record, from which everything the program says, draws, exports and concludes of it derives.

A record of answers (``Protocol.record``) is a frozen dataclass whose field names are the answer keys of the test's flow:
words for choices, floats for measures, "left_" and "right_" before what is asked of each side. None means not tested: never
asked, skipped, taken back, or given in pain.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Generic, TypeVar

from companion.screening.about import About
from companion.screening.evidence import EvidenceRow, Finding, Grade
from companion.screening.readings import Error, NumberFormat, Reading, Threshold, metric, sessions_to_average
from companion.screening.safety import BodyPosition

R = TypeVar("R")


@dataclass(frozen=True, slots=True)
class FindingContext:
    """What findings are judged with beside the record: the lifter, how a number is written, and the measurement error of a
    test ("knee_to_wall") by a method, this lifter's own where there is one."""

    about: About
    error: Callable[[str, str], Error]
    show: NumberFormat = metric


@dataclass(frozen=True, slots=True)
class Gain:
    """What training is known to give in a measured test, so that a retest comes neither too soon nor with too few sessions.

    ``amount``: the published gain of a programme. ``mdc``: the least detectable change in the gain's own unit, where readings
    may be in another; None: that of the readings. ``method``: whose error counts where the test has not been done.
    ``what``: the part in a sentence ("calf" work), "" for none.
    """

    amount: float
    mdc: float | None = None
    method: str = ""
    what: str = ""

    @property
    def sessions(self) -> int:
        """How many sessions to average at each end, by the published errors."""
        return 1 if self.mdc is None else sessions_to_average(self.mdc, self.amount)


@dataclass(frozen=True, slots=True)
class Noted:
    """A number of each side that is shown as told, with no error and no line: its answer key without the side."""

    key: str
    unit: str
    title: str


@dataclass(frozen=True, slots=True)
class Starts(Generic[R]):
    """Where the back starts to round in a test, in bands of depth, for its chart and its change: a title, a button's label, and
    the two answers of a record (whether it rounds, how deep)."""

    title: str
    label: str
    said: Callable[[R], tuple[str | None, str | None]]


@dataclass(frozen=True, slots=True)
class Detail:
    """A table of a test's own in the report: its name in the page, a caption, columns, rows of cells, a note."""

    name: str
    caption: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    empty: str
    note: str = ""


EyeBand = tuple[float | None, float | None]
"""The low and the high edge of a reading by eye; None where it has none on that side."""


@dataclass(frozen=True, slots=True)
class Derived:
    """What answers stand for in an export, where their own number is not the measure.

    ``code`` and ``display`` name the measure; ``unit`` is its unit. ``way``: the method that an answer key belongs to, "" for any
    other question. ``value``: from the key, the side, the answer and all that stands in the run; None where it gives none.
    """

    code: str
    display: str
    unit: str
    way: Callable[[str], str]
    value: Callable[[str, str, float | str | None, Mapping[str, float | str | None]], float | EyeBand | None]


@dataclass(frozen=True, slots=True)
class Protocol(Generic[R]):
    """One screening test.

    - ``id`` is the name of its file, its flow and its answers in the log; ``title`` names it on a button, ``short_name`` in a
      sentence; ``looks_at`` says what it shows; ``minutes`` is how long it takes, ``needs`` what has to be at hand.
    - ``place`` orders the route (what loads comes last), ``short`` puts it on the short one, ``ease`` orders tests of equal worth
      by how easy they are to do right (1 is the easiest, choice). ``posture`` and ``scored`` decide when it is open: scored tests
      wait until the lifter is warmed up, rested and not sore.
    - ``record`` holds its answers, ``rows`` are its rows of the evidence table, ``findings`` gives those a record shows by itself;
      what takes a second test's record stands in ``pairs``. ``part`` is the part whose drill it points to, "" for none.
    - A measured test gives ``readings`` of a record and a side, with ``errors`` by method (``errors_men`` in their place for men),
      ``thresholds`` they are compared with, and ``gain``. ``noted`` are other numbers of its record.
    - ``starts``, ``detail``, ``derived``: what is special about its chart, report and export. ``note``: what the results say of a
      record, "" for nothing; ``would_tell``: how it is named as the test that would tell most next, where not in the usual words.
    - ``picture`` is the drawing of its movement, or what the names of its drawings begin with.
    """

    id: str
    title: str
    short_name: str
    looks_at: str
    minutes: int
    place: int
    ease: int
    posture: BodyPosition
    record: type[R]
    rows: tuple[EvidenceRow, ...]
    findings: Callable[[R, FindingContext], Iterator[Finding]]
    needs: tuple[str, ...] = ()
    short: bool = False
    scored: bool = True
    part: str = ""
    readings: Callable[[R, str], tuple[Reading, ...]] | None = None
    errors: tuple[Error, ...] = ()
    errors_men: tuple[Error, ...] = ()
    thresholds: tuple[Threshold, ...] = ()
    gain: Gain | None = None
    noted: tuple[Noted, ...] = ()
    starts: Starts[R] | None = None
    detail: Callable[[R | None, NumberFormat], Detail] | None = None
    derived: Derived | None = None
    note: Callable[[R], str] | None = None
    would_tell: str = ""
    picture: str = ""

    @property
    def name(self) -> str:
        """Its short name as a heading."""
        return self.short_name.capitalize()

    @property
    def chart(self) -> str:
        """The name of its chart: of its readings, or of where the back starts to round."""
        return f"chart_{self.id}"

    @property
    def sessions(self) -> int:
        """How many sessions a retest averages at each end."""
        return self.gain.sessions if self.gain else 1

    def key(self, answer: str) -> str:
        """The name of one of its answers among all that is known: "knee_to_wall.method"."""
        return f"{self.id}.{answer}"

    def error(self, method: str, sex: str | None = None) -> Error:
        """The published error of a method ("level_own" is a way of "level"); men's only where sex is "man".

        ValueError for a method that has none.
        """
        way = method.split("_")[0]
        for error in (*(self.errors_men if sex == "man" else ()), *self.errors):
            if error.method == way:
                return error
        raise ValueError(f"no measurement error is known for {self.id} by {method}")

    def thresholds_in(self, unit: str) -> tuple[Threshold, ...]:
        """Return the thresholds for readings in a unit."""
        return tuple(one for one in self.thresholds if one.unit == unit)

    def grade_about(self, part: str) -> Grade:
        """The best grade it can speak about a part with."""
        return max((row.grade for row in self.rows if row.part == part), default=Grade.NONE)
