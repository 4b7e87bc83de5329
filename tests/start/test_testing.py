"""`test` is content only when lint, types and at least one test are; pytest has the last word."""

import os
import re
import subprocess
import sys
from collections.abc import Mapping, Sequence

import pytest

from tests.start.project import ROOT, Project

RUN = """
import sys
from pathlib import Path
from generator.start.testing import run_tests
quick = "--quick" in sys.argv
arguments = [word for word in sys.argv[1:] if word != "--quick"]
sys.exit(run_tests(Path.cwd(), Path(sys.executable), arguments, quick=quick, say=lambda text: None))
"""
SETTINGS = """
[tool.ruff]
include = ["tests/*.py"]
[tool.mypy]
files = ["tests"]
[tool.pytest.ini_options]
markers = ["slow: takes long"]
"""
GOOD = "def test_good() -> None:\n    assert True\n"
SLOW = "import pytest\n\n\n@pytest.mark.slow\ndef test_slow() -> None:\n    raise AssertionError\n"
SKIPPED = 'import pytest\n\n\ndef test_without_browser() -> None:\n    pytest.skip("no Chromium")\n'
LAST_LINE = re.compile(r"=* ?\d+ \w+.* in [\d.]+s.* ?=*")


def run(project: Project, *arguments: str, **files: str) -> tuple[int, str]:
    """Write test files, run all checks for real, and return the exit code and what was printed."""
    write(project, files)
    return ended([sys.executable, "-c", RUN, "-n", "0", *arguments], project)


def run_pytest(project: Project, *arguments: str, ci: bool, **files: str) -> tuple[int, str]:
    """Write test files and run only pytest on them, as the last of the checks is run."""
    write(project, files)
    return ended(
        [sys.executable, "-m", "pytest", "-p", "generator.start.summary", *arguments], project, ci=ci
    )


def write(project: Project, files: Mapping[str, str]) -> None:
    """Write settings and test files."""
    (project.root / "pyproject.toml").write_text(SETTINGS, encoding="utf-8")
    (project.root / "tests").mkdir()
    for name, text in files.items():
        (project.root / "tests" / f"{name}.py").write_text(text, encoding="utf-8")


def ended(command: Sequence[str], project: Project, *, ci: bool = False) -> tuple[int, str]:
    """Run a command in the project and return its exit code and what it printed."""
    env = {**os.environ, "CI": "true" if ci else "false"}
    done = subprocess.run(command, cwd=project.root, env=env, capture_output=True, text=True, check=False)
    return done.returncode, done.stdout


def last_line(printed: str) -> str:
    """Return the last line that is not empty."""
    return printed.strip().splitlines()[-1]


@pytest.mark.slow
def test_all_content_is_success(project: Project) -> None:
    """With clean lint, clean types and passing tests the exit code is 0, and pytest's summary comes last."""
    code, printed = run(project, test_one=GOOD)
    assert (code, "before the tests: ruff passed, mypy passed" in printed) == (0, True)
    assert LAST_LINE.fullmatch(last_line(printed))
    assert "1 passed" in last_line(printed)


@pytest.mark.slow
@pytest.mark.parametrize(
    ("bad", "outcome"),
    [
        ("import os\n", "ruff failed, mypy passed"),
        ("x: int = 'one'\n", "ruff passed, mypy failed"),
    ],
)
def test_failed_lint_or_types_fail_the_run_and_hide_no_test(project: Project, bad: str, outcome: str) -> None:
    """A finding of ruff or mypy fails the run; the tests run all the same, and their summary says it."""
    code, printed = run(project, test_one=GOOD, test_two=bad)
    assert (code, f"before the tests: {outcome}" in printed) == (1, True)
    assert "1 passed" in last_line(printed)


@pytest.mark.slow
def test_no_test_at_all_is_a_failure(project: Project) -> None:
    """A run that finds no test is no success (pytest's exit code 5)."""
    code, printed = run(project, helper="NUMBER = 1\n")
    assert "ruff passed, mypy passed" in printed
    assert (code, "no tests ran" in last_line(printed)) == (1, True)


@pytest.mark.slow
def test_quick_leaves_out_the_slow_tests(project: Project) -> None:
    """--quick does not run what is marked slow."""
    code, printed = run(project, "--quick", test_one=GOOD, test_two=SLOW)
    assert (code, "1 passed, 1 deselected" in last_line(printed)) == (0, True)


@pytest.mark.parametrize(("ci", "expected"), [(False, 0), (True, 1)])
def test_skipped_test_fails_only_a_build_server(project: Project, ci: bool, expected: int) -> None:
    """What a user's machine may skip, with the reason shown, fails the run when CI=true."""
    code, printed = run_pytest(project, "-rs", ci=ci, test_one=GOOD, test_two=SKIPPED)
    assert (code, "no Chromium" in printed, "nothing may be skipped" in printed) == (expected, True, ci)


@pytest.mark.slow
def test_skipped_test_is_counted_across_processes(project: Project) -> None:
    """With the tests spread over processes (pytest-xdist) a skipped one is found all the same."""
    assert run_pytest(project, "-n", "2", ci=True, test_one=GOOD, test_two=SKIPPED)[0] == 1


@pytest.mark.slow
def test_misspelt_option_is_not_a_failed_test(project: Project) -> None:
    """An option that pytest does not know ends with exit code 2: not started."""
    assert run(project, "--no-such-option", test_one=GOOD)[0] == 2


def test_build_server_runs_what_readme_says() -> None:
    """`.ci/run` is the one test command, and nothing a reader of README would not run."""
    script = (ROOT / ".ci" / "run").read_text(encoding="utf-8")
    lines = [line for line in script.splitlines() if line and not line.startswith("#")]
    assert lines == [
        "set -euo pipefail",
        'cd "$(dirname "$0")/.."',
        "exec python3 -m generator test --install",
    ]
