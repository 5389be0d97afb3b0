"""The words of flags: tables a coach can extend, a file for each family."""

from companion.language.flags.tables.daily import DAILY
from companion.language.flags.tables.health import HEALTH
from companion.language.flags.tables.heart import HEART
from companion.language.flags.tables.mind import MIND
from companion.language.flags.tables.nerve import NERVE_SIGNS
from companion.language.flags.tables.oblique import OBLIQUE

SIGN_TABLES = (*MIND, *NERVE_SIGNS, *HEART, *HEALTH, *DAILY, *OBLIQUE)
