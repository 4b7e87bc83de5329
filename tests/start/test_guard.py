"""Every Python and every system gets words, not a traceback."""

import ast
import subprocess
import sys

import pytest

from generator.__main__ import refusal
from tests.start.project import ROOT


@pytest.mark.parametrize("name", ["__init__.py", "__main__.py"])
def test_old_python_can_read_the_first_files(name: str) -> None:
    """What `python3 -m generator` reads before the guard speaks is Python 3.6 without future imports."""
    tree = ast.parse((ROOT / "generator" / name).read_text(encoding="utf-8"), feature_version=(3, 6))
    assert not any(
        isinstance(node, ast.ImportFrom) and node.module == "__future__" for node in ast.walk(tree)
    )
    evaluated = [
        annotation
        for node in ast.walk(tree)
        if isinstance(node, ast.FunctionDef)
        for annotation in [node.returns, *(argument.annotation for argument in node.args.args)]
        if isinstance(annotation, ast.Subscript | ast.BinOp)
    ]
    assert evaluated == []  # tuple[int, int] and A | B fail when Python 3.6 to 3.9 evaluate them


def test_old_python_is_told_what_is_needed() -> None:
    """Python 3.10 is refused, with the version that is needed in the remedy."""
    assert "needs Python 3.11 or newer; this is Python 3.10" in refusal((3, 10), "linux")
    assert "python3.11 -m generator" in refusal((3, 10), "linux")


@pytest.mark.parametrize("version", [(3, 11), (3, 14), (4, 0)])
@pytest.mark.parametrize("platform", ["linux", "darwin"])
def test_new_python_is_welcome(version: tuple[int, int], platform: str) -> None:
    """Python 3.11 and every later one starts on Linux and macOS."""
    assert refusal(version, platform) == ""


def test_windows_itself_is_refused() -> None:
    """On Windows itself the message names the Windows Subsystem for Linux, whatever the Python."""
    assert "Windows Subsystem for Linux" in refusal((3, 12), "win32")
    assert "Windows Subsystem for Linux" in refusal((3, 8), "win32")


def test_start_needs_the_standard_library_alone() -> None:
    """Every module of the start can be imported where no third-party package can."""
    modules = sorted(path.stem for path in (ROOT / "generator" / "start").glob("[a-z]*.py"))
    statement = "import " + ", ".join(f"generator.start.{module}" for module in modules)
    bare = [sys.executable, "-S", "-c", statement]
    assert len(modules) > 1
    assert subprocess.run(bare, cwd=ROOT, capture_output=True, text=True, check=False).stderr == ""


def test_start_imports_no_other_room() -> None:
    """The start stands by itself: it imports nothing of the program that it prepares."""
    imported = {
        node.module
        for path in (ROOT / "generator" / "start").glob("*.py")
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.ImportFrom) and node.module
    }
    assert {name for name in imported if name.startswith("generator")} <= {
        f"generator.start.{name}"
        for name in ("command", "environment", "machine", "summary", "testing", "tools")
    }
