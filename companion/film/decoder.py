"""The decoding process: ``python -m companion.film.decoder FILE`` writes the corners of the cards in each frame as JSON.

It limits its own time, memory and files before it opens anything, since the file is a stranger's. Libraries are imported after that.
"""

from __future__ import annotations

import ctypes
import json
import os
import resource
import signal
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from typing import Any, Final

from companion.film.cards import BY_PATTERN, DICTIONARY
from companion.film.footage import MOST_FRAMES, MOST_PIXELS, MOST_SECONDS

PR_SET_PDEATHSIG: Final = 1
"""The number by which Linux knows it (prctl(2), from memory)."""
CPU_SECONDS: Final = 90
MEMORY: Final = 3 * 2**30
"""Address space in bytes, libraries included; a film of 4K decodes in less (measured: 1.1 GB mapped for 720 × 1280)."""
WRITTEN: Final = 64 * 2**20
LONG_SIDE: Final = 1920
"""A larger picture is scaled down to this before cards are looked for."""
LEAST_RATE: Final = 24.0
"""Frames a second that are enough: of a film with twice as many, every second is read."""
MOST_RATE: Final = 480.0
"""Frames a second above which a file's own word is not believed: a Matroska file may give its clock's rate instead."""
MARGIN: Final = 0.6
"""Around the cards of the last frame, as a part of their extent, the next frame is searched."""
LOOK_WIDE: Final = 15
LOOK_WIDE_FOR_ONE: Final = 3
"""Every so many frames the whole picture is searched, or sooner where a card is missing; and whenever fewer are found than before."""


def end_with_parent() -> None:
    """Let the system kill this process as soon as the one that started it ends, where it can (Linux): else a film would be read on for
    nobody, or wait for ever to be let go on."""
    with suppress(AttributeError, OSError):
        ctypes.CDLL(None).prctl(PR_SET_PDEATHSIG, signal.SIGKILL)


def limit_process() -> None:
    """Limit this process: time, memory, size of files, no core; end with the parent, and let every other process go first."""
    end_with_parent()
    for what, most in ((resource.RLIMIT_CPU, CPU_SECONDS), (resource.RLIMIT_FSIZE, WRITTEN), (resource.RLIMIT_CORE, 0),
                       (resource.RLIMIT_AS, MEMORY)):
        hard = resource.getrlimit(what)[1]
        limit = most if hard == resource.RLIM_INFINITY else min(most, hard)
        try:
            resource.setrlimit(what, (limit, hard if what == resource.RLIMIT_CPU else limit))
        except (ValueError, OSError):  # macOS refuses a limit of address space; time and the parent's clock still hold there
            continue
    os.nice(10)


FORMATS_READ: Final = "mov,mp4,m4a,3gp,3g2,mj2,matroska,webm,avi,mpegts,mpeg,gif,jpeg_pipe,png_pipe,webp_pipe,image2"
"""Kinds of file that phones and chats make. A playlist is none of them: it would have other files and addresses opened."""


class NotDecoded(Exception):
    """The film is not read; the message is "too_long", "no_film" or "too_large"."""


def frames_in(container: Any, stream: Any) -> Iterator[tuple[float, Any]]:
    """Yield each frame with its time in seconds from the first. A damaged end ends it; nothing before that is lost."""
    import av

    base, first, last, count = float(stream.time_base or 0), None, -1.0, 0
    if (stream.duration or 0) * base > MOST_SECONDS:  # by its own word; one that says less is decoded until it is
        raise NotDecoded("too_long")
    try:
        for frame in container.decode(stream):
            count += 1
            if count > MOST_FRAMES * 2:
                raise NotDecoded("too_long")
            if frame.width * frame.height > MOST_PIXELS:
                raise NotDecoded("too_large")
            at = frame.pts * base if frame.pts is not None else count / float(stream.average_rate or 30)
            first = at if first is None else first
            if at - first > MOST_SECONDS:
                raise NotDecoded("too_long")
            if at - first > last:  # a frame that repeats the last one's time adds nothing
                last = at - first
                yield last, frame
    except av.error.FFmpegError:
        return


class Finder:
    """Finds the cards in one frame after the other; where they were is searched first, since the whole picture takes four times as long."""

    def __init__(self) -> None:
        import cv2

        settings = cv2.aruco.DetectorParameters()
        settings.adaptiveThreshWinSizeMin = settings.adaptiveThreshWinSizeMax = 23  # one threshold instead of three
        settings.minMarkerPerimeterRate = 0.01
        settings.cornerRefinementMethod = cv2.aruco.CORNER_REFINE_SUBPIX
        settings.cornerRefinementWinSize = 3
        settings.relativeCornerRefinmentWinSize = 0.5
        settings.errorCorrectionRate = 0.3
        self.detector = cv2.aruco.ArucoDetector(cv2.aruco.getPredefinedDictionary(getattr(cv2.aruco, DICTIONARY)), settings)
        self.window: tuple[int, int, int, int] | None = None
        self.before, self.since = 0, 0

    def find(self, grey: Any) -> dict[int, list[list[float]]]:
        """Return the corners of each card in a grey picture, by pattern; the larger where a pattern is there twice."""
        if self.window is not None and self.since < (LOOK_WIDE if self.before == len(BY_PATTERN) else LOOK_WIDE_FOR_ONE):
            left, top, right, bottom = self.window
            found = self._find(grey[top:bottom, left:right], left, top)
            if len(found) >= self.before:
                self._remember(found, grey.shape, self.since + 1)
                return found
        found = self._find(grey, 0, 0)
        self._remember(found, grey.shape, 0)
        return found

    def _remember(self, found: dict[int, list[list[float]]], shape: tuple[int, int], since: int) -> None:
        self.before, self.since = len(found), since
        if not found:
            self.window = None
            return
        across = [corner[0] for corners in found.values() for corner in corners]
        down = [corner[1] for corners in found.values() for corner in corners]
        room = MARGIN * max(min(max(across) - min(across), max(down) - min(down)), 40)
        self.window = (max(0, int(min(across) - room)), max(0, int(min(down) - room)),
                       min(shape[1], int(max(across) + room) + 1), min(shape[0], int(max(down) + room) + 1))

    def _find(self, grey: Any, left: int, top: int) -> dict[int, list[list[float]]]:
        corners, patterns, _ = self.detector.detectMarkers(grey)
        best: dict[int, tuple[float, list[list[float]]]] = {}
        for quad, pattern in zip(corners, [] if patterns is None else patterns.ravel().tolist(), strict=True):
            if pattern in BY_PATTERN:
                points = [[round(float(x) + left, 3), round(float(y) + top, 3)] for x, y in quad.reshape(4, 2)]
                size = sum(abs(a[0] - b[0]) + abs(a[1] - b[1]) for a, b in zip(points, points[1:] + points[:1], strict=True))
                if size > best.get(pattern, (0.0, []))[0]:
                    best[pattern] = size, points
        return {pattern: points for pattern, (_, points) in best.items()}


def picture_of(frame: Any, kind: str = "gray") -> Any:
    """Return a frame as a picture the way it is shown: turned by its rotation flag, at most LONG_SIDE long; its brightness alone, or the
    colours of another ``kind``."""
    import cv2
    import numpy as np

    picture = frame.to_ndarray(format=kind)
    if (turns := round(frame.rotation / 90) % 4) != 0:
        picture = np.rot90(picture, turns)
    if (long := max(picture.shape)) > LONG_SIDE:
        picture = cv2.resize(picture, None, fx=LONG_SIDE / long, fy=LONG_SIDE / long, interpolation=cv2.INTER_AREA)
    return np.ascontiguousarray(picture)


@contextmanager
def opened(path: str) -> Iterator[tuple[Any, Any]]:
    """Open a film; gives its container and its picture. Raises NotDecoded."""
    import av
    import cv2

    cv2.setNumThreads(1)
    try:
        container = av.open(path, metadata_errors="ignore", timeout=20.0,
                            options={"protocol_whitelist": "file", "format_whitelist": FORMATS_READ})
    except (av.error.FFmpegError, OSError, ValueError) as error:
        raise NotDecoded("no_film") from error
    with container:
        if not container.streams.video:
            raise NotDecoded("no_film")
        stream = container.streams.video[0]
        stream.codec_context.thread_count = 1  # others need the second core
        if stream.width * stream.height > MOST_PIXELS:
            raise NotDecoded("too_large")
        yield container, stream


def read(path: str) -> dict[str, Any]:
    """Return what a film holds: size, frames (time, brightness, corners by pattern), mirrored or not, bits a second. Raises NotDecoded."""
    with opened(path) as (container, stream):
        rate = float(stream.average_rate or 30)
        rate = rate if rate <= MOST_RATE else float(stream.guessed_rate or 30)
        every = max(1, int(rate / LEAST_RATE + 0.02))
        plain, mirror, frames, shape = Finder(), Finder(), [], (0, 0)
        seen = {False: 0, True: 0}
        for number, (at, frame) in enumerate(frames_in(container, stream)):
            if number % every:
                continue
            grey = picture_of(frame)
            shape = grey.shape
            found, other = plain.find(grey), {}
            if not seen[False] and (seen[True] or number < 60 * every):
                other = _mirrored(mirror, grey)
            seen[False] += len(found)
            seen[True] += len(other)
            frames.append((round(at, 5), round(float(grey[::8, ::8].mean()), 1), found, other))
            if len(frames) > MOST_FRAMES:
                raise NotDecoded("too_long")
        if not frames:
            raise NotDecoded("no_film")
        turned = seen[True] > seen[False]
        return {"size": [shape[1], shape[0]], "mirrored": turned, "bits": float(stream.bit_rate or container.bit_rate or 0),
                "frames": [[at, light, other if turned else found] for at, light, found, other in frames]}


def _mirrored(finder: Finder, grey: Any) -> dict[int, list[list[float]]]:
    """Return the cards in the mirror image of a picture, in the mirror image's pixels."""
    import numpy as np

    return finder.find(np.ascontiguousarray(grey[:, ::-1]))


def main() -> int:
    """Decode the file named on the command line; exit code 0 with JSON, or 3 with the word that says why not."""
    limit_process()
    try:
        told: dict[str, Any] = read(sys.argv[1])
    except NotDecoded as error:
        sys.stdout.write(json.dumps({"refused": str(error)}))
        return 3
    except MemoryError:
        sys.stdout.write(json.dumps({"refused": "too_large"}))
        return 3
    sys.stdout.write(json.dumps(told, separators=(",", ":")))
    return 0


if __name__ == "__main__":
    sys.exit(main())
