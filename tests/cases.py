"""What a test of one mistake needs: the change an editor made, and what must be said about it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from tests.content import FILES, findings_of, with_change


@dataclass(frozen=True)
class Case:
    """One mistake in the small content.

    old, new: what the editor changed in the file `path`. code: what must be found, once.
    mark: text in the changed file at which the finding must point (it stands there exactly once).
    says: words that the message or the remedy must hold.
    also: codes that the same mistake brings about as well. before: changes that set the scene.
    beside: further files that are there.
    """

    rule: str
    path: str
    old: str
    new: str
    code: str
    mark: str
    says: tuple[str, ...] = ()
    also: tuple[str, ...] = ()
    before: tuple[tuple[str, str, str], ...] = ()
    at_path: str = ""
    beside: Mapping[str, str] = field(default_factory=dict)

    @property
    def files(self) -> Mapping[str, str]:
        """The content with the mistake in it."""
        files: Mapping[str, str] = {**FILES, **self.beside}
        for path, old, new in (*self.before, (self.path, self.old, self.new)):
            files = with_change(files, path, old, new)
        return files

    def hold(self) -> None:
        """Assert that the finding has its code, place and words, and that nothing else is found."""
        files = self.files
        found = findings_of(files)
        path = self.at_path or self.path
        wanted = f"{self.code} {path}:{place_of(files[path], self.mark)}"
        listed = [f"{problem.code} {problem.place}" for problem in found]
        assert listed.count(wanted) == 1, f"{wanted} is not in {listed}"
        others = [problem.code for problem in found if f"{problem.code} {problem.place}" != wanted]
        assert sorted(others) == sorted(self.also)
        problem = found[listed.index(wanted)]
        said = f"{problem.message}\n{problem.remedy}"
        for words in self.says:
            assert words in said


def place_of(text: str, mark: str) -> str:
    """Return line and column of `mark`, which stands in the text exactly once, as in ``3:5``."""
    assert text.count(mark) == 1, f"{mark!r} stands {text.count(mark)} times"
    before = text[: text.index(mark)]
    return f"{before.count(chr(10)) + 1}:{len(before) - before.rfind(chr(10))}"
