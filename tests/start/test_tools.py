"""The HTML checker is fetched once, whole or not at all."""

import shutil
from collections.abc import Sequence
from pathlib import Path

import pytest

from generator.start.machine import Machine, NotStartedError
from generator.start.tools import fetch_tools, html_checker
from tests.start.project import ROOT


class Npm:
    """Stands for npm: brings the checker, or not, and ends with the given code."""

    def __init__(self, root: Path, code: int = 0, *, brings: bool = True) -> None:
        self.root = root
        self.code = code
        self.brings = brings
        self.calls = 0

    def __call__(self, _command: Sequence[str | Path]) -> int:
        """Take one command."""
        self.calls += 1
        if self.brings:
            html_checker(self.root).parent.mkdir(parents=True, exist_ok=True)
            html_checker(self.root).touch()
        return self.code

    def machine(self) -> Machine:
        """Return a machine with this npm."""
        return Machine("linux", root=False, ci=False, debian=True, run=self)


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """Make a project folder with the project's own npm lock."""
    shutil.copytree(ROOT / ".locks" / "npm", tmp_path / ".locks" / "npm")
    return tmp_path


def test_checker_is_fetched_once(root: Path) -> None:
    """A second start finds the checker and asks npm for nothing."""
    npm = Npm(root)
    fetch_tools(root, npm.machine(), print)
    fetch_tools(root, npm.machine(), print)
    assert npm.calls == 1


def test_changed_pin_is_fetched_again(root: Path) -> None:
    """After a change of the pinned version npm is asked again."""
    npm = Npm(root)
    fetch_tools(root, npm.machine(), print)
    lock = root / ".locks" / "npm" / "package-lock.json"
    lock.write_text(lock.read_text(encoding="utf-8").replace("26.9.27", "26.9.28"), encoding="utf-8")
    fetch_tools(root, npm.machine(), print)
    assert npm.calls == 2


@pytest.mark.parametrize(("code", "brings"), [(1, True), (0, False)])
def test_failed_fetch_is_said_and_tried_again(root: Path, code: int, brings: bool) -> None:
    """When npm fails, or brings no checker, the remedy is named and the next start tries again."""
    npm = Npm(root, code, brings=brings)
    for _ in range(2):
        with pytest.raises(NotStartedError, match="Remedy"):
            fetch_tools(root, npm.machine(), print)
    assert npm.calls == 2
