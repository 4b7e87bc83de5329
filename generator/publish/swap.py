"""Puts a finished site in the place of the old one in one step, so that a reader never meets half a site.

On Linux the two folders change places at once (``renameat2`` with ``RENAME_EXCHANGE``, man page
renameat2(2)). Where the system or the file system cannot do that, two renames do it, with a journal
that lets the next start put the old site back if the process was killed between the two.
"""

from __future__ import annotations

import ctypes
import errno
import json
import os
import sys
from pathlib import Path

SITE = "site"
OLD = "old"
JOURNAL = "swap.json"

# From linux/fcntl.h and linux/fs.h.
_AT_FDCWD = -100
_RENAME_EXCHANGE = 2
_CANNOT = frozenset({errno.ENOSYS, errno.EINVAL, errno.ENOTSUP, errno.EOPNOTSUPP})


def exchange(one: Path, other: Path) -> bool:
    """Let two folders of one file system change names at once; return False where that is not possible.

    OSError for anything else than a system or file system that does not know the operation.
    """
    if not sys.platform.startswith("linux"):
        return False
    renameat2 = getattr(ctypes.CDLL(None, use_errno=True), "renameat2", None)
    if renameat2 is None:
        return False
    paths = os.fsencode(one), os.fsencode(other)
    if renameat2(_AT_FDCWD, paths[0], _AT_FDCWD, paths[1], ctypes.c_uint(_RENAME_EXCHANGE)) == 0:
        return True
    code = ctypes.get_errno()
    if code in _CANNOT:
        return False
    raise OSError(code, os.strerror(code), str(other))


def swap(workshop: Path, output: Path, *, at_once: bool = True) -> None:
    """Put ``workshop/site`` in the place of `output`; what was there ends up inside `workshop`.

    With `at_once` false the two renames are used even where the exchange is possible. OSError leaves
    the old site in its place.
    """
    fresh = workshop / SITE
    if not output.exists():
        fresh.rename(output)
    elif not (at_once and exchange(fresh, output)):
        _two_renames(workshop, output)


def _two_renames(workshop: Path, output: Path) -> None:
    """Move the old site aside and the new one in, journalled, undoing the first step if the second fails."""
    with (workshop / JOURNAL).open("w", encoding="utf-8", newline="\n") as journal:
        json.dump({"format": 1, "output": output.name}, journal)
        journal.flush()
        os.fsync(journal.fileno())
    old = workshop / OLD
    output.rename(old)
    try:
        (workshop / SITE).rename(output)
    except OSError:
        old.rename(output)
        raise


def repair(workshop: Path, output: Path) -> None:
    """Put the old site back where a killed swap by two renames had moved it aside and not come further."""
    old = workshop / OLD
    if (workshop / JOURNAL).is_file() and old.is_dir() and not os.path.lexists(output):
        old.rename(output)
