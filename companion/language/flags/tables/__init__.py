"""The words of flags: tables a coach can extend, a file for each family."""

from companion.language.flags.tables.signs import signs_of

FAMILIES = ("mind", "nerve", "heart", "health", "daily")
SIGN_TABLES = tuple(signs for family in FAMILIES for signs in signs_of(family))
