"""Writing a file so that nobody ever meets half of it, and saying plainly when it fails."""

from __future__ import annotations

import errno
import os
import tempfile
from pathlib import Path

from estimator.problems import InputError, Problem

_ADVICE = {
    errno.ENOSPC: ("the disk is full", "Free some space, or write to another disk with -o."),
    errno.EDQUOT: ("your share of the disk is full", "Free some space, or write elsewhere."),
    errno.EROFS: ("the disk is read-only", "Write to another place with -o."),
    errno.EACCES: (
        "writing is not allowed there, or the file is open in another program",
        "Close the file in other programs, or write to another folder with -o.",
    ),
    errno.EPERM: ("writing is not allowed there", "Write to another folder with -o."),
    errno.ENOENT: ("the folder does not exist", "Make the folder first, or choose another."),
    errno.ENOTDIR: ("a part of the path is a file", "Choose another path."),
    errno.EISDIR: ("this is a folder, not a file", "Add a file name."),
    errno.ENAMETOOLONG: ("the name is too long", "Choose a shorter name."),
    errno.ETXTBSY: ("another program is using the file", "Close it there and run again."),
}


def cannot_write(path: Path, error: OSError) -> InputError:
    """Turn a refused write into one line a person can act on."""
    said, advice = _ADVICE.get(
        error.errno or 0, ("the file could not be written", "Write to another place with -o.")
    )
    return InputError([Problem(str(path), said, advice)])


def replace_file(path: Path, data: bytes) -> None:
    """Put `data` at `path` in one step: killed at any moment, the old file is whole.

    The bytes go to a new file in the same folder, reach the disk, and only then take the name.

    Raises:
        InputError: the disk is full, the folder read-only or missing, the file held elsewhere.
    """
    temporary = ""
    try:
        if path.is_dir():
            raise IsADirectoryError(errno.EISDIR, "")
        handle, temporary = tempfile.mkstemp(
            prefix=f".{path.name[:40]}.", suffix=".part", dir=path.parent
        )
        with os.fdopen(handle, "wb") as stream:
            stream.write(data)
            stream.flush()
            os.fsync(stream.fileno())
        _keep_mode(path, temporary)
        Path(temporary).replace(path)
    except OSError as error:
        raise cannot_write(path, error) from None
    finally:
        if temporary:
            Path(temporary).unlink(missing_ok=True)


def _keep_mode(path: Path, temporary: str) -> None:
    """Give the new file the old one's permissions, or the usual ones for a new file."""
    if path.exists():
        mode = path.stat().st_mode & 0o7777
    else:
        mask = os.umask(0)
        os.umask(mask)
        mode = 0o666 & ~mask
    Path(temporary).chmod(mode)
