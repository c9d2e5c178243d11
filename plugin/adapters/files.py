"""Files of texts, pictures and layers: there whole, or as they were before."""

import os
import shutil
import tempfile
from contextlib import contextmanager
from pathlib import Path
from zlib import crc32

from qgis.core import QgsProcessingException, QgsVectorFileWriter

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


class Aside:
    """A hidden folder beside the file of a layer, where that is written, with all files of its format, until it is whole.

    Parameters
    ----------
    path : Path
        The file's own name.

    Attributes
    ----------
    path : Path
    part : Path
        Where to write it.

    Raises
    ------
    QgsProcessingException
        Where no folder can be made there.
    """

    def __init__(self, path):
        self.path = path
        try:
            self._folder = Path(tempfile.mkdtemp(prefix=f".{PROVIDER_ID}-", dir=path.parent))
        except OSError as failed:
            raise QgsProcessingException(tr("{path} could not be written: {reason}").format(path=path, reason=failed.strerror)) from failed
        self.part = self._folder / path.name

    def give_names(self):
        """Give all its files their names, the one that the layer is opened by last.

        Raises
        ------
        QgsProcessingException
            With the reason.
        """
        if self.path.suffix.lower() == ".shp":
            QgsVectorFileWriter.deleteShapeFile(str(self.path))  # with the index of an older one, which would hide rows of the new
        try:
            for file in sorted(self._folder.iterdir(), key=lambda file: file == self.part):
                os.replace(file, self.path.parent / file.name)
        except OSError as failed:
            raise QgsProcessingException(
                tr("{path} could not be written: {reason}").format(path=self.path, reason=failed.strerror)
            ) from failed
        self.remove()

    def remove(self):
        """Take the folder away, with what is in it."""
        shutil.rmtree(self._folder, ignore_errors=True)
