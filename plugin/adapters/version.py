"""The plugin's own version, as its metadata tell it."""

from configparser import ConfigParser
from pathlib import Path

METADATA = Path(__file__).parent.parent / "metadata.txt"


def version():
    """Such as `0.1.0`."""
    metadata = ConfigParser(interpolation=None)
    metadata.read(METADATA, encoding="utf-8")
    return metadata.get("general", "version", fallback="")
