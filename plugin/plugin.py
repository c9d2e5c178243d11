"""What QGIS calls when it loads the plugin and lets it go."""

from qgis.core import QgsApplication

from .provider import SkyAlidadeProvider


class SkyAlidade:
    """The plugin is its Processing provider: no menu and no tool bar, so `iface` is not needed."""

    def __init__(self, iface):
        self.provider = None

    def initProcessing(self):
        """Add the provider; the only call that qgis_process makes."""
        self.provider = SkyAlidadeProvider()
        QgsApplication.processingRegistry().addProvider(self.provider)

    def initGui(self):
        """Load in the desktop."""
        self.initProcessing()

    def unload(self):
        """Take the provider out again; the registry deletes it."""
        if self.provider is not None:
            QgsApplication.processingRegistry().removeProvider(self.provider)
            self.provider = None
