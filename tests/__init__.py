"""What every process of the tests, and those they start, have in common; it is set before anything is loaded.

What modules are compiled to is kept, also where the surroundings say it should not be: else each process compiles the companion, and
each of pytest's own all tests, again. Numbers are crunched on one core: there is a process for each, and idle threads of OpenBLAS turn
in circles (four fifths of the processor time of a regression)."""

import os
import sys

os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
sys.dont_write_bytecode = False
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
