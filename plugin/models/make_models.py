"""Make the models that ship with the plugin: python3 plugin/models/make_models.py [FOLDER]

Needs a Python that can import QGIS, and the staged plugin (PYTHONPATH=build/stage). Make them with the oldest QGIS served: newer ones read
its models, not the other way round. The same bytes each time.
"""

import os
import sys
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
os.environ["QT_HASH_SEED"] = "0"  # attributes in the same order each time

from qgis.analysis import QgsNativeAlgorithms
from qgis.core import (
    QgsApplication,
    QgsProcessingModelAlgorithm,
    QgsProcessingModelChildAlgorithm,
    QgsProcessingModelChildDependency,
    QgsProcessingModelChildParameterSource,
    QgsProcessingModelOutput,
    QgsProcessingModelParameter,
    QgsProcessingParameterBoolean,
    QgsProcessingParameterDateTime,
    QgsProcessingParameterDefinition,
    QgsProcessingParameterField,
    QgsProcessingParameterPoint,
    QgsProcessingParameterString,
)
from qgis.PyQt.QtCore import QPointF

HERE = Path(__file__).parent
GROUP = "Sky Alidade"
COLUMN, ROW = 300, 60  # between boxes of the model designer

TEXT = 2  # type of a field in native:fieldcalculator

asked = QgsProcessingModelChildParameterSource.fromModelParameter
fixed = QgsProcessingModelChildParameterSource.fromStaticValue
reckoned = QgsProcessingModelChildParameterSource.fromExpression
made_by = QgsProcessingModelChildParameterSource.fromChildOutput


def quoted(value):
    """The expression that makes of the value of another a text literal, as a formula takes it."""
    doubled = f"replace(replace({value}, '\\\\', '\\\\\\\\'), '\\'', '\\'\\'')"
    return f"'\\'' || {doubled} || '\\''"


class Recipe:
    """A model in the making: inputs in a column at the left, then steps, then outputs."""

    def __init__(self, title, summary, help_text):
        self.model = QgsProcessingModelAlgorithm(title, GROUP)
        self.help = {"SHORT_DESCRIPTION": summary, "ALG_DESC": help_text, "ALG_CREATOR": GROUP}
        self.order, self.steps, self.outputs = [], 0, 0

    def ask(self, definition, help_text=None):
        """An input of the model."""
        name = definition.name()
        box = QgsProcessingModelParameter(name)
        box.setPosition(QPointF(0, ROW * len(self.order)))
        box.comment().setDescription(help_text or definition.help())
        self.help[name] = help_text or definition.help()
        self.model.addModelParameter(definition, box)
        self.order.append(name)

    def ask_as(self, algorithm_id, *names, required=()):
        """Inputs as an algorithm asks for them: its words, limits, defaults and help; `required` ones may not stay blank."""
        algorithm = QgsApplication.processingRegistry().algorithmById(algorithm_id)
        for name in names:
            definition = algorithm.parameterDefinition(name).clone()
            if name in required:
                definition.setFlags(definition.flags() & ~QgsProcessingParameterDefinition.Flag.FlagOptional)
            self.ask(definition)

    def step(self, name, algorithm_id, title, comment, sources=(), outputs=(), when=None, configuration=None):
        """A step: `sources` by parameter; `outputs` are (name, parameter of the step, help); `when` is the branch (step, name) it is on."""
        child = QgsProcessingModelChildAlgorithm(algorithm_id)
        child.setChildId(name)
        child.setDescription(title)
        child.setPosition(QPointF(COLUMN * (1 + self.steps % 3), ROW * self.steps))
        child.comment().setDescription(comment)
        child.setConfiguration(configuration or {})
        child.setDependencies([QgsProcessingModelChildDependency(*when)] if when else [])
        for parameter, source in dict(sources).items():
            child.addParameterSources(parameter, [source])
        child.setModelOutputs({label: self._output(name, label, parameter, told) for label, parameter, told in outputs})
        self.model.addChildAlgorithm(child)
        self.steps += 1

    def _output(self, step, label, parameter, told):
        output = QgsProcessingModelOutput(label, label)
        output.setChildId(step)
        output.setChildOutputName(parameter)
        output.setPosition(QPointF(4 * COLUMN, ROW * self.outputs))
        output.comment().setDescription(told)
        self.outputs += 1
        # as the plugin names it, as QGIS 3.22 does, and as newer ones do
        self.help.update(dict.fromkeys((label.upper(), f"{step}:{label}", label.lower()), told))
        return output

    def write(self, file):
        self.model.setParameterOrder(self.order)
        self.model.setHelpContent(self.help)
        self.model.updateDestinationParameters()
        if not self.model.toFile(str(file)):
            sys.exit(f"{file} could not be written.")


def plan_one_subject():
    """Two map clicks in, sightline and alignments out."""
    recipe = Recipe(
        "Plan one subject",
        "Click where the camera stands and where the subject is: the sightline between them, and when the sky stands over it",
        "Two clicks on the map, and no layer to build first. The sightline tells bearing, distance and altitude; the alignments tell every "
        "stretch of time in which the Milky Way, the Moon, the Sun or a star stands over the subject while the sky is dark.\n\n"
        "Without an elevation model camera and subject stand on the same level ground and no hill is known.",
    )
    recipe.ask(
        QgsProcessingParameterPoint("CAMERA", "Where the camera stands"), "Click on the map, or write 'longitude,latitude [EPSG:4326]'."
    )
    recipe.ask(QgsProcessingParameterPoint("SUBJECT", "Where the subject stands"), "The middle of its foot, as far as you know it.")
    recipe.ask(
        QgsProcessingParameterString("CAMERA_CALLED", "Name of the camera's place", "Camera"),
        "As it is to stand in the tables and reports.",
    )
    recipe.ask(
        QgsProcessingParameterString("SUBJECT_CALLED", "Name of the subject", "Subject"), "As it is to stand in the tables and reports."
    )
    shared = ("DEM", "TIME_ZONE")
    heights = ("SUBJECT_HEIGHT", "SUBJECT_WIDTH", "CAMERA_HEIGHT")
    nights = (
        "BODIES",
        "STAR",
        "GALACTIC_LON",
        "FIRST_NIGHT",
        "LAST_NIGHT",
        "MOON",
        "SUN_LIMIT",
        "ALT_MIN",
        "AZ_TOLERANCE",
        "GAP_MIN",
        "GAP_MAX",
    )
    recipe.ask_as("skyalidade:alignments", *heights, *nights, *shared)
    for end, thing in (("CAMERA", "camera"), ("SUBJECT", "subject")):
        recipe.step(
            f"{thing}_point",
            "native:pointtolayer",
            f"The {thing} as a layer",
            "A layer of one point, where the map was clicked.",
            {"INPUT": asked(end)},
        )
        recipe.step(
            thing,
            "native:fieldcalculator",
            f"The {thing} by its name",
            "Gives the point the field 'name'.",
            {
                "INPUT": made_by(f"{thing}_point", "OUTPUT"),
                "FIELD_NAME": fixed("name"),
                "FIELD_TYPE": fixed(TEXT),
                "FIELD_LENGTH": fixed(0),
                "FORMULA": reckoned(quoted(f"coalesce(@{end}_CALLED, '{thing.capitalize()}')")),
            },
        )
    pair = {
        "CAMERAS": made_by("camera", "OUTPUT"),
        "SUBJECTS": made_by("subject", "OUTPUT"),
        "CAMERA_NAME": fixed("name"),
        "SUBJECT_NAME": fixed("name"),
        "DEM": asked("DEM"),
        **{name: asked(name) for name in heights},
    }
    recipe.step(
        "sight",
        "skyalidade:sightlines",
        "Sightline",
        "Bearing, distance, altitude; with an elevation model also whether terrain is in the way. The compass is that of the first night.",
        {**pair, "DATE": asked("FIRST_NIGHT")},
        [("Sightline", "OUTPUT", "The line from camera to subject, with bearing, distance and altitude.")],
    )
    recipe.step(
        "alignments",
        "skyalidade:alignments",
        "Alignments",
        "Every stretch of time in which the body stands over the subject.",
        {**pair, "TIME_ZONE": asked("TIME_ZONE"), **{name: asked(name) for name in nights}},
        [
            ("Alignments", "OUTPUT", "A line for each stretch of time, with times for the Temporal Controller."),
            ("Unmet", "UNMET", "The bodies that never stand over the subject, and why."),
        ],
    )
    return recipe


def park_season():
    """Sites in; nights, months and charts out."""
    recipe = Recipe(
        "Season of a park",
        "For every viewpoint of a layer: the dark windows of each night, the months with their best nights, and a chart of the year",
        "The first question for a whole park: when. Each night of each viewpoint has its window, in which it is dark, the Moon is away and "
        "the body stands where it is wanted, or the reason why there is none; each month has its usable nights, its hours and its best "
        "night; the new-moon weekends are marked. Charts, where they are wanted, show the year of each viewpoint in one picture.",
    )
    of_sites = ("SITES", "SITE_NAME", "BODY", "STAR", "GALACTIC_LON", "FIRST_NIGHT", "LAST_NIGHT")
    nights = (*of_sites, "MOON", "SUN_LIMIT", "ALT_MIN", "TILT_MIN", "TILT_MAX", "DEM", "TIME_ZONE")
    recipe.ask_as("skyalidade:night_windows", *nights)
    recipe.ask(
        QgsProcessingParameterBoolean("DRAW_CHARTS", "Draw a chart of each viewpoint", False),
        "A picture a viewpoint, half a second each, and a page that gathers them; for no more viewpoints than MAX_PICTURES.",
    )
    recipe.ask_as("skyalidade:season_chart", "THEME", "MAX_PICTURES")
    recipe.step(
        "nights",
        "skyalidade:night_windows",
        "Night windows",
        "A row a viewpoint and night, and a row a viewpoint and month.",
        {name: asked(name) for name in nights},
        [
            ("Nights", "OUTPUT", "A point for each viewpoint and night, with its window or the reason why there is none."),
            ("Months", "MONTHS", "A point for each viewpoint and month: usable nights, hours, best night, new-moon weekends."),
        ],
    )
    recipe.step(
        "wanted",
        "native:condition",
        "Charts wanted?",
        "Goes on to the charts where DRAW_CHARTS is on.",
        configuration={"conditions": [{"name": "Draw", "expression": "coalesce(@DRAW_CHARTS, false)"}]},
    )
    recipe.step(
        "charts",
        "skyalidade:season_chart",
        "Season charts",
        "A picture a viewpoint, and a page that gathers them.",
        {"NIGHTS": made_by("nights", "OUTPUT"), "THEME": asked("THEME"), "MAX_PICTURES": asked("MAX_PICTURES")},
        [("Charts", "FOLDER", "The folder of the pictures, with the page season_chart.html.")],
        when=("wanted", "Draw"),
    )
    return recipe


def permit_package():
    """Paths and subjects in; standpoints, alignments and sheets out."""
    recipe = Recipe(
        "Permit package",
        "From paths and subjects to what a land manager reads: where to stand, on which nights, and a sheet for each place",
        "Finds the places on the paths from which each subject lies under the body at the time given, leaves out closed ground, looks up "
        "every night of the season on which the body stands over the subject from there, and makes a sheet for each place: map, "
        "coordinates, bearings, timetable, closures.\n\n"
        "The sheets are the applicant's map. They are not a permit: access, closures, night hours, lights, group size and commercial work "
        "are decided by the land manager and local law. Walking in the dark is dangerous, and the results know nothing of footing, tide "
        "or weather.",
    )
    recipe.ask_as("skyalidade:standpoints", "SUBJECTS", "SUBJECT_NAME", "SUBJECT_HEIGHT", required=("SUBJECT_NAME",))
    recipe.ask(
        QgsProcessingParameterField("SUBJECT_HEIGHT_FIELD", "Field with the height of a subject", None, "SUBJECTS", optional=True),
        "In metres, where subjects differ: taken in place of the one height.",
    )
    recipe.ask_as("skyalidade:standpoints", "PATHS", "PATH_NAME")
    recipe.ask_as("skyalidade:night_windows", "BODY", "STAR", "GALACTIC_LON")
    recipe.ask(
        QgsProcessingParameterDateTime("TIME", "When the body is to stand over the subject"),
        "One moment, such as 2027-06-06T23:30:00: the clock on the wall at the subject, or with an offset or Z. It decides where to stand; "
        "on other nights the body comes there at another minute.",
    )
    places = ("MAX_DISTANCE", "CAMERA_HEIGHT", "AREA", "CLOSED", "CLOSED_FROM", "CLOSED_TO", "DEM", "TIME_ZONE")
    recipe.ask_as("skyalidade:standpoints", *places)
    nights = ("FIRST_NIGHT", "LAST_NIGHT", "MOON", "AZ_TOLERANCE")
    recipe.ask_as("skyalidade:alignments", *nights)
    words = ("TITLE", "APPLICANT", "ACTIVITY", "GROUP_SIZE", "VEHICLES", "HOURS", "LIGHTING", "CONTACT", "EMERGENCY", "PERMIT_NO")
    paper = ("CLOSED_NAME", "WALK", "PAPER", "ORIENTATION")
    recipe.ask_as("skyalidade:site_map", *words, *paper)
    height = reckoned("if(coalesce(@SUBJECT_HEIGHT_FIELD, '') = '', coalesce(@SUBJECT_HEIGHT, 0), 'field:' || @SUBJECT_HEIGHT_FIELD)")
    subjects = {"SUBJECTS": asked("SUBJECTS"), "SUBJECT_NAME": asked("SUBJECT_NAME"), "SUBJECT_HEIGHT": height}
    recipe.step(
        "stand",
        "skyalidade:standpoints",
        "Standpoints",
        "Where on the paths the subject lies under the body at that time, outside closed ground.",
        {
            **subjects,
            "BODY": reckoned("coalesce(@BODY, 'core')"),
            **{name: asked(name) for name in ("PATHS", "PATH_NAME", "STAR", "GALACTIC_LON", "TIME", *places)},
        },
        [
            ("Standpoints", "POINTS", "A point for each place to stand, with its bearing, distance and line of sight."),
            ("Zones", "ZONES", "The ground from which the subject lies in the direction wanted."),
        ],
    )
    standing = {
        "CAMERAS": made_by("stand", "POINTS"),
        "CAMERA_NAME": fixed("camera"),
        "PAIRING": fixed("by_field"),
        "PAIR_FIELD": fixed("subject"),
        "PAIR_FIELD_SUBJECT": asked("SUBJECT_NAME"),
        "CAMERA_HEIGHT": asked("CAMERA_HEIGHT"),
        "DEM": asked("DEM"),
    }
    recipe.step(
        "sight",
        "skyalidade:sightlines",
        "Sightlines",
        "From each place to its subject. The compass is that of the first night.",
        {**subjects, **standing, "DATE": asked("FIRST_NIGHT")},
        [("Sightlines", "OUTPUT", "A line from each place to its subject, with bearing, distance and altitude.")],
    )
    recipe.step(
        "alignments",
        "skyalidade:alignments",
        "Alignments",
        "The nights on which the body stands over the subject, seen from each place.",
        {
            **subjects,
            **standing,
            "BODIES": asked("BODY"),
            **{name: asked(name) for name in ("STAR", "GALACTIC_LON", "TIME_ZONE", *nights)},
        },
        [("Alignments", "OUTPUT", "A line for each stretch of time, with times for the Temporal Controller.")],
    )
    recipe.step(
        "sheets",
        "skyalidade:site_map",
        "Sheets",
        "A sheet for each place.",
        {
            "SIGHTLINES": made_by("sight", "OUTPUT"),
            "ALIGNMENTS": made_by("alignments", "OUTPUT"),
            "STANDPOINTS": made_by("stand", "POINTS"),
            "ZONES": made_by("stand", "ZONES"),
            **{
                name: asked(name)
                for name in ("SUBJECTS", "SUBJECT_NAME", "PATHS", "CLOSED", "CLOSED_FROM", "CLOSED_TO", "DEM", "TIME_ZONE")
            },
            **{name: asked(name) for name in (*words, *paper)},
        },
        [("Sheets", "OUTPUT", "The sheets, a PDF.")],
    )
    return recipe


def main():
    """Write each model beside this script, or into the folder given."""
    folder = Path(sys.argv[1]) if len(sys.argv) > 1 else HERE
    application = QgsApplication([], False)
    application.initQgis()
    from skyalidade.plugin import SkyAlidade

    registry = QgsApplication.processingRegistry()
    registry.addProvider(QgsNativeAlgorithms(registry))
    plugin = SkyAlidade(None)
    plugin.initProcessing()
    for make in (plan_one_subject, park_season, permit_package):
        make().write(folder / f"{make.__name__}.model3")
    plugin.unload()
    application.exitQgis()


if __name__ == "__main__":
    main()
