"""The only place with SQL: the file, its migrations, one turn's rows, the answer log, the outbox."""

import sys

# sqlite-utils imports numpy and pandas where they are installed, for column types that nothing here uses; that takes a third of
# the time to the first message. None in their place makes it go on without them; what is already loaded stays.
_ABSENT = [name for name in ("numpy", "pandas") if name not in sys.modules]
sys.modules.update(dict.fromkeys(_ABSENT))  # type: ignore[arg-type]
try:
    import sqlite_utils as sqlite_utils
finally:
    for _name in _ABSENT:
        del sys.modules[_name]
