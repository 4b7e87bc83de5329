"""Tells, just above pytest's last line, how the checks before the tests went; pytest loads it as a plug-in.

On a build server it also fails a run with skipped tests: there, everything that a test needs is installed.
"""

from __future__ import annotations

import os
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import pytest

EARLIER = "PHASEBOOK_EARLIER_CHECKS"


def _skipped(config: pytest.Config) -> int:
    """Count the skipped tests on a build server; 0 elsewhere, and in pytest-xdist's worker processes."""
    reporter = config.pluginmanager.get_plugin("terminalreporter")
    if reporter is None or os.environ.get("CI") != "true":
        return 0
    return len(reporter.stats.get("skipped", ()))


def pytest_sessionfinish(session: pytest.Session) -> None:
    """Fail a run on a build server that would pass with skipped tests."""
    if session.exitstatus == 0 and _skipped(session.config):
        session.exitstatus = 1


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter, config: pytest.Config) -> None:
    """Print the outcome of the earlier checks, and why a run without failures is not accepted."""
    if earlier := os.environ.get(EARLIER):
        terminalreporter.write_line(f"before the tests: {earlier}")
    if skipped := _skipped(config):
        terminalreporter.write_line(f"{skipped} skipped, but CI=true: here nothing may be skipped", red=True)
