"""Finds out what the operating system must bring, because pip cannot install it.

Every question to the real machine is a field of `Machine`, so that a rule can be tried for a system that the
tests do not run on.
"""

from __future__ import annotations

import contextlib
import ctypes
import ctypes.util
import os
import shutil
import subprocess
import sys
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

Kind = Literal["run", "test"]

CHROMIUM = (
    "chromium",
    "chromium-browser",
    "google-chrome",
    "google-chrome-stable",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
)


class NotStartedError(Exception):
    """The program could not start; the text says why and names the remedy."""


@dataclass(frozen=True)
class Need:
    """Something that the operating system brings: a shared library, or a program by one of several names."""

    what: str
    debian: str
    brew: str
    kind: Kind
    library: str = ""
    programs: tuple[str, ...] = ()


NEEDS = (
    Need("Pango (sets the text of the booklets)", "libpango-1.0-0", "pango", "run", library="pango-1.0"),
    Need("PangoFT2 (Pango's fonts)", "libpangoft2-1.0-0", "pango", "run", library="pangoft2-1.0"),
    Need(
        "HarfBuzz-Subset (puts fonts into the booklets)",
        "libharfbuzz-subset0",
        "harfbuzz",
        "run",
        library="harfbuzz-subset",
    ),
    Need("Chromium (tests of the pages)", "chromium", "google-chrome", "test", programs=CHROMIUM),
    Need("msgfmt (tests of the translations)", "gettext", "gettext", "test", programs=("msgfmt",)),
    Need("Java (tests of the HTML)", "default-jre-headless", "openjdk", "test", programs=("java",)),
    Need("npm (fetches the HTML checker for the tests)", "npm", "node", "test", programs=("npm",)),
)


def _has_library(name: str) -> bool:
    """Look for a shared library by its bare name, as the library that uses it will."""
    if ctypes.util.find_library(name):
        return True
    # find_library needs ldconfig or a compiler, which a small container may lack; the loader itself does not.
    with contextlib.suppress(OSError):
        ctypes.CDLL(f"lib{name}.so.0")
        return True
    return False


def run(
    command: Sequence[str | Path],
    *,
    cwd: Path | None = None,
    env: Mapping[str, str] | None = None,
    to_stdout: bool = False,
    keep_open: Sequence[int] = (),
) -> int:
    """Run a program to its end and return its exit code; what it prints goes to standard error unless told.

    keep_open: file descriptors the program inherits, and with them the locks on these files.
    Ctrl-C reaches the program itself; it may end in its own way, then KeyboardInterrupt goes on.
    Raises OSError when the program cannot be started.
    """
    output = None if to_stdout else sys.stderr.fileno()
    process = subprocess.Popen(list(command), stdout=output, cwd=cwd, env=env, pass_fds=keep_open)
    interrupted = False
    while True:
        try:
            code = process.wait()
        except KeyboardInterrupt:
            interrupted = True
            continue
        if interrupted:
            raise KeyboardInterrupt
        return code


@dataclass(frozen=True)
class Machine:
    """The facts about this machine that decide how to start, and the ways to ask and change it."""

    platform: str
    root: bool
    ci: bool
    debian: bool
    has_library: Callable[[str], bool] = _has_library
    find_program: Callable[[str], str | None] = shutil.which
    run: Callable[[Sequence[str | Path]], int] = run

    @classmethod
    def here(cls) -> Machine:
        """Describe the machine we run on."""
        return cls(
            platform=sys.platform,
            root=os.geteuid() == 0,
            ci=os.environ.get("CI") == "true",
            debian=Path("/etc/debian_version").exists() and shutil.which("apt-get") is not None,
        )

    def has(self, need: Need) -> bool:
        """Tell whether the machine brings what is needed."""
        if need.library:
            return self.has_library(need.library)
        return any(self.find_program(name) for name in need.programs)

    def missing(self, kind: Kind) -> tuple[Need, ...]:
        """Return what is needed for running, or only for testing, and is not there."""
        return tuple(need for need in NEEDS if need.kind == kind and not self.has(need))


def remedy(machine: Machine, needs: Sequence[Need]) -> str:
    """Return the one command that brings what is missing, or words where we know no command."""
    if machine.platform == "darwin":
        return "brew install " + " ".join(dict.fromkeys(need.brew for need in needs))
    if machine.debian:
        packages = " ".join(need.debian for need in needs)
        return f"{'' if machine.root else 'sudo '}apt-get install --no-install-recommends {packages}"
    names = ", ".join(need.what for need in needs)
    return f"install with this system's package manager: {names}"


def _install(machine: Machine, needs: Sequence[Need], say: Callable[[str], None]) -> bool:
    """Install Debian packages as root; refresh the package lists only when the first try fails."""
    packages = [need.debian for need in needs]
    say("Installing system packages: " + " ".join(packages))
    quiet = ["env", "DEBIAN_FRONTEND=noninteractive", "apt-get", "-qq", "-o", "DPkg::Lock::Timeout=120"]
    install = [*quiet, "install", "--yes", "--no-install-recommends", *packages]
    if machine.run(install) == 0:
        return True
    say("The package lists are missing or old: refreshing them and trying again.")
    return machine.run([*quiet, "update"]) == 0 and machine.run(install) == 0


def make_ready(machine: Machine, kind: Kind, *, install: bool, say: Callable[[str], None]) -> None:
    """See that the system brings what is needed, installing it where that is wanted and possible.

    What only a test needs may be missing on a user's machine: its tests are skipped, and that is said.
    Raises NotStartedError with the one command to run when something necessary is missing.
    """
    wanted = install or machine.ci
    needs = machine.missing("run")
    for_tests = machine.missing("test") if kind == "test" else ()
    everything = (*needs, *for_tests)
    if everything and wanted and machine.root and machine.debian and _install(machine, everything, say):
        needs, for_tests = machine.missing("run"), machine.missing("test") if kind == "test" else ()
        everything = (*needs, *for_tests)
    necessary = everything if wanted else needs
    if necessary:
        names = "".join(f"  - {need.what}\n" for need in necessary)
        raise NotStartedError(
            f"Missing on this machine:\n{names}Nothing was started.\nRemedy: {remedy(machine, necessary)}"
        )
    if for_tests:
        say(
            "Tests that need the following are skipped: "
            + ", ".join(need.what for need in for_tests)
            + f"\nTo run them too: {remedy(machine, for_tests)}"
        )
