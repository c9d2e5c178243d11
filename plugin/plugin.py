"""What QGIS calls when it loads the plugin and lets it go."""

from qgis.core import QgsApplication

from . import expressions
from .adapters import translation
from .provider import SkyAlidadeProvider


class SkyAlidade:
    """The plugin is its Processing provider and its expression functions: no menu and no tool bar, so `iface` is not needed."""

    def __init__(self, iface):
        self.provider = None
        self.functions = []

    def initProcessing(self):
        """Add the provider and the functions, in the language of QGIS; the only call that qgis_process makes."""
        translation.install()
        self.provider = SkyAlidadeProvider()
        if QgsApplication.processingRegistry().addProvider(self.provider):
            self.provider.refreshAlgorithms()
        else:
            self.provider = None  # another copy of the plugin runs; the registry has deleted this one
        self.functions = expressions.register()

    def initGui(self):
        """Load in the desktop."""
        self.initProcessing()

    def unload(self):
        """Take the provider and the functions out again; the registry deletes the provider."""
        expressions.unregister(self.functions)
        self.functions = []
        if self.provider is not None:
            QgsApplication.processingRegistry().removeProvider(self.provider)
            self.provider = None
        translation.remove()
