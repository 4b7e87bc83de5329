"""Makes any machine ready, with the standard library alone, before a third-party library can be imported.

In reading order: `command` (the story), `machine` (what the system must bring), `environment` (the Python
packages, pinned), `tools` (what only the tests need), `testing` (lint, types, tests), `summary` (what pytest
prints about the two before it).
"""
