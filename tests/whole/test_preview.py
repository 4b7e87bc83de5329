"""The preview shows a change after it is saved, shows a mistake in the page, and outlives it."""

from __future__ import annotations

import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from urllib.error import URLError
from urllib.request import urlopen

import pytest

from tests.content import write_content
from tests.whole.command import PROJECT

pytestmark = pytest.mark.slow
PAGE = "en/exercises/heel-raise.html"


@pytest.fixture
def preview(tmp_path: Path) -> Iterator[tuple[Path, str]]:
    """Return the content folder and the address of a running preview."""
    content = write_content(tmp_path / "content")
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    command = [
        sys.executable,
        "-m",
        "generator.cli",
        "preview",
        "--content",
        str(content),
        "--port",
        str(port),
    ]
    running = subprocess.Popen(command, cwd=PROJECT, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    try:
        yield content, f"http://127.0.0.1:{port}/{PAGE}"
    finally:
        running.terminate()
        running.wait(20)


def seen(address: str, words: str, seconds: float = 60) -> bool:
    """Return whether the page shows the words within a generous time, asking again and again."""
    until = time.monotonic() + seconds
    while time.monotonic() < until:
        try:
            with urlopen(address, timeout=30) as answer:
                if words in answer.read().decode("utf-8"):
                    return True
        except (URLError, ConnectionError, TimeoutError):
            pass
        time.sleep(0.3)
    return False


def test_changes_and_mistakes_show_in_the_page(preview: tuple[Path, str]) -> None:
    """A new sentence appears; a mistake appears with its place while the page stays; mended, it goes."""
    content, address = preview
    path = content / "exercises" / "heel-raise.yml"
    text = path.read_text(encoding="utf-8")
    assert seen(address, "<h1")
    path.write_text(text.replace("posture: standing", "posture: stending"), encoding="utf-8")
    assert seen(address, "unknown-choice")
    assert seen(address, "<h1", 5)
    name = next(line for line in text.splitlines() if line.startswith("name: "))
    path.write_text(text.replace(name, "name: Heels up anew"), encoding="utf-8")
    assert seen(address, "Heels up anew")
