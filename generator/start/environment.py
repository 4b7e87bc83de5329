"""Makes the project's own Python environment once, so that every later start needs no network and no pip.

`.venv` holds exactly the packages of a lock file with hashes. A stamp, written last, says for which lock and
which Python it is complete; without a matching stamp it is made anew, whatever state it was left in.
"""

from __future__ import annotations

import contextlib
import fcntl
import hashlib
import json
import os
import re
import shutil
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import IO

from generator.start.machine import Kind, NotStartedError, run

# The first pip with --python, which installs into an environment that has no pip of its own.
OLDEST_PIP = (22, 3)
_BETWEEN_LOOKS = 0.1
"""Seconds between two looks at a lock that another start holds."""

TOOLS_OF_A_BARE_ENVIRONMENT = {"pip", "setuptools", "wheel"}


@dataclass(frozen=True)
class Places:
    """Where the environment and what decides about it lie in a project folder."""

    root: Path

    @property
    def venv(self) -> Path:
        """The environment."""
        return self.root / ".venv"

    @property
    def python(self) -> Path:
        """The environment's Python."""
        return self.venv / "bin" / "python"

    @property
    def stamp(self) -> Path:
        """Says what the environment is complete for."""
        return self.venv / "phasebook-stamp.json"

    @property
    def made_here(self) -> Path:
        """Says that this program made the environment, so that it may also remove it."""
        return self.venv / "phasebook-made-this"

    @property
    def growing(self) -> Path:
        """There while the tools for tests are being added to a complete environment for running."""
        return self.venv / "phasebook-growing"

    @property
    def guard(self) -> Path:
        """The file whose lock lets one start at a time work on the environment."""
        return self.root / ".phasebook" / "start.lock"

    def lock(self, kind: Kind) -> Path:
        """Return the file of pinned packages for running, or for running and testing."""
        return self.root / ".locks" / f"{kind}.txt"


def fingerprint(path: Path) -> str:
    """Return the SHA-256 of a file, in hexadecimal."""
    return hashlib.sha256(path.read_bytes()).hexdigest()


def _wanted(places: Places, kind: Kind) -> dict[str, object]:
    """Return the stamp of an environment complete for this kind, on this Python and system."""
    system = os.uname()
    kinds: tuple[Kind, ...] = ("run", "test") if kind == "test" else ("run",)
    return {
        "format": 1,
        "python": sys.implementation.cache_tag,
        "system": f"{system.sysname} {system.machine}",
        **{name: fingerprint(places.lock(name)) for name in kinds},
    }


def _stamped(places: Places) -> dict[str, object]:
    """Return what the environment is complete for; nothing when the stamp is missing or torn."""
    try:
        found = json.loads(places.stamp.read_bytes())
    except (OSError, ValueError):
        return {}
    return found if isinstance(found, dict) else {}


def is_ready(places: Places, kind: Kind) -> bool:
    """Tell, without pip or network, whether the environment is complete; one for tests serves running too."""
    usable = os.access(places.python, os.X_OK) and (places.venv / "pyvenv.cfg").exists()
    return usable and _wanted(places, kind).items() <= _stamped(places).items()


def write_last(path: Path, text: str) -> None:
    """Put a whole file in place at once, so that it is there complete or not at all."""
    partial = path.with_name(path.name + ".part")
    partial.write_text(text, encoding="utf-8")
    partial.replace(path)


@contextlib.contextmanager
def _alone(places: Places, say: Callable[[str], None]) -> Iterator[int]:
    """Hold the lock on the environment; yields its descriptor, which child programs must inherit."""
    places.guard.parent.mkdir(parents=True, exist_ok=True)
    with places.guard.open("a") as guard:
        try:
            fcntl.flock(guard, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            say("Another start is preparing the environment: waiting for it.")
            _wait_for(guard)
        yield guard.fileno()


def _wait_for(guard: IO[str]) -> None:
    """Take the lock once it is free, in steps: Ctrl-C just before a wait without end would go unheard."""
    while True:
        with contextlib.suppress(BlockingIOError):
            fcntl.flock(guard, fcntl.LOCK_EX | fcntl.LOCK_NB)
            return
        time.sleep(_BETWEEN_LOOKS)


def maker(places: Places) -> Path:
    """Return the Python that makes the environment: never the environment's own, about to be removed."""
    if Path(sys.prefix).resolve() == places.venv.resolve():
        return Path(sys.base_prefix) / "bin" / f"python{sys.version_info.major}.{sys.version_info.minor}"
    return Path(sys.executable)


def check_pip(said: str) -> None:
    """Raise NotStartedError unless `pip --version` said a version that can do the work."""
    found = re.match(r"pip (\d+)\.(\d+)", said)
    if found is None:
        raise NotStartedError(
            "This Python has no pip, so the pinned packages cannot be installed.\n"
            "Remedy: install it (Debian: apt-get install python3-pip; elsewhere: python3 -m ensurepip)."
        )
    if (int(found[1]), int(found[2])) < OLDEST_PIP:
        raise NotStartedError(
            f"The machine's {found[0]} is too old: {'.'.join(map(str, OLDEST_PIP))} or newer is needed.\n"
            "Remedy: python3 -m pip install --upgrade pip, then start again."
        )


def _environment_for_pip() -> dict[str, str]:
    """Return the variables for pip without PYTHONPATH: packages found there would count as installed."""
    return {name: value for name, value in os.environ.items() if name != "PYTHONPATH"}


def _refuse_a_foreign(venv: Path) -> None:
    """Raise NotStartedError when .venv is somebody's own work; a bare or half-made one is nobody's."""
    distributions = venv.glob("lib/python*/site-packages/*.dist-info")
    names = {path.name.split("-")[0].lower() for path in distributions}
    if venv.is_symlink() or venv.is_file() or names - TOOLS_OF_A_BARE_ENVIRONMENT:
        raise NotStartedError(
            f"{venv.name} in this folder was not made by this program, so it is left alone.\n"
            f"Remedy: use it as it is ({venv.name}/bin/phasebook build), or rename it and start again."
        )


def _make_empty(places: Places, python: Path, lock: int) -> None:
    """Remove what is there, then make an environment without packages.

    The stamp goes first and the mark that it is ours stays throughout, so that a kill at any moment leaves
    something that the next start makes anew.
    """
    if not places.made_here.exists():
        _refuse_a_foreign(places.venv)
    places.venv.mkdir(exist_ok=True)
    places.made_here.touch()
    places.stamp.unlink(missing_ok=True)
    for path in places.venv.iterdir():
        if path.is_dir() and not path.is_symlink():
            shutil.rmtree(path)
        elif path != places.made_here:
            path.unlink()
    create: list[str | Path] = [python, "-m", "venv", "--without-pip", places.venv]
    if run(create, env=_environment_for_pip(), keep_open=[lock]):
        raise NotStartedError(
            "Python could not make an environment (see above).\n"
            "Remedy: install Python's venv module (Debian: apt-get install python3-venv), start again."
        )


def _install(places: Places, python: Path, kind: Kind, wheels: Path | None, lock: int) -> None:
    """Install the pinned packages with the machine's pip: wheels only, each checked against its hash."""
    source = ["--no-index", "--find-links", str(wheels)] if wheels else []
    command: list[str | Path] = [python, "-m", "pip", "--python", places.venv, "install"]
    command += ["-qq", "--no-input", "--no-user", "--disable-pip-version-check", "--progress-bar", "off"]
    command += ["--require-hashes", "--only-binary", ":all:", *source, "-r", places.lock(kind)]
    if run(command, env=_environment_for_pip(), keep_open=[lock]):
        raise NotStartedError(
            "The pinned packages could not be installed (pip says why above).\n"
            "Remedy: see that the network reaches a package index, or start with --wheels DIR (see --help)."
        )


def _make(places: Places, kind: Kind, wheels: Path | None, lock: int, say: Callable[[str], None]) -> None:
    """Make the environment, or add the tools for tests to one for running, and stamp it."""
    python = maker(places)
    ask = [str(python), "-m", "pip", "--version"]
    asked = subprocess.run(ask, capture_output=True, text=True, env=_environment_for_pip(), check=False)
    check_pip(asked.stdout)
    say(f"Preparing {places.venv.name} for this project (once; a few minutes).")
    if is_ready(places, "run") and "test" not in _stamped(places) and not places.growing.exists():
        # The stamp for running stays: without a network the program must still run when this fails.
        places.growing.touch()
        try:
            _install(places, python, kind, wheels, lock)
        except NotStartedError:
            places.growing.unlink()  # pip ended by itself, so no package is half there
            raise
    else:
        _make_empty(places, python, lock)
        _install(places, python, kind, wheels, lock)
    write_last(places.stamp, json.dumps(_wanted(places, kind), indent=1, sort_keys=True) + "\n")
    places.growing.unlink(missing_ok=True)


def prepare(places: Places, kind: Kind, *, wheels: Path | None, say: Callable[[str], None]) -> None:
    """See that the environment is complete for this kind; at once when the stamp matches.

    wheels: a folder with the wheels of the lock, to install without any index. say: is told what happens.
    Raises NotStartedError with the remedy when the environment cannot be made.
    """
    for name in ("run", "test"):
        if not places.lock(name).exists():
            raise NotStartedError(
                f"{places.lock(name).relative_to(places.root)} is missing beside the program.\n"
                "Remedy: start in a full copy of the project; once installed, start with: phasebook build"
            )
    if is_ready(places, kind):
        return
    with _alone(places, say) as lock:
        if not is_ready(places, kind):
            _make(places, kind, wheels, lock, say)
