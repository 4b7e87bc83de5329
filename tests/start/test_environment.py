"""The environment is complete or made anew; nothing in between is ever used."""

import os
import signal
import subprocess
import time
from pathlib import Path

import pytest

from generator.start.environment import Places, check_pip, is_ready
from generator.start.machine import NotStartedError
from tests.start.project import Project, python_with_pip, write_wheel

# Real environments are made, which takes seconds each.
pytestmark = pytest.mark.slow


def wait_for_reader(pipe: Path) -> None:
    """Return as soon as a program has opened the named pipe for reading; it then waits for ever."""
    for _ in range(6000):
        try:
            os.close(os.open(pipe, os.O_WRONLY | os.O_NONBLOCK))
        except OSError:
            time.sleep(0.01)
        else:
            return
    pytest.fail("nobody opened the wheel")


@pytest.fixture
def python_without_pip(tmp_path: Path) -> Path:
    """Make a Python that could install nothing."""
    subprocess.run([python_with_pip(), "-m", "venv", "--without-pip", tmp_path / "bare"], check=True)
    return tmp_path / "bare" / "bin" / "python"


def test_first_start_prepares_and_hands_over(project: Project) -> None:
    """The first start installs the lock, then becomes the program: arguments, output, exit code."""
    begun = project.start("build", "--wheels", str(project.wheels), "--install", "--format", "json")
    assert (begun.returncode, begun.stdout) == (7, "program build --format json\n")
    assert "Preparing .venv" in begun.stderr


def test_later_start_needs_neither_pip_nor_network(built: Project, python_without_pip: Path) -> None:
    """With a matching stamp the program starts at once, even from a Python without pip or wheels."""
    again = built.start("build", python=python_without_pip)
    assert (again.returncode, again.stdout, again.stderr) == (7, "program build\n", "")


def test_missing_pip_is_said(project: Project, python_without_pip: Path) -> None:
    """Without pip and without an environment nothing starts, and the remedy is named."""
    begun = project.build(python=python_without_pip)
    assert (begun.returncode, begun.stdout) == (2, "")
    assert "has no pip" in begun.stderr
    assert "Remedy: install it" in begun.stderr


@pytest.mark.parametrize(
    "said", ["pip 23.2.1 from a folder (python 3.11)", "pip 22.3 from", "pip 100.0 from"]
)
def test_pip_that_can_install_elsewhere_is_enough(said: str) -> None:
    """`pip --python` exists since pip 22.3 (pip's changelog); such a pip is taken."""
    check_pip(said)


@pytest.mark.parametrize(
    ("said", "part"), [("pip 22.2.2 from", "pip 22.2"), ("pip 9.0 from", "9.0"), ("", "no pip")]
)
def test_older_pip_is_refused(said: str, part: str) -> None:
    """An older pip, or none, is refused by name and with a remedy."""
    with pytest.raises(NotStartedError, match=f"{part}.*\n*.*Remedy") as refused:
        check_pip(said)
    assert "Remedy:" in str(refused.value)


@pytest.mark.parametrize("torn", ["", '{"format": 1, "pyth', "[]", "null", '{"format": 1}'])
def test_torn_stamp_does_not_count(built: Project, torn: str) -> None:
    """A stamp that was cut off, or says something else, is no stamp."""
    assert is_ready(Places(built.root), "run")
    built.stamp.write_text(torn)
    assert not is_ready(Places(built.root), "run")


@pytest.mark.parametrize("torn", [None, '{"format": 1, "pyth'])
def test_missing_or_torn_stamp_makes_it_anew(built: Project, torn: str | None) -> None:
    """Without a whole stamp the environment is made from nothing: what else lay in it is gone."""
    leftover = built.venv / "lib" / "leftover.txt"
    leftover.touch()
    built.stamp.unlink()
    if torn is not None:
        built.stamp.write_text(torn)
    again = built.build()
    assert (again.returncode, leftover.exists()) == (7, False)


def test_killed_making_of_the_environment_is_made_anew(project: Project) -> None:
    """An environment whose making was killed (no pyvenv.cfg, no packages, no mark of ours) does no harm."""
    (project.venv / "bin").mkdir(parents=True)
    (project.venv / "bin" / "python").symlink_to("/nonexistent/python")
    assert project.build().returncode == 7


def test_broken_python_in_the_environment_is_noticed(built: Project) -> None:
    """When the Python that the environment was made with is gone, the stamp alone does not count."""
    (built.venv / "bin" / "python").unlink()
    (built.venv / "bin" / "python").symlink_to("/nonexistent/python")
    assert built.build().returncode == 7


def test_changed_lock_makes_it_anew(built: Project) -> None:
    """After a change of the lock the environment holds exactly the new lock's packages."""
    built.lock("run", write_wheel(built.wheels, "tiny_run", "2.0"))
    built.build()
    installed = {path.name for path in built.venv.glob("lib/python*/site-packages/*.dist-info")}
    assert installed == {"tiny_run-2.0.dist-info"}


def test_wheel_that_is_not_the_pinned_one_is_refused(project: Project) -> None:
    """A wheel with the right name and another content is not installed, and nothing starts."""
    wheel = next(project.wheels.glob("tiny_run*"))
    wheel.write_bytes(wheel.read_bytes() + b"changed")
    begun = project.build()
    assert (begun.returncode, begun.stdout, project.stamp.exists()) == (2, "", False)
    assert "Remedy:" in begun.stderr


def test_lock_without_a_hash_is_refused(project: Project) -> None:
    """A package that was pinned without a hash is not installed."""
    project.lock("run", "tiny_run==1.0\n")
    assert (project.build().returncode, project.stamp.exists()) == (2, False)


def test_two_starts_at_once_make_one_environment(project: Project) -> None:
    """Two starts at the same time both run the program; one prepares, the other waits for it."""
    both = [project.begin("build", "--wheels", str(project.wheels)) for _ in range(2)]
    ended = [process.communicate(timeout=120) for process in both]
    assert [process.returncode for process in both] == [7, 7]
    assert sum(err.count("Preparing") for _, err in ended) == 1


def test_killed_start_is_made_good_once_its_pip_has_ended(project: Project) -> None:
    """While the pip of a killed start still works, the next start waits; then it makes everything anew."""
    wheel = next(project.wheels.glob("tiny_run*"))
    content = wheel.read_bytes()
    wheel.unlink()
    os.mkfifo(wheel)
    killed = project.begin("build", "--wheels", str(project.wheels))
    wait_for_reader(wheel)
    killed.kill()
    second = project.begin("build", "--wheels", str(project.wheels))
    assert second.stderr is not None
    assert "waiting" in second.stderr.readline()
    wheel.unlink()
    wheel.write_bytes(content)
    os.killpg(killed.pid, signal.SIGKILL)
    killed.communicate()
    out, _ = second.communicate(timeout=120)
    assert (second.returncode, out) == (7, "program build\n")


def test_own_environment_of_a_developer_is_left_alone(project: Project) -> None:
    """A .venv that a developer filled by hand is neither used nor removed; the message says what to do."""
    theirs = project.venv / "lib" / "python3.11" / "site-packages" / "phasebook-0.1.0.dist-info"
    theirs.mkdir(parents=True)
    begun = project.build()
    assert (begun.returncode, theirs.exists()) == (2, True)
    assert "rename it and start again" in begun.stderr


def test_start_from_the_environment_itself_can_remake_it(built: Project) -> None:
    """With the environment activated, a start after a change of the lock works: another Python makes it."""
    built.lock("run", write_wheel(built.wheels, "tiny_run", "2.0"))
    begun = built.build(python=built.venv / "bin" / "python")
    assert (begun.returncode, begun.stdout) == (7, "program build\n")


def test_environment_for_tests_also_runs_the_program(built: Project, python_without_pip: Path) -> None:
    """The environment grows for `test`, and then needs no pip for either command."""
    built.start("test", "--wheels", str(built.wheels))
    assert list(built.venv.glob("lib/python*/site-packages/tiny_test.py"))
    assert built.start("build", python=python_without_pip).returncode == 7
    assert "Preparing" not in built.start("test", python=python_without_pip).stderr


def test_program_still_runs_when_the_test_tools_cannot_be_had(
    built: Project, python_without_pip: Path
) -> None:
    """A failed `test` without a network does not take the program away."""
    next(built.wheels.glob("tiny_test*")).unlink()
    assert built.start("test", "--wheels", str(built.wheels)).returncode == 2
    assert built.start("build", python=python_without_pip).returncode == 7


def test_test_tools_added_halfway_are_made_anew(built: Project) -> None:
    """When adding the tools for tests was killed halfway, the next `test` starts from nothing."""
    (built.venv / "phasebook-growing").touch()
    leftover = built.venv / "lib" / "leftover.txt"
    leftover.touch()
    built.start("test", "--wheels", str(built.wheels))
    assert (leftover.exists(), (built.venv / "phasebook-growing").exists()) == (False, False)


def test_missing_lock_is_said(project: Project) -> None:
    """Outside a full copy of the project nothing is prepared, and the installed command is named."""
    (project.root / ".locks" / "run.txt").unlink()
    begun = project.build()
    assert (begun.returncode, project.venv.exists()) == (2, False)
    assert "phasebook build" in begun.stderr
