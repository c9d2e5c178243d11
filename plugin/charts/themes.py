"""Colours of pictures: on paper by Okabe and Ito's set (2008) that colour-blind people can tell apart, at night red on black."""

from dataclasses import dataclass
from typing import Optional


@dataclass(frozen=True)
class Theme:
    """Colours by what they are for; `ground` from far to near, `hours` of twilight and of darkness, `moonlight` and `usable` over them.

    `usable` is None where it is the colour of the body; `edge` goes around it.
    """

    paper: str
    ink: str
    faint: str
    band: str
    sun: str
    moon: str
    other: str
    ground: tuple
    subject: str
    hours: tuple
    moonlight: str
    edge: str
    usable: Optional[str] = None

    def of(self, body):
        """The colour of a body."""
        return {"sun": self.sun, "moon": self.moon, "core": self.band, "arch": self.band, "galactic": self.band}.get(body, self.other)


PRINT = Theme(
    paper="#FFFFFF",
    ink="#222222",
    faint="#B8B8B8",
    band="#CC79A7",
    sun="#D55E00",
    moon="#009E73",
    other="#0072B2",
    ground=("#DADADA", "#BDBDBD", "#9C9C9C", "#7C7C7C"),
    subject="#222222",
    hours=("#F0F0F0", "#DADADA"),
    moonlight="#009E73",
    edge="#222222",
)
NIGHT = Theme(
    paper="#000000",
    ink="#C80000",
    faint="#500000",
    band="#FF2020",
    sun="#FF0000",
    moon="#FF0000",
    other="#FF0000",
    ground=("#2C0000", "#220000", "#180000", "#0E0000"),
    subject="#8C0000",
    hours=("#1C0000", "#340000"),
    moonlight="#700000",
    edge="#FF2020",
    usable="#A80000",  # a large bright area would spoil the eyes' use to the dark
)
THEMES = {"print": PRINT, "night": NIGHT}
