"""Starts the program on any machine, so that one command is enough after a fresh checkout.

This file must be readable by a Python far older than the one the program needs: that Python is to say what is
missing, not to stop at a syntax it does not know. Everything newer waits in `generator.start`.
"""

import sys

OLDEST = (3, 11)


def refusal(version: "tuple[int, int]", platform: str) -> str:
    """Say why the program cannot start at all on this Python and this system; empty when it can.

    version: major and minor number of the running Python. platform: as in `sys.platform`.
    """
    if platform == "win32":
        return (
            "This program does not run on Windows itself.\n"
            "Remedy: install the Windows Subsystem for Linux (wsl --install) and start it there."
        )
    if version < OLDEST:
        needed, found = ["{}.{}".format(*number) for number in (OLDEST, version)]
        return (
            f"This program needs Python {needed} or newer; this is Python {found}.\n"
            "Remedy: install a newer Python and name it in the command, for example: "
            f"python{needed} -m generator build --install"
        )
    return ""


def main() -> int:
    """Start, and return the exit code: 0 done, 1 problems, 2 not started."""
    reason = refusal(sys.version_info[:2], sys.platform)
    if reason:
        sys.stderr.write(reason + "\n")
        return 2
    try:
        from generator.start.command import start_here

        return start_here(sys.argv[1:])
    except KeyboardInterrupt:
        sys.stderr.write("\nStopped before anything was started.\n")
        return 2


if __name__ == "__main__":
    sys.exit(main())
