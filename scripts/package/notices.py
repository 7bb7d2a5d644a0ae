"""Writes the licence of Steelyard and the notices of all that is compiled into it, as their Debian
packages state them: notices.py LICENSE OUT
An OUT that ends in .html is a page about what is compiled for the browser instead; its third
argument is the folder of the sources that scripts/web.sh fetched."""

import html
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
# The same of a page: the packages of headers, and of what is compiled from source.
IN_A_PAGE = ["libeigen3-dev", "libboost-math-dev", "libexpected-dev", "libfast-float-dev",
             "libfmt-dev", "libtomlplusplus-dev", "nlohmann-json3-dev"]
FROM_SOURCE = {"imgui": "Dear ImGui and stb", "sqlite3": "SQLite", "pugixml": "pugixml"}
LINE = "-" * 78


def data_note():
    return ("Data: segment and muscle tables restate published values; each file below\n"
            "/usr/share/steelyard/assets names its source.\n")


def copyright_of(package):
    return Path("/usr/share/doc", package, "copyright").read_text(encoding="utf-8")


def notices(license_file):
    yield "Steelyard\n\n" + Path(license_file).read_text(encoding="utf-8")
    yield data_note()
    for package, what in CARRIED.items():
        yield f"{LINE}\n{what} (from the package {package})\n{LINE}\n\n{copyright_of(package)}"


def page(license_file, sources):
    parts = {"Steelyard": Path(license_file).read_text(encoding="utf-8"),
             "Inter, the typeface (a part of its signs)": copyright_of("fonts-inter")}
    parts["Emscripten, and its C and C++ libraries"] = copyright_of("emscripten")
    for package in IN_A_PAGE:
        parts[CARRIED[package]] = copyright_of(package)
    for name, what in FROM_SOURCE.items():
        parts[what] = Path(sources, name, "debian", "copyright").read_text(encoding="utf-8")
    yield ('<!doctype html>\n<html lang="en">\n<meta charset="utf-8">\n'
           '<meta name="viewport" content="width=device-width">\n'
           '<meta name="color-scheme" content="light dark">\n'
           '<title>Steelyard: licences and notices</title>\n'
           '<style>body { max-width: 50rem; margin: 2rem auto; padding: 0 1rem; '
           'font: 1rem/1.5 system-ui, sans-serif } pre { white-space: pre-wrap }</style>\n'
           '<main>\n<h1>Licences and notices</h1>\n<p><a href="index.html">Steelyard</a></p>')
    for heading, text in parts.items():
        yield f"<h2>{html.escape(heading)}</h2>\n<pre>{html.escape(text)}</pre>"
    yield "</main>\n</html>\n"


if __name__ == "__main__":
    made = page(sys.argv[1], sys.argv[3]) if sys.argv[2].endswith(".html") else notices(sys.argv[1])
    Path(sys.argv[2]).write_text("\n".join(made), encoding="utf-8")
