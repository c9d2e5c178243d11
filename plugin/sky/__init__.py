"""The sky: time tables, bodies, horizontal coordinates, refraction, the galactic plane, moonlight and exact events. Pure: no QGIS."""
