"""Between QGIS and the pure folders: layers to arrays and back, CRSs, times, sinks, version differences. No formula lives here."""
