"""The sky: time tables, bodies, horizontal coordinates, refraction, the galactic plane, moonlight and exact events. Pure: no QGIS."""

from .. import libraries  # noqa: F401  first of all: the modules here import Skyfield
