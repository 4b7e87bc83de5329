"""What the operating system must bring is found out before anything starts, and one command brings it."""

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

import pytest

from generator.start.command import start
from generator.start.machine import NEEDS, Machine, NotStartedError, make_ready, remedy
from tests.start.project import Project

PANGO = "apt-get install --no-install-recommends libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0"


class Apt:
    """Stands for apt-get: records what it is asked, ends with the given codes, then brings everything."""

    def __init__(self, *codes: int, brings: bool = True) -> None:
        self.codes = list(codes)
        self.brings = brings
        self.asked: list[list[str]] = []

    def __call__(self, command: Sequence[str | Path]) -> int:
        """Take one command."""
        words = [str(word) for word in command]
        self.asked.append(words[words.index("DPkg::Lock::Timeout=120") + 1 :])
        return self.codes.pop(0)

    def has(self, _name: str) -> bool:
        """Tell whether a library is there: after the last command."""
        return self.brings and not self.codes

    def which(self, name: str) -> str | None:
        """Find a program: after the last command."""
        return f"/usr/bin/{name}" if self.has(name) else None


def machine(apt: Apt, *, root: bool = True, ci: bool = False) -> Machine:
    """Return a Debian machine on which everything is missing."""
    return Machine("linux", root, ci, debian=True, has_library=apt.has, find_program=apt.which, run=apt)


def never(_python: Path, _arguments: list[str]) -> int:
    """Fail the test: nothing may be handed over."""
    raise AssertionError("handed over")


NOTHING_RUNS = Apt(1)


def test_missing_library_stops_with_one_command(project: Project, capsys: pytest.CaptureFixture[str]) -> None:
    """A missing system library ends with exit code 2, nothing made, and the one command as the last line."""
    lacking = machine(NOTHING_RUNS, root=False)
    assert start(["build"], root=project.root, machine=lacking, hand_over=never) == 2
    said = capsys.readouterr()
    assert (said.out, said.err.splitlines()[-1]) == ("", f"Remedy: sudo {PANGO}")
    assert not project.venv.exists()


def test_install_without_root_only_tells(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """With --install but without root nothing is installed: the same command is told, with sudo."""
    apt = Apt(0)
    assert (
        start(["build", "--install"], root=tmp_path, machine=machine(apt, root=False), hand_over=never) == 2
    )
    assert (apt.asked, f"Remedy: sudo {PANGO}\n" in capsys.readouterr().err) == ([], True)


@pytest.mark.parametrize(("install", "ci"), [(True, False), (False, True)])
def test_root_installs_what_is_missing(install: bool, ci: bool) -> None:
    """As root on Debian --install, or CI=true, installs exactly what is missing, and says so first."""
    apt, said = Apt(0), list[str]()
    make_ready(machine(apt, ci=ci), "run", install=install, say=said.append)
    assert [PANGO.split()[2:]] == [
        [word for word in words if word not in {"install", "--yes"}] for words in apt.asked
    ]
    assert said == ["Installing system packages: " + " ".join(PANGO.split()[3:])]


def test_root_without_install_changes_nothing() -> None:
    """Without --install even root is only told."""
    apt = Apt(0)
    with pytest.raises(NotStartedError, match=f"Remedy: {PANGO}"):
        make_ready(machine(apt), "run", install=False, say=print)
    assert apt.asked == []


def test_package_lists_are_refreshed_once_when_needed() -> None:
    """On an image without package lists the first try fails; after an update the second is made."""
    apt = Apt(100, 0, 0)
    make_ready(machine(apt), "run", install=True, say=print)
    assert [words[0] for words in apt.asked] == ["install", "update", "install"]


@pytest.mark.parametrize("apt", [Apt(100, 100), Apt(100, 0, 100, brings=False), Apt(0, brings=False)])
def test_failed_installation_is_not_taken_for_done(apt: Apt) -> None:
    """When apt-get fails, or what it brought is not found, nothing starts."""
    with pytest.raises(NotStartedError, match="Nothing was started"):
        make_ready(machine(apt), "run", install=True, say=print)


def test_what_only_tests_need_is_not_needed_to_run() -> None:
    """A machine with Pango alone runs the program."""
    pango_only = replace(machine(NOTHING_RUNS), has_library=lambda _name: True)
    make_ready(pango_only, "run", install=False, say=print)


def test_missing_test_programs_are_told_on_a_users_machine() -> None:
    """Without Chromium, Java or npm `test` starts on a user's machine, and says what is skipped and why."""
    said: list[str] = []
    pango_only = replace(machine(NOTHING_RUNS, root=False), has_library=lambda _name: True)
    make_ready(pango_only, "test", install=False, say=said.append)
    assert "Tests that need the following are skipped: Chromium" in said[0]
    assert said[0].endswith(
        "sudo apt-get install --no-install-recommends chromium gettext default-jre-headless npm"
    )


@pytest.mark.parametrize(("install", "ci"), [(True, False), (False, True)])
def test_missing_test_programs_stop_a_build_server(install: bool, ci: bool) -> None:
    """With CI=true, or when --install was asked for, nothing that a test needs may be missing."""
    pango_only = replace(machine(NOTHING_RUNS, root=False, ci=ci), has_library=lambda _name: True)
    with pytest.raises(NotStartedError, match="Chromium"):
        make_ready(pango_only, "test", install=install, say=print)


def test_macos_is_told_the_brew_command() -> None:
    """On macOS each formula is named once."""
    mac = replace(machine(NOTHING_RUNS), platform="darwin", debian=False)
    assert remedy(mac, mac.missing("run")) == "brew install pango harfbuzz"


def test_unknown_system_is_told_what_to_look_for() -> None:
    """On a Linux whose package names we do not know, the libraries are named in words."""
    other = replace(machine(NOTHING_RUNS), debian=False)
    assert remedy(other, other.missing("run")).startswith("install with this system's package manager: Pango")


def test_one_chromium_under_any_name_is_enough() -> None:
    """Chrome under its own name serves the tests of the pages."""
    chrome = replace(machine(NOTHING_RUNS), find_program={"google-chrome": "/usr/bin/google-chrome"}.get)
    assert [need.debian for need in chrome.missing("test")] == ["gettext", "default-jre-headless", "npm"]


def test_every_need_can_be_looked_for_and_installed() -> None:
    """Each need names a library or a program, and a package for Debian and for Homebrew."""
    assert all(bool(need.library) != bool(need.programs) and need.debian and need.brew for need in NEEDS)


def test_the_real_machine_is_asked() -> None:
    """On the machine the tests run on, Pango is found and an invented library is not."""
    here = Machine.here()
    assert here.missing("run") == ()
    assert not here.has(replace(NEEDS[0], library="no-such-library"))
