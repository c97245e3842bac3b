"""Where the program starts: streams made ready, then the command."""

from __future__ import annotations

import gc
import io
import sys

from estimator.cli.terminal import STOPPED, tell


def main() -> None:
    """Run the command that was typed, and end with its exit code.

    A command lives for a moment, so no time is spent on looking for dead rings of objects.
    """
    gc.disable()
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")
    try:
        from estimator.cli.app import app

        app(prog_name="estimator")
    except KeyboardInterrupt:
        tell(["Stopped."])
        sys.exit(STOPPED)
