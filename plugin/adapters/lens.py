"""Lens, camera and how it is held, as parameters say."""

from ..names import AIMS, ORIENTATIONS, PANORAMAS, SENSORS
from ..plan.framing import Shooting, frame_of
from . import parameters as take
from .parameters import choice_of, number_of, yes_of
from .translation import tr

MORE_THAN_ZERO = {  # parameter -> an example
    "FOCAL_MM": 24,
    "F_NUMBER": 2.8,
    "SENSOR_W_MM": 36,
    "SENSOR_H_MM": 24,
    "PIXELS_W": 6000,
    "SHUTTER_S": 10,
    "COC_MM": 0.03,
    "STAR_BLUR": 2,
    "FOCUS_M": 20,
}
NARROWEST_DEG = 0.1  # a lens of 14 m on 24 mm: panoramas of narrower frames have more rows than can be held
MOST_MARGIN_PCT, LEAST_OVERLAP_PCT, MOST_OVERLAP_PCT = 40, 10, 80


def lens():
    """Lens and sensor."""
    return [
        take.helped(
            take.choice("PRESET", tr("Sensor: full_frame, crop_1_5, four_thirds or medium"), SENSORS, "full_frame"),
            "; ".join(f"{name}: {tr(sentence)}" for name, sentence in SENSORS.items()),
        ),
        take.number("FOCAL_MM", tr("Focal length [mm]"), 24, low=0),
        take.choice("ORIENTATION", tr("Held: landscape or portrait"), ORIENTATIONS, "landscape"),
        take.advanced(take.number("SENSOR_W_MM", tr("Long side of the sensor [mm]; blank: that of PRESET"), low=0)),
        take.advanced(take.number("SENSOR_H_MM", tr("Short side of the sensor [mm]; blank: that of PRESET"), low=0)),
        take.advanced(take.number("PIXELS_W", tr("Pixels along the long side; blank: those of PRESET"), low=0)),
    ]


def sharpness():
    """F-number, shutter and focus."""
    return [
        take.number("F_NUMBER", tr("F-number"), 2.8, low=0),
        take.number("SHUTTER_S", tr("Shutter [s]; blank: the longest by the NPF rule"), low=0),
        take.length("FOCUS_M", tr("Distance focused on; blank: that of the subject"), low=0),
        take.advanced(take.number("COC_MM", tr("Circle of confusion [mm]; blank: 0.030 on 24 x 36 mm, less on smaller sensors"), low=0)),
        take.advanced(take.number("STAR_BLUR", tr("Stars blurred this much are still sharp [px]"), 2, low=0)),
    ]


def aim():
    """Where the camera looks."""
    return [
        take.helped(
            take.choice("AIM", tr("Aimed: between, subject or body"), AIMS, "between"),
            "; ".join(f"{name}: {tr(sentence)}" for name, sentence in AIMS.items()),
        ),
        take.yes("LEVEL", tr("Camera kept level: turned to the aim, but not tilted up"), False),
    ]


def room():
    """How much must fit, and what a panorama is to hold."""
    return [
        take.number("MARGIN", tr("Part of the frame to keep free on each side [%]"), 5, low=0, high=MOST_MARGIN_PCT),
        take.helped(
            take.choice("PANORAMA", tr("A panorama is to hold: pair or arch"), PANORAMAS, "pair"),
            "; ".join(f"{name}: {tr(sentence)}" for name, sentence in PANORAMAS.items()),
        ),
        take.number("OVERLAP", tr("Overlap of a panorama's frames [%]"), 30, low=LEAST_OVERLAP_PCT, high=MOST_OVERLAP_PCT),
    ]


def frame_from(algorithm, parameters, context):
    """The frame of the lens on the sensor.

    Raises
    ------
    ValueError
        With a sentence, where no frame can be of such numbers.
    """
    numbers = [number_of(algorithm, parameters, name) for name in ("FOCAL_MM", "SENSOR_W_MM", "SENSOR_H_MM", "PIXELS_W")]
    portrait = choice_of(algorithm, parameters, "ORIENTATION", context) == "portrait"
    return frame_of(choice_of(algorithm, parameters, "PRESET", context), *numbers, portrait)


def shooting_of(algorithm, parameters, context):
    """Lens, aim, room, shutter and focus together: `plan.framing.Shooting`."""
    f_number, shutter_s, coc_mm, blur_px, focus_m, margin_pct, overlap_pct = (
        number_of(algorithm, parameters, name) for name in ("F_NUMBER", "SHUTTER_S", "COC_MM", "STAR_BLUR", "FOCUS_M", "MARGIN", "OVERLAP")
    )
    aimed, level = choice_of(algorithm, parameters, "AIM", context), yes_of(algorithm, parameters, "LEVEL", context)
    panorama = choice_of(algorithm, parameters, "PANORAMA", context)
    optics = (frame_from(algorithm, parameters, context), f_number, shutter_s, coc_mm, blur_px, focus_m)
    return Shooting(*optics, aimed, level, margin_pct / 100.0, panorama, overlap_pct / 100.0)


def refusals(algorithm, parameters, context):
    """Lenses and sensors that there are not, and a focus that no lens has; a generator of sentences."""
    asked = [name for name in MORE_THAN_ZERO if algorithm.parameterDefinition(name)]
    given = {name: number_of(algorithm, parameters, name) for name in asked}
    for name, value in given.items():
        if value is not None and not value > 0.0:
            yield tr("{name} is {value:g}. Give a number greater than 0, such as {example:g}.").format(
                name=name, value=value, example=MORE_THAN_ZERO[name]
            )
            return
    frame = frame_from(algorithm, {**parameters, "ORIENTATION": "landscape"}, context)
    if frame.height_mm > frame.width_mm:
        yield tr(
            "SENSOR_H_MM ({height:g}) is more than SENSOR_W_MM ({width:g}), which is the long side. Exchange them; "
            "ORIENTATION=portrait holds the camera upright."
        ).format(height=frame.height_mm, width=frame.width_mm)
    narrow_deg = min(frame.fov_w_deg, frame.fov_h_deg)
    if narrow_deg < NARROWEST_DEG:
        yield tr("FOCAL_MM is {focal:g}: the frame would be {narrow:.2g}° wide or high, under {least:g}°. Give a shorter one.").format(
            focal=given["FOCAL_MM"], narrow=narrow_deg, least=NARROWEST_DEG
        )
    if given.get("FOCUS_M") is not None and 1000.0 * given["FOCUS_M"] <= given["FOCAL_MM"]:
        yield tr("FOCUS_M is {focus:g} m, within the focal length of {focal:g} mm. Give a distance in metres, such as 20.").format(
            focus=given["FOCUS_M"], focal=given["FOCAL_MM"]
        )
