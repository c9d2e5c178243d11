"""The record of a run in its output folder: what was asked, of which files, by which version; only the same run goes on there."""

import hashlib
import json
import os
from dataclasses import dataclass
from datetime import datetime, timezone
from pathlib import Path

import numpy as np

NAME = "run.json"
WHOLE_BYTES = 1 << 30  # of larger files pieces are read, besides their size and the time of their last change
PIECES, PIECE_BYTES = 256, 1 << 20


@dataclass(frozen=True)
class Record:
    """What a run is.

    Attributes
    ----------
    folder : Path
    identity : dict
        `version`, `command`, `asked` (options and their values) and `inputs` (marks of files by option).
    begun_utc_s : float
        When it was begun first: what is today for it.
    """

    folder: Path
    identity: dict
    begun_utc_s: float

    def write(self, **more):
        """Write it, whole or not at all.

        Raises
        ------
        ValueError
            With a sentence, where the folder cannot be written to.
        """
        begun = datetime.fromtimestamp(self.begun_utc_s, tz=timezone.utc).isoformat(timespec="seconds")
        told = {"what": "A run of skyalidade.batch: give the same command again to go on with it.", "begun": begun}
        told.update(self.identity, begun_utc_s=self.begun_utc_s, **more)
        part = self.folder / f".part-{NAME}-{os.getpid()}"
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
            part.write_text(json.dumps(told, indent=2, ensure_ascii=False), encoding="utf-8")
            os.replace(part, self.folder / NAME)
        except OSError as failed:
            raise ValueError(f"OUTPUT: {self.folder} cannot be written to: {failed.strerror}. Give another folder.") from failed


def record_of(folder, identity, now_utc_s):
    """The record of a new run in a folder, or of the one that is there, if it is the same.

    Raises
    ------
    ValueError
        With a sentence, where the folder holds anything else.
    """
    path = folder / NAME
    if folder.exists() and not folder.is_dir():
        raise ValueError(f"OUTPUT: {folder} is a file. Give a folder.")
    if path.exists():
        try:
            there = json.loads(path.read_text(encoding="utf-8"))
            differences = list(_differences(there, identity))
        except (ValueError, AttributeError, KeyError, TypeError):
            there, differences = {}, [f"{NAME} there cannot be read"]
        if differences:
            raise ValueError(f"OUTPUT: {folder} holds another run: {'; '.join(differences)}. Give another folder, or remove this one.")
        return Record(folder, identity, there["begun_utc_s"])
    if folder.exists() and any(folder.iterdir()):
        raise ValueError(f"OUTPUT: {folder} holds files, but no run that could go on. Give an empty folder, or a name that is not taken.")
    return Record(folder, identity, now_utc_s)


def _differences(there, identity):
    for name in ("command", "version"):
        if there[name] != identity[name]:
            yield f"its {name} is {there[name]}, this one's {identity[name]}"
    if there["command"] != identity["command"]:
        return
    for kind, told in (("asked", "{name} was {old}, now {new}"), ("inputs", "the files of {name} are others, or were changed since")):
        for name in sorted({*there[kind], *identity[kind]}):
            old, new = there[kind].get(name), identity[kind].get(name)
            if old != new:
                yield told.format(name=name, old=_shown(old), new=_shown(new))


def _shown(value):
    return "blank" if value is None else value


def mark_of(files, layer=""):
    """A mark of the content of files, and of which layer of them is meant: the same wherever they lie."""
    digest = hashlib.sha256(layer.encode())
    for file in files:
        about = file.stat()
        digest.update(str(about.st_size).encode())
        pieces = range(0, about.st_size, PIECE_BYTES)
        if about.st_size > WHOLE_BYTES:
            digest.update(str(about.st_mtime_ns).encode())
            pieces = np.linspace(0, about.st_size - PIECE_BYTES, PIECES).astype(int).tolist()
        with open(file, "rb") as opened:
            for begin in pieces:
                opened.seek(begin)
                digest.update(opened.read(PIECE_BYTES))
    return digest.hexdigest()
