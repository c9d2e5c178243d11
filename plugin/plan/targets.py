"""What is to stand over the subject: the bodies a person may choose, with what is customary for each."""

from dataclasses import dataclass

from ..sky import bodies
from ..words import Sentence


@dataclass(frozen=True)
class Target:
    """A body to be lined up.

    Attributes
    ----------
    id : str
        As in `names.BODIES`.
    phrase : str
        As it stands in a sentence.
    body : sky body
        What moves; for the arch the galactic pole, whose lower end has the azimuth of the arch's top.
    az_tolerance_deg : float
        Half-width about the bearing when none is given. [deg]
    alt_min_deg : float
        Least altitude when none is given; for the arch, of the core. [deg]
    sun_limit_deg : float or None
        Highest Sun when none is given; None for no limit. [deg]
    """

    id: str
    phrase: str
    body: object
    az_tolerance_deg: float
    alt_min_deg: float = 0.0
    sun_limit_deg: float = -18.0

    @property
    def is_arch(self):
        """Whether this is the top of the arch rather than a body."""
        return self.id == "arch"


def target(body_id, star=None, galactic_lon_deg=None):
    """The target of an id.

    Parameters
    ----------
    body_id : str
        One of `names.BODIES`.
    star : (float, float), optional
        ICRS right ascension and declination, for `star`. [deg]
    galactic_lon_deg : float, optional
        For `galactic`. [deg]

    Returns
    -------
    Target

    Raises
    ------
    ValueError
        Unknown id, or a place in the sky that is wanting or impossible.
    """
    if body_id == "star":
        if star is None:
            raise ValueError(
                Sentence("The body 'star' needs STAR: right ascension and declination in degrees (ICRS), such as 279.235,38.784.")
            )
        return Target("star", Sentence("the star"), bodies.star(*star), az_tolerance_deg=1.0)
    if body_id == "galactic":
        if galactic_lon_deg is None:
            raise ValueError(Sentence("The body 'galactic' needs GALACTIC_LON: a galactic longitude in degrees, 0 at the core."))
        place = bodies.on_galactic_plane(galactic_lon_deg)
        phrase = Sentence("the plane at galactic longitude {lon:g}°", lon=galactic_lon_deg)
        return Target("galactic", phrase, place, az_tolerance_deg=5.0, alt_min_deg=10.0)
    if body_id not in _CUSTOMARY:
        raise ValueError(
            Sentence("There is no body '{body}'. Choose from {known}.", body=body_id, known=", ".join([*_CUSTOMARY, "star", "galactic"]))
        )
    return _CUSTOMARY[body_id]


_CUSTOMARY = {
    "core": Target("core", Sentence("the core"), bodies.CORE, az_tolerance_deg=3.0, alt_min_deg=10.0),
    "arch": Target("arch", Sentence("the arch's top"), bodies.GALACTIC_POLE, az_tolerance_deg=5.0),
    "sun": Target("sun", Sentence("the Sun"), bodies.SUN, az_tolerance_deg=0.5, sun_limit_deg=None),
    "moon": Target("moon", Sentence("the Moon"), bodies.MOON, az_tolerance_deg=0.5, sun_limit_deg=None),
    "pole": Target("pole", Sentence("the celestial pole"), bodies.POLE, az_tolerance_deg=2.0),
}
