"""Icons of our own: one for the provider and each algorithm, in the colours of the house, to be told from any background and each other."""

import re
from pathlib import Path
from xml.etree import ElementTree

import numpy as np
import pytest
from qgis.core import QgsProcessingModelAlgorithm
from qgis.PyQt.QtGui import QColor, QImage, QPainter
from qgis.PyQt.QtSvg import QSvgRenderer

ICONS = Path(__file__).resolve().parents[2] / "plugin" / "icons"
# Okabe and Ito (2008), near-black, white and two greys; the tints of one of them for a scale
COLOURS = {"#222222", "#FFFFFF", "#8A8A8A", "#0072B2", "#CC79A7", "#D55E00", "#009E73", "#F3DEEA", "#DFA9C8", "#8F4A70"}
THEMES = {"light": "#F0F0F0", "dark": "#2D2D2D"}  # what a panel of QGIS is like
SIZE = 16  # px, as in the toolbox


def drawn(file, size, background="#00000000"):
    image = QImage(size, size, QImage.Format.Format_ARGB32)
    image.fill(QColor(background))
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    renderer = QSvgRenderer(str(file))
    assert renderer.isValid(), file
    renderer.render(painter)
    painter.end()
    return pixels(image)


def pixels(image):
    """Red, green, blue and alpha. (rows, columns, 4)"""
    image = image.convertToFormat(QImage.Format.Format_RGBA8888)
    data = image.constBits()
    data.setsize(image.sizeInBytes())
    return np.frombuffer(bytes(data), dtype=np.uint8).reshape(image.height(), image.width(), 4).astype(float)


def luminance(rgb):
    """Relative luminance (WCAG 2.1)."""
    share = rgb[..., :3] / 255.0
    return np.where(share <= 0.04045, share / 12.92, ((share + 0.055) / 1.055) ** 2.4) @ np.array([0.2126, 0.7152, 0.0722])


def contrast(rgb, background):
    """Contrast of each pixel with the background (WCAG 2.1)."""
    both = np.stack(np.broadcast_arrays(luminance(rgb), luminance(np.array(QColor(background).getRgb(), dtype=float))))
    return (both.max(axis=0) + 0.05) / (both.min(axis=0) + 0.05)


@pytest.fixture
def icons(provider):
    """The files that QGIS is told of."""
    algorithms = [one for one in provider.algorithms() if not isinstance(one, QgsProcessingModelAlgorithm)]
    return [Path(one.svgIconPath()).resolve() for one in (provider, *algorithms)]


def test_each_has_its_own(icons, provider):
    assert len(set(icons)) == len(icons)
    assert {file.parent for file in icons} == {ICONS}
    assert not provider.icon().isNull()
    assert [one.name() for one in provider.algorithms() if one.icon().pixmap(SIZE).isNull()] == []


@pytest.mark.parametrize("file", sorted(ICONS.glob("*.svg")), ids=lambda file: file.stem)
def test_an_icon_is_small_plain_and_in_the_colours_of_the_house(file):
    text = file.read_text(encoding="utf-8")
    root = ElementTree.fromstring(text)
    assert root.get("viewBox") == "0 0 24 24"
    assert set(re.findall(r"#[0-9A-Fa-f]{6}", text)) <= COLOURS
    assert {element.tag.rpartition("}")[2] for element in root.iter()} <= {"svg", "title", "path", "circle", "rect"}
    assert len(text) < 3000


@pytest.mark.parametrize("theme", THEMES)
@pytest.mark.parametrize("file", sorted(ICONS.glob("*.svg")), ids=lambda file: file.stem)
def test_an_icon_is_seen_at_16_pixels(file, theme):
    """WCAG 2.1 asks a contrast of 3 of what must be told from its background (1.4.11)."""
    seen = contrast(drawn(file, SIZE, THEMES[theme]), THEMES[theme]) >= 3.0
    assert seen.mean() > 0.1


def test_icons_are_told_from_each_other(icons):
    small = [drawn(file, SIZE, THEMES["light"])[..., :3] for file in icons]
    apart = [np.abs(a - b).max(axis=-1) > 60 for i, a in enumerate(small) for b in small[:i]]
    assert min(different.mean() for different in apart) > 0.15


def test_what_the_plugin_manager_shows_is_the_provider_s():
    """Its list takes no SVG: the picture is the icon, drawn."""
    picture = QImage(str(ICONS / "skyalidade.png"))
    assert (picture.width(), picture.height()) == (96, 96)
    assert np.abs(pixels(picture) - drawn(ICONS / "provider.svg", 96)).mean() < 6.0  # of 255: versions of Qt smooth edges differently
    assert "icon=icons/skyalidade.png" in (ICONS.parents[1] / "metadata.txt").read_text(encoding="utf-8")
