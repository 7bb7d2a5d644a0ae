"""Quantities as they stand on the screen, read back by a reader of its own."""

import re

# SI value of one unit. Sources: SI Brochure, 9th edition; international yard and pound agreement
# of 1959 (1 in = 0.0254 m, 1 lb = 0.45359237 kg); standard gravity 9.80665 m/s² (3rd CGPM, 1901).
POUND_FORCE_N = 0.45359237 * 9.80665
UNITS = {
    "": 1.0, "m": 1.0, "cm": 0.01, "mm": 0.001, "in": 0.0254, "ft": 0.3048,
    "N": 1.0, "kN": 1000.0, "lbf": POUND_FORCE_N,
    "N·m": 1.0, "ft·lbf": 0.3048 * POUND_FORCE_N,
    "kg": 1.0, "g": 0.001, "lb": 0.45359237, "oz": 0.45359237 / 16.0,
}
NUMBER = re.compile(r"(−?)(\d[\d\u2009]*)(?:\.(\d+))?(?:\s×\s10\^?([\d⁻⁰¹²³⁴-⁹]+))?\s?(\S*)$")
RAISED = str.maketrans("⁻⁰¹²³⁴⁵⁶⁷⁸⁹", "-0123456789")


def read_shown(text):
    """Value, half a step of the last digit shown (both SI) and the number of figures."""
    match = NUMBER.match(text)
    if not match or match[5] not in UNITS:
        raise AssertionError(f"'{text}' is no quantity")
    whole = match[2].replace("\u2009", "")
    decimals = match[3] or ""
    scale = UNITS[match[5]] * (10.0 ** int(match[4].translate(RAISED)) if match[4] else 1.0)
    value = float(whole + "." + (decimals or "0"))
    figures = len((whole + decimals).lstrip("0"))
    sign = -1.0 if match[1] else 1.0
    return sign * value * scale, 0.5 * 10.0 ** -len(decimals) * scale, figures


def agrees(text, expected_SI, least_figures=3):
    """True when the text is the expected value rounded to the digits shown, and shows enough."""
    if expected_SI is None:
        return text == "none"
    value_SI, half_step_SI, figures = read_shown(text)
    # A number from 1000 up may be rounded to three figures by zeros before its point.
    if figures > 3 and "." not in text and abs(value_SI) >= 1000.0:
        half_step_SI *= 10.0 ** (figures - 3)
    slack = 1e-9 * max(1.0, abs(expected_SI))  # a value in the middle may go either way
    enough = figures >= least_figures or abs(expected_SI) < 1e-9
    return enough and abs(value_SI - expected_SI) <= half_step_SI + slack
