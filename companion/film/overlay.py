"""The drawing process: ``python -m companion.film.overlay FILE FOLDER`` writes STILL and CLIP of a film into a folder, with the cards
outlined and the angles written.

What to draw comes on standard input, as ``companion.film.shown.plan_of`` wrote it. The process has the decoder's limits.
"""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any, Final

from companion.film.decoder import NotDecoded, frames_in, limit_process, opened, picture_of

STILL, CLIP = "film_still.jpg", "film_clip.mp4"  # companion.record.picture_files.FILM_KEPT
STILL_SIDE, CLIP_SIDE = 1280, 640
"""The longest side of each in pixels (choice)."""
CLIP_RATE: Final = 10
"""Pictures a second of the clip (choice)."""
OUTLINED: Final = (0, 200, 255)


def main() -> int:
    """Draw one film; exit code 0, or 3 where it can't be read."""
    limit_process()
    try:
        _draw(sys.argv[1], Path(sys.argv[2]), json.load(sys.stdin))
    except (NotDecoded, MemoryError):
        return 3
    return 0


def _draw(film: str, folder: Path, plan: dict[str, Any]) -> None:
    import cv2

    wanted, shown = {frame["at"]: frame for frame in plan["frames"]}, []
    with opened(film) as (container, stream):
        for at, frame in frames_in(container, stream):
            if (marks := wanted.pop(round(at, 5), None)) is None:
                continue
            picture = picture_of(frame, "bgr24")
            if plan["mirrored"]:
                picture = picture[:, ::-1]
            if marks["at"] == plan["still"]:
                cv2.imwrite(str(folder / STILL), _marked(picture, marks, STILL_SIDE), [cv2.IMWRITE_JPEG_QUALITY, 85])
            shown.append(_marked(picture, marks, CLIP_SIDE))
            if not wanted:
                break
    if shown:
        _write(folder / CLIP, shown + shown[::-1])  # down and up again, so that it loops


def _marked(picture: Any, marks: dict[str, Any], side: int) -> Any:
    """Return a picture of the wanted size, with its cards outlined, a turn beside each, and the lines of words on top."""
    import cv2
    import numpy as np

    scale = min(1.0, side / max(picture.shape))
    picture = cv2.resize(picture, [round(length * scale) // 2 * 2 for length in picture.shape[1::-1]], interpolation=cv2.INTER_AREA)
    size = max(picture.shape) / 1280

    def write(words: str, at: tuple[int, int]) -> None:
        rim = [((0, 0, 0), dx, dy) for dx in (-1, 0, 1) for dy in (-1, 0, 1)]  # white with a dark rim is read on every ground
        for colour, dx, dy in (*rim, ((255, 255, 255), 0, 0)):
            cv2.putText(picture, words, (at[0] + dx, at[1] + dy), cv2.FONT_HERSHEY_SIMPLEX, 1.1 * size, colour,
                        max(1, round(2 * size)), cv2.LINE_AA)

    for corners, turn in marks["cards"]:
        points = np.round(np.asarray(corners) * scale).astype(np.int32)
        cv2.polylines(picture, [points], True, OUTLINED, max(1, round(4 * size)), cv2.LINE_AA)
        write(turn, (int(points[:, 0].max()) + round(8 * size), int(points[:, 1].max())))
    for row, line in enumerate(marks["lines"], 1):
        write(line, (round(20 * size), round(48 * size * row)))
    return picture


def _write(path: Path, pictures: list[Any]) -> None:
    """Write a short loop without sound; nothing where this build of FFmpeg can't write one."""
    import av

    if "libx264" not in av.codecs_available:
        return
    with av.open(str(path), "w") as out:
        stream = out.add_stream("libx264", rate=CLIP_RATE, options={"preset": "veryfast"})
        stream.height, stream.width = pictures[0].shape[:2]
        stream.pix_fmt, stream.codec_context.thread_count = "yuv420p", 1
        for picture in pictures:
            out.mux(stream.encode(av.VideoFrame.from_ndarray(picture, format="bgr24")))
        out.mux(stream.encode(None))


if __name__ == "__main__":
    sys.exit(main())
