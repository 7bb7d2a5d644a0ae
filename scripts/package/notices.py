"""Writes the licence of Steelyard and the notices of all that is compiled into it, as their Debian
packages state them: notices.py LICENSE OUT"""

import sys
from pathlib import Path

# What has headers or static code in the program. Shared libraries bring their own notices.
CARRIED = {
    "libimgui-dev": "Dear ImGui, the window's library",
    "libstb-dev": "stb, the rasteriser of letters in Dear ImGui",
    "python3-glad": "glad, which writes the loader of OpenGL",
    "libeigen3-dev": "Eigen, linear algebra",
    "libboost-math-dev": "Boost, mathematical functions",
    "libcli11-dev": "CLI11, the command line",
    "libexpected-dev": "tl::expected",
    "libfast-float-dev": "fast_float, reading numbers",
    "libfmt-dev": "fmt, writing text",
    "libqpdf-dev": "qpdf, which completes PDF documents",
    "libtomlplusplus-dev": "toml++, reading setups",
    "nlohmann-json3-dev": "JSON for Modern C++",
}
LINE = "-" * 78


def notices(license_file):
    yield "Steelyard\n\n" + Path(license_file).read_text(encoding="utf-8")
    yield ("Data: segment and muscle tables restate published values; each file below\n"
           "/usr/share/steelyard/assets names its source.\n")
    for package, what in CARRIED.items():
        text = Path("/usr/share/doc", package, "copyright").read_text(encoding="utf-8")
        yield f"{LINE}\n{what} (from the package {package})\n{LINE}\n\n{text}"


if __name__ == "__main__":
    Path(sys.argv[2]).write_text("\n".join(notices(sys.argv[1])), encoding="utf-8")
