"""Files of texts and pictures: there whole, or as they were before."""

import os
from contextlib import contextmanager
from pathlib import Path
from zlib import crc32

from qgis.core import QgsProcessingException

from ..names import PROVIDER_ID
from .translation import tr


def write_whole(path, content):
    """Write bytes under another name beside the file and then rename: a run that fails leaves what was there.

    Raises
    ------
    QgsProcessingException
        With the reason.
    """
    with made_whole(path) as part:
        part.write_bytes(content)


@contextmanager
def made_whole(path):
    """The name under which to make a file; it gets its own when all went well, and where it did not what was there stays.

    Raises
    ------
    QgsProcessingException
        With the reason, where it cannot be written.
    """
    path = Path(path)
    part = path.with_name(f".{PROVIDER_ID}-{os.getpid()}-{crc32(os.fsencode(path.name)):08x}.part")  # short, whatever the file's own name
    try:
        yield part
        os.replace(part, path)
    except OSError as failed:
        raise QgsProcessingException(tr("{path} could not be written: {reason}").format(path=path, reason=failed.strerror)) from failed
    finally:
        if part.exists():
            part.unlink()


def make_folder(folder):
    """Make a folder, where it is not there.

    Raises
    ------
    QgsProcessingException
        With the reason.
    """
    try:
        Path(folder).mkdir(parents=True, exist_ok=True)
    except OSError as failed:
        raise QgsProcessingException(
            tr("The folder {folder} cannot be made: {reason}").format(folder=folder, reason=failed.strerror)
        ) from failed
