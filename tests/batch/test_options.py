"""Options are the parameters of the algorithms: none is missing, none has another default or other bounds."""

import pytest
from qgis.core import QgsProcessingParameterNumber

from skyalidade.batch.arguments import parser

COMMANDS = {"nights": "night_windows", "alignments": "alignments", "exposure": "sky_exposure"}
# A guard of a disk against one file; and outputs, which are folders of one.
NOT_HERE = {"MAX_ROWS", "OUTPUT"}
WANTED = {"nights": {"sites": "s"}, "alignments": {"cameras": "c", "subjects": "s"}, "exposure": {"dem": "d"}}


@pytest.fixture(params=COMMANDS)
def command(request, algorithm):
    """An algorithm, and what its command takes when nothing but layers is given."""
    layers = [part for name, file in WANTED[request.param].items() for part in (f"--{name}", file)]
    return algorithm(COMMANDS[request.param]), request.param, layers


@pytest.fixture
def algorithm(qgis_app):
    from qgis.core import QgsApplication

    from skyalidade.plugin import SkyAlidade

    plugin = SkyAlidade(None)
    plugin.initProcessing()
    yield lambda name: QgsApplication.processingRegistry().createAlgorithmById(f"skyalidade:{name}")
    plugin.unload()


def test_every_parameter_is_an_option_with_its_default(command):
    made, name, layers = command
    asked = vars(parser().parse_args([name, *layers, "--output", "o"]))
    for definition in made.parameterDefinitions():
        option, default = definition.name().lower(), definition.defaultValue()
        if definition.name() in NOT_HERE:
            continue
        assert option in asked, f"{definition.name()} is no option of {name}"
        if option in WANTED[name]:
            continue
        given = asked[option]
        if definition.type() == "sink":
            assert given is False
        elif default is None or default == "":
            assert given in (None, []), option
        elif option == "bodies":
            assert given == (default if isinstance(default, list) else default.split(","))
        else:
            assert given == default, option


def test_numbers_have_the_bounds_of_the_parameters(command, capsys):
    made, name, layers = command
    for definition in made.parameterDefinitions():
        if not isinstance(definition, QgsProcessingParameterNumber) or definition.name() in NOT_HERE:
            continue
        option = "--" + definition.name().lower().replace("_", "-")
        for bound, beyond in ((definition.minimum(), -1.0), (definition.maximum(), 1.0)):
            if abs(bound) < 1e300 and option != "--dem-band":
                parser().parse_args([name, *layers, "--output", "o", option, f"{bound:g}"])
                with pytest.raises(SystemExit):
                    parser().parse_args([name, *layers, "--output", "o", option, f"{bound + beyond:g}"])
                assert "is not a number" in capsys.readouterr().err


def test_help_tells_every_option(capsys):
    for name in COMMANDS:
        with pytest.raises(SystemExit):
            parser().parse_args([name, "--help"])
        told = capsys.readouterr().out
        assert "A planning aid, not a survey and not a permit." in told
        assert "--first-night DATE" in told
