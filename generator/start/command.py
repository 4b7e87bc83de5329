"""The story of a start: read what is wanted, see to the machine, prepare the environment, hand over."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from generator.start.environment import Places, is_ready, prepare
from generator.start.machine import Kind, Machine, NotStartedError, make_ready
from generator.start.testing import run_tests
from generator.start.tools import fetch_tools

HandOver = Callable[[Path, list[str]], int]

HELP = """\
usage: python3 -m generator COMMAND [--install] [--wheels DIR] [options of the command]
       python3 -m generator test [--quick] [--install] [--wheels DIR] [options of pytest]

The first start makes .venv in this folder and installs the pinned packages there, each checked
against its hash; later starts need neither pip nor a network.

--install     Also install the system packages that are missing (Debian and its kin, as root) and,
              for test, the HTML checker. Without it, a missing package stops the start and the one
              command that installs it is printed. CI=true has the same effect.
--wheels DIR  Install from a folder of wheels instead of an index, for a machine without a network.
              Fill the folder on a machine of the same kind, with the same Python:
                  python3 -m pip download --require-hashes --only-binary :all: -r .locks/run.txt -d DIR
              (for test: .locks/test.txt). pip's own settings, such as PIP_NO_INDEX and
              PIP_FIND_LINKS, are heeded too.
test          Run the lint, type and test checks. --quick leaves out the slow tests. Tests whose
              programs are missing are skipped with the reason; with CI=true that is a failure.

Exit codes: 0 done, 1 problems, 2 not started.
"""


@dataclass(frozen=True)
class Request:
    """What the command line asks of the start itself; `rest` is for the program that is handed over to."""

    rest: tuple[str, ...]
    install: bool = False
    wheels: Path | None = None
    quick: bool = False

    @property
    def kind(self) -> Kind:
        """The environment that this request needs."""
        return "test" if self.rest[:1] == ("test",) else "run"

    @property
    def wants_help(self) -> bool:
        """Tell whether the help on starting is asked for."""
        first, *others = self.rest or ("--help",)
        return first in {"-h", "--help"} or (first == "test" and bool({"-h", "--help"} & set(others)))


def read_request(arguments: Sequence[str]) -> Request:
    """Take the options of the start out of the arguments, wherever they stand.

    Raises NotStartedError when --wheels names no folder.
    """
    rest: list[str] = []
    install = quick = False
    wheels: str | None = None
    waiting = iter(arguments)
    for argument in waiting:
        if argument == "--install":
            install = True
        elif argument == "--wheels":
            wheels = next(waiting, "")
        elif argument.startswith("--wheels="):
            wheels = argument.removeprefix("--wheels=")
        elif argument == "--quick" and rest[:1] == ["test"]:
            quick = True
        else:
            rest.append(argument)
    if wheels is not None and not (wheels and Path(wheels).is_dir()):
        raise NotStartedError(
            f"--wheels needs a folder, and there is none named '{wheels}'.\n"
            "Remedy: name the folder with the downloaded wheels (see --help)."
        )
    return Request(tuple(rest), install, Path(wheels).resolve() if wheels else None, quick)


def say(text: str) -> None:
    """Tell people what happens, on standard error: standard output belongs to the command's result."""
    print(text, file=sys.stderr, flush=True)


def _start(arguments: Sequence[str], root: Path, machine: Machine, hand_over: HandOver) -> int:
    """Do what the arguments ask; see `start`."""
    request, places = read_request(arguments), Places(root)
    if request.wants_help:
        print(HELP, flush=True)
        if request.kind == "run" and is_ready(places, "run"):
            return hand_over(places.python, ["-m", "generator.cli", "--help"])
        return 0
    make_ready(machine, request.kind, install=request.install, say=say)
    prepare(places, request.kind, wheels=request.wheels, say=say)
    if request.kind == "run":
        return hand_over(places.python, ["-m", "generator.cli", *request.rest])
    if request.install or machine.ci:
        fetch_tools(root, machine, say)
    return run_tests(root, places.python, request.rest[1:], quick=request.quick, say=say)


def start(arguments: Sequence[str], *, root: Path, machine: Machine, hand_over: HandOver) -> int:
    """Make this machine ready, then hand over to the program, or run the tests.

    arguments: the command line after `python3 -m generator`. root: the project's folder. hand_over: becomes
    the given Python with these arguments; it returns only in tests.
    Returns the exit code: 0 done, 1 problems, 2 not started.
    """
    try:
        return _start(arguments, root, machine, hand_over)
    except NotStartedError as error:
        say(str(error))
    except OSError as error:
        say(f"Could not prepare: {error}\nRemedy: see that this folder can be written and the disk has room.")
    return 2


def _become(python: Path, arguments: list[str]) -> int:
    """Replace this process by the environment's Python: signals and exit codes are then the program's own."""
    os.execv(python, [str(python), *arguments])


def start_here(arguments: Sequence[str]) -> int:
    """Start in the folder this file belongs to, on the machine we run on."""
    root = Path(__file__).resolve().parents[2]
    return start(arguments, root=root, machine=Machine.here(), hand_over=_become)
