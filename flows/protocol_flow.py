"""The maker of a test's flow: name, title, needs and gates come from its protocol."""

from __future__ import annotations

from typing import Any

from companion.conversation.flow import Flow, Gate, Step
from companion.screening.protocol import Protocol
from companion.screening.safety import Level
from flows.shared import FLOOR, NOT_PREGNANT, SCORED, SQUAT, limited


def flow_of(protocol: Protocol[Any], steps: tuple[Step, ...], *, version: int = 1, before_check: tuple[Gate, ...] = (),
            opened: tuple[Gate, ...] = (), **more: Any) -> Flow:
    """Return the flow of a test. ``before_check``: gates that nobody need go through a safety check to be refused by; ``opened``: gates
    of its own, before the warm-up; ``more``: what else a ``Flow`` takes.

    The safety gates follow from its posture and from what it uses: before standing work they shut at "no load", before lying or
    folding deeply in pregnancy, and where a clinician's limit closes what it needs. A scored test comes after the warm-up.
    """
    posture = protocol.posture
    safe = FLOOR if Level.NO_LOAD in posture.levels else SQUAT
    check = next(at for at, gate in enumerate(safe) if gate.first in ("morning", "safety_check"))
    gates = (*safe[:check], *before_check, *safe[check:], limited(*protocol.uses),
             *((NOT_PREGNANT,) if posture.barred_in_pregnancy else ()), *opened, *(SCORED if protocol.scored else ()))
    why = f"This test looks at {protocol.looks_at}."
    return Flow(protocol.id, version, protocol.title, steps, needs=protocol.needs, gates=gates, **{"why": why, **more})
