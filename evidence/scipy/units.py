"""Units as scipy.constants knows them (CODATA and the definitions of the units). Writes units.json beside itself."""

import json
import platform
from pathlib import Path

import scipy
from scipy import constants as c

here = Path(__file__).resolve().parent
absolute = {
    text: float(c.convert_temperature(value, scale, "Kelvin"))
    for text, value, scale in [
        ("-40 °C", -40, "Celsius"),
        ("0 °C", 0, "Celsius"),
        ("65 °C", 65, "Celsius"),
        ("-40 °F", -40, "Fahrenheit"),
        ("32 °F", 32, "Fahrenheit"),
        ("149 °F", 149, "Fahrenheit"),
        ("300 K", 300, "Kelvin"),
    ]
}
result = {
    "generator": "units.py",
    "versions": {"python": platform.python_version(), "scipy": scipy.__version__},
    # text: [quantity, SI value]
    "values": {
        "1 g": ["acceleration", c.g],
        "1 in": ["length", c.inch],
        "1 mil": ["displacement", c.mil],
        "1 ft": ["length", c.foot],
        "1 lb": ["mass", c.pound],
        "1 oz": ["mass", c.ounce],
        "1 hp": ["power", c.horsepower],
        "1 min": ["duration", c.minute],
        "1 h": ["duration", c.hour],
        "1 day": ["duration", c.day],
        "1 week": ["duration", c.week],
        "1 deg": ["angle", c.degree],
        "1 lbf*ft": ["torque", c.lbf * c.foot],
        "1 lbf/in": ["stiffness", c.lbf / c.inch],
        "1 pF/ft": ["capacitance per length", c.pico / c.foot],
        "1 mV/(in/s)": ["voltage per velocity", c.milli / c.inch],
        "1 mV/mil": ["voltage per displacement", c.milli / c.mil],
        "100 mV/g": ["voltage per acceleration", 0.1 / c.g],
        "5 pC/g": ["charge per acceleration", 5 * c.pico / c.g],
        "1 %/K": ["per temperature", 0.01],
    },
    "temperatures": absolute,
}
with open(here / "units.json", "w", encoding="utf-8") as out:
    json.dump(result, out, indent=1, ensure_ascii=False)
    out.write("\n")
