"""How far in time the ephemeris reaches."""

from ..sky.ephemeris import default_ephemeris


def ephemeris_span_utc_s():
    """First and last moment at which places can be computed. [s of UTC].

    Raises
    ------
    FileNotFoundError
        With the command that makes the ephemeris.
    """
    ephemeris = default_ephemeris()
    return ephemeris.first_utc_s, ephemeris.last_utc_s
