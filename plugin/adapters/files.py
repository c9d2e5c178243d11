"""Files of texts and pictures: there whole, or as they were before."""

import os
from pathlib import Path

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
    path = Path(path)
    part = path.with_name(f".{PROVIDER_ID}-{os.getpid()}.part")  # short, whatever the file's own name
    try:
        part.write_bytes(content)
        os.replace(part, path)
    except OSError as failed:
        raise QgsProcessingException(tr("{path} could not be written: {reason}").format(path=path, reason=failed.strerror)) from failed
    finally:
        if part.exists():
            part.unlink()
