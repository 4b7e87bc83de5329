"""Names every reason not to publish, so that a refusal reaches the command line as a value."""

from __future__ import annotations

from pathlib import Path

from generator.problems import Place, Problem, Rule

OUTPUT_DANGEROUS = Rule(
    "output-is-home-or-root",
    "The build refuses to write to the root of the disk or to a home folder.",
    "The whole output folder is replaced at every build; there, that would delete everything else.",
    "give a folder of its own, for example --output site",
)
OUTPUT_OVER_CONTENT = Rule(
    "output-in-content",
    "The build refuses an output folder that lies inside the content folder or contains it.",
    "Replacing the output would delete the content, or the content would grow by its own output.",
    "give an output folder beside the content folder",
)
OUTPUT_FOREIGN = Rule(
    "output-not-ours",
    "The output folder holds files and none of them says that this program built it.",
    "A folder counts as ours when it has our manifest.json; replacing any other folder would delete it.",
    "give an empty or new folder, or move what is in this one elsewhere",
)
OUTPUT_ADDITIONS = Rule(
    "output-has-other-files",
    "The published folder holds files that no build wrote.",
    "Somebody has put files there; the next build replaces the whole folder and would delete them.",
    "move these files out of the folder (or delete them), then build again",
)
OUTPUT_UNUSABLE = Rule(
    "output-not-replaceable",
    "The output cannot be a folder that is replaced as a whole.",
    "The place is a file, the top of a mounted disk, or lies in a folder that does not exist.",
    "give a folder inside an existing folder of the same disk",
)
BUSY = Rule(
    "build-running",
    "Another build is writing to the same output folder.",
    "Two builds at once would publish a mixture; the second one does not wait.",
    "wait until the other build has ended, then build again",
)
NOT_WRITABLE = Rule(
    "output-not-writable",
    "The system refused to write beside or into the output folder; the old site is unchanged.",
    "Rights, a full disk, or another program that holds a file open.",
    "check the rights of the parent folder and the free space, then build again",
)
NOT_A_FILE = Rule(
    "output-odd-file",
    "The tree to be published holds a link or device instead of a plain file, or an unportable name.",
    "A link may lead out of the site, and such a name cannot be listed in the manifest.",
    "remove it from the theme or the assets and put a plain file with a plain name there",
)
CACHE_OTHER = Rule(
    "cache-other-version",
    "The folder in which finished work is kept was laid out by another version of the program.",
    "Its files would be read as something that they are not.",
    "delete the folder; all that it holds can be made again",
)
CACHE_FOREIGN = Rule(
    "cache-not-ours",
    "The folder in which finished work is kept holds files, and nothing says that this program made it.",
    "Somebody put files there; the program removes from its own folder what it no longer needs.",
    "move what is in it elsewhere, or delete it",
)

RULES = (
    OUTPUT_DANGEROUS,
    OUTPUT_OVER_CONTENT,
    OUTPUT_FOREIGN,
    OUTPUT_ADDITIONS,
    OUTPUT_UNUSABLE,
    BUSY,
    NOT_WRITABLE,
    NOT_A_FILE,
    CACHE_OTHER,
    CACHE_FOREIGN,
)


class NotPublishedError(Exception):
    """Nothing was published and the old site is untouched; `problem` says why and what to do."""

    def __init__(self, problem: Problem) -> None:
        super().__init__(problem.message)
        self.problem = problem


class Refused(NotPublishedError):  # noqa: N818 - the name is part of the interface; it reads as a sentence
    """The output folder may not or cannot be written."""


class Busy(NotPublishedError):  # noqa: N818 - the name is part of the interface; it reads as a sentence
    """Another build holds the output folder."""


def from_system(error: OSError, place: Path) -> Refused:
    """Return the refusal for an error of the operating system, in its own words and without a traceback."""
    reason = error.strerror or str(error)
    return Refused(NOT_WRITABLE.at(Place(str(place)), f"the system says: {reason}"))
