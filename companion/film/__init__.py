"""Angles of a filmed squat from printed cards, without any learnt model. Pure but for decoding, which runs in a process of its own."""

from importlib.util import find_spec


def can_read() -> bool:
    """True if the film part is installed (``pip install 'squat-companion[film]'``)."""
    return find_spec("av") is not None and find_spec("cv2") is not None
