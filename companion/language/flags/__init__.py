"""The second ear: signs in a typed message that matter for safety but are not pain.

Rules and tables load with the first message listened to.
"""

from __future__ import annotations

from companion.language.flags.flag import URGENT, Flag, Heard

__all__ = ["URGENT", "Flag", "Heard", "hear_flags"]


def hear_flags(text: str, *, weigh: bool = True) -> tuple[Heard, ...]:
    """Return the flags heard in a message, the most urgent first. ``weigh``: false where the message is understood otherwise, such
    as "pause for two weeks"; then only the rules listen, not the learned layer behind them."""
    from companion.language.flags import rules

    return rules.hear_flags(text) if weigh else rules.by_the_rules(text)
