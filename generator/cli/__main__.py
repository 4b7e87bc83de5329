"""Lets ``python -m generator.cli`` run the command line without an installed script."""

from generator.cli import main

if __name__ == "__main__":
    main()
