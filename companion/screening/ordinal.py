"""Ordered names: a few words with a fixed order, kept as strings."""

from __future__ import annotations

from enum import Enum
from typing import Self


class Ranked(Enum):
    """An enum whose members compare in the order in which they are written."""

    rank: int
    """Its place in the order, from 0."""

    def __init__(self, *_: object) -> None:
        self.rank = len(type(self).__members__)

    def __lt__(self, other: Self) -> bool:
        return self.rank < other.rank

    def __le__(self, other: Self) -> bool:
        return self.rank <= other.rank

    def __gt__(self, other: Self) -> bool:
        return self.rank > other.rank

    def __ge__(self, other: Self) -> bool:
        return self.rank >= other.rank
