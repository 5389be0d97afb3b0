"""Degrees of pain a reply can tell of."""

from __future__ import annotations

from enum import Enum


class Pain(Enum):
    """Pain in a reply: none, perhaps (ask "Did something hurt?"), or yes."""

    NO = 0
    ASK = 1
    YES = 2
