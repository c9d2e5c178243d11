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
MOST_MARGIN_PCT, LEAST_OVERLAP_PCT, MOST_OVERLAP_PCT = 40, 10, 80


def lens():
    """Lens and sensor."""
    return [
        take.helped(
            take.choice("PRESET", tr("Sensor: full_frame, crop_1_5, four_thirds or medium"), SENSORS, "full_frame"),
            "; ".join(f"{name}: {tr(sentence)}" for name, sentence in SENSORS.items()),
        ),
        take.number("FOCAL_MM", tr("Focal length [mm]"), 24, low=0),
        take.number("F_NUMBER", tr("F-number"), 2.8, low=0),
        take.choice("ORIENTATION", tr("Held: landscape or portrait"), ORIENTATIONS, "landscape"),
        take.advanced(take.number("SENSOR_W_MM", tr("Long side of the sensor [mm]; blank: that of PRESET"), low=0)),
        take.advanced(take.number("SENSOR_H_MM", tr("Short side of the sensor [mm]; blank: that of PRESET"), low=0)),
        take.advanced(take.number("PIXELS_W", tr("Pixels along the long side; blank: those of PRESET"), low=0)),
    ]


def sharpness():
    """Shutter and focus."""
    return [
        take.number("SHUTTER_S", tr("Shutter [s]; blank: the longest by the NPF rule"), low=0),
        take.number("FOCUS_M", tr("Distance focused on [m]; blank: that of the subject"), low=0),
        take.advanced(take.number("COC_MM", tr("Circle of confusion [mm]; blank: 0.030 on 24 x 36 mm, less on smaller sensors"), low=0)),
        take.advanced(take.number("STAR_BLUR", tr("Stars blurred this much are still sharp [px]"), 2, low=0)),
    ]


def aim():
    """Where the camera looks, and what a panorama is to hold."""
    return [
        take.helped(
            take.choice("AIM", tr("Aimed: between, subject or body"), AIMS, "between"),
            "; ".join(f"{name}: {tr(sentence)}" for name, sentence in AIMS.items()),
        ),
        take.yes("LEVEL", tr("Camera kept level: turned to the aim, but not tilted up"), False),
        take.number("MARGIN", tr("Part of the frame to keep free on each side [%]"), 5, low=0, high=MOST_MARGIN_PCT),
        take.helped(
            take.choice("PANORAMA", tr("A panorama is to hold: pair or arch"), PANORAMAS, "pair"),
            "; ".join(f"{name}: {tr(sentence)}" for name, sentence in PANORAMAS.items()),
        ),
        take.number("OVERLAP", tr("Overlap of a panorama's frames [%]"), 30, low=LEAST_OVERLAP_PCT, high=MOST_OVERLAP_PCT),
    ]


def shooting_of(algorithm, parameters, context):
    """All of it: `plan.framing.Shooting`.

    Raises
    ------
    ValueError
        With a sentence, where no frame can be of such numbers.
    """
    numbers = {name: number_of(algorithm, parameters, name) for name in (*MORE_THAN_ZERO, "MARGIN", "OVERLAP")}
    frame = frame_of(
        choice_of(algorithm, parameters, "PRESET", context),
        numbers["FOCAL_MM"],
        numbers["SENSOR_W_MM"],
        numbers["SENSOR_H_MM"],
        numbers["PIXELS_W"],
        choice_of(algorithm, parameters, "ORIENTATION", context) == "portrait",
    )
    return Shooting(
        frame,
        numbers["F_NUMBER"],
        numbers["SHUTTER_S"],
        numbers["COC_MM"],
        numbers["STAR_BLUR"],
        numbers["FOCUS_M"],
        choice_of(algorithm, parameters, "AIM", context),
        yes_of(algorithm, parameters, "LEVEL", context),
        numbers["MARGIN"] / 100.0,
        choice_of(algorithm, parameters, "PANORAMA", context),
        numbers["OVERLAP"] / 100.0,
    )


def refusals(algorithm, parameters, context):
    """Lenses and sensors that there are not, and a focus that no lens has; a generator of sentences."""
    given = {name: number_of(algorithm, parameters, name) for name in MORE_THAN_ZERO}
    for name, example in MORE_THAN_ZERO.items():
        if given[name] is not None and not given[name] > 0.0:
            yield tr("{name} is {value:g}. Give a number greater than 0, such as {example:g}.").format(
                name=name, value=given[name], example=example
            )
            return
    frame = shooting_of(algorithm, {**parameters, "ORIENTATION": "landscape"}, context).frame
    if frame.height_mm > frame.width_mm:
        yield tr(
            "SENSOR_H_MM ({height:g}) is more than SENSOR_W_MM ({width:g}), which is the long side. Exchange them; "
            "ORIENTATION=portrait holds the camera upright."
        ).format(height=frame.height_mm, width=frame.width_mm)
    if given["FOCUS_M"] is not None and 1000.0 * given["FOCUS_M"] <= given["FOCAL_MM"]:
        yield tr("FOCUS_M is {focus:g} m, within the focal length of {focal:g} mm. Give a distance in metres, such as 20.").format(
            focus=given["FOCUS_M"], focal=given["FOCAL_MM"]
        )
