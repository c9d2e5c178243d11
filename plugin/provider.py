"""The provider: what QGIS lists under Sky Alidade."""

from pathlib import Path

from qgis.core import QgsApplication, QgsProcessingProvider
from qgis.PyQt.QtGui import QIcon

from .adapters.models import FILES, Model
from .algorithms.alignments import Alignments
from .algorithms.field_plan import FieldPlan
from .algorithms.framing import Framing
from .algorithms.night_windows import NightWindows
from .algorithms.season_chart import SeasonChart
from .algorithms.shadow_track import ShadowTracks
from .algorithms.sightlines import Sightlines
from .algorithms.site_map import SiteMap
from .algorithms.sky_exposure import SkyExposure
from .algorithms.sky_positions import SkyPositions
from .algorithms.skyline_view import SkylineView
from .algorithms.standpoints import Standpoints
from .algorithms.terrain_horizon import TerrainHorizon
from .names import PROVIDER_ID, PROVIDER_NAME

ICON = Path(__file__).parent / "icons" / "provider.svg"

ALGORITHMS = (
    Sightlines,
    Alignments,
    NightWindows,
    SkyPositions,
    SkyExposure,
    Standpoints,
    ShadowTracks,
    TerrainHorizon,
    Framing,
    SkylineView,
    SeasonChart,
    FieldPlan,
    SiteMap,
)


class SkyAlidadeProvider(QgsProcessingProvider):
    """All algorithms and models of Sky Alidade; the models come with the first `refreshAlgorithms`."""

    def id(self):
        return PROVIDER_ID

    def name(self):
        return PROVIDER_NAME

    def longName(self):
        return PROVIDER_NAME

    def icon(self):
        return QIcon(self.svgIconPath())

    def svgIconPath(self):
        return str(ICON)

    def loadAlgorithms(self):
        for algorithm in ALGORITHMS:
            self.addAlgorithm(algorithm())
        if QgsApplication.processingRegistry().providerById(PROVIDER_ID) is not None:  # else the models' steps are not to be found yet
            for file in FILES:
                self.addAlgorithm(Model(file))

    def supportsNonFileBasedOutput(self):
        return True

    def supportedOutputRasterLayerExtensions(self):
        return ["tif", "tiff"]  # whatever a person's settings name for rasters: others are not written
