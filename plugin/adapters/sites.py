"""Sites as a layer and the parameters about it say, and their lenses above an elevation model."""

from .parameters import fields_of, text_of
from .points import measures_of, read_points

MEASURES = {"CAMERA_HEIGHT": 0.0}  # name of the parameter -> least value


def read_sites(algorithm, parameters, context, feedback):
    """The layer SITES."""
    source = algorithm.parameterAsSource(parameters, "SITES", context)
    sites = read_points(
        source,
        context,
        algorithm.createExpressionContext(parameters, context, source),
        feedback,
        "site",
        text_of(parameters, "SITE_NAME"),
        measures=measures_of(algorithm, parameters, MEASURES),
        keep=fields_of(parameters, "KEEP_FIELDS"),
    )
    sites.log("SITES", feedback)
    return sites


def lenses_over(ground, sites, feedback, go_on):
    """Read an elevation model, if one is given, around sites as far as their skylines.

    Returns
    -------
    ndarray (N,)
        Heights of the lenses by it, nan where it tells nothing; of no use when `ground.stopped`. [m]
    """
    if ground.given:
        ground.extent.want_around(sites.lon_deg, sites.lat_deg, ground.radius_m)
        ground.read(go_on)
    return ground.under("SITES", sites.lon_deg, sites.lat_deg, feedback) + sites.measures["CAMERA_HEIGHT"]
