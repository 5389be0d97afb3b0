"""What a reply says of pain, as one of three degrees."""

from __future__ import annotations

from enum import Enum


class Pain(Enum):
    """What a reply says of pain: nothing, perhaps something (ask "Did something hurt?"), or yes."""

    NO = 0
    ASK = 1
    YES = 2
