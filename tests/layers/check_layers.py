#!/usr/bin/env python3
"""Checks the shape of the source tree: which layer includes what, and that no file is forgotten.

    check_layers.py [ROOT]

Reads the rules from the table "Layout" in ROOT/DEVELOPERS.md, so that what contributors read is
what is checked. Prints each violation as file:line: sentence; exit status 1 if there is any.
"""

import re
import sys
from dataclasses import dataclass
from pathlib import Path

# What an include of each C and C++ standard header looks like: no folder, no ending.
STANDARD_HEADER = re.compile(r"^[a-z_]+$")

# The web build's C++ library (libc++ 13) lacks these; see "Conventions" in DEVELOPERS.md.
NOT_IN_OLD_LIBCXX = [
    (re.compile(r"#\s*include\s*<(format|expected|source_location|ranges|memory_resource|"
                r"coroutine|stop_token|print|stacktrace|generator|mdspan|flat_map|spanstream|"
                r"syncstream)>"), "<{0}>"),
    (re.compile(r"\bstd::(format|format_to|format_to_n|vformat|print|println|expected|unexpected|"
                r"source_location|jthread|stop_token|bit_cast|unreachable|to_underlying|"
                r"move_only_function|make_unique_for_overwrite|zoned_time|current_zone)\b"),
     "std::{0}"),
    (re.compile(r"\bstd::(ranges|views|pmr)::"), "std::{0}"),
    (re.compile(r"\bstd::(chars_format)\b"), "std::{0}, for floating-point numbers"),
]
# Whole numbers may be read by from_chars and written by to_chars, floating-point ones not.
CHARS_CALL = re.compile(r"\bstd::(?:from|to)_chars\s*\([^;]*?,[^;]*?,\s*\*?(\w+)")

# C libraries round these differently, so that a question would not come out the same everywhere.
# (Square roots, rounding and remainders are exact in all of them.)
SAME_EVERYWHERE = ("mechanics", "problems")
ROUNDED_BY_THE_LIBRARY = re.compile(
    r"\bstd::(a?sinh?|a?cosh?|a?tanh?|atan2|hypot|pow|cbrt|exp|exp2|expm1|log|log2|log10|log1p|"
    r"[lt]gamma|erfc?)\s*\(|\b(AngleAxis[df]?|Rotation2D[df]?)\b")

# Nothing is executed and nothing goes over a network: see "Security" in DEVELOPERS.md.
RUNS_OR_CALLS_OUT = re.compile(
    r"(?<![\w.>:])(?:std::|::)?(system|popen|fork|exec[lv]p?e?|posix_spawnp?|dlopen|socket|connect|"
    r"getaddrinfo|gethostbyname)\s*\(")
RUNS_OR_CALLS_OUT_HEADER = re.compile(r"^(?:sys/socket|netdb|netinet/|arpa/|dlfcn|spawn|curl/)")

LISTED_FILE = re.compile(r"[\w./${}-]+\.(?:cpp|glsl)\b")
TOP_LEVEL = {"CMakeLists.txt", "CMakePresets.json", "README.md", "DEVELOPERS.md", "LICENSE", "src",
             "shaders", "question_bank", "tests", "assets", "scripts", "build"}


@dataclass
class Layer:
    uses: list  # names of layers
    libraries: list  # beginnings of include paths: "Eigen/", "imgui"


def read_layers(developers_md):
    """The rows of the table that begin with a folder of src/."""
    layers = {}
    if not developers_md.is_file():
        return layers
    for line in developers_md.read_text(encoding="utf-8").splitlines():
        cells = [cell.strip() for cell in line.strip().strip("|").split("|")]
        folder = re.fullmatch(r"`src/(\w+)/`", cells[0])
        if folder and len(cells) == 4:
            layers[folder[1]] = Layer(re.findall(r"`(\w+)`", cells[2]),
                                      re.findall(r"`([^`]+)`", cells[3]))
    return layers


def without_comments(text):
    """Text with comments and string literals blanked out, line numbers kept."""
    pattern = re.compile(r'//[^\n]*|/\*.*?\*/|"(?:\\.|[^"\\\n])*"', re.DOTALL)
    def blank(match):
        is_include = re.search(r"#\s*include\s*$", text[:match.start()].rsplit("\n", 1)[-1])
        return match[0] if is_include else re.sub(r"[^\n]", " ", match[0])
    return pattern.sub(blank, text)


def sources(folder):
    return sorted(p for p in folder.rglob("*") if p.suffix in (".cpp", ".h", ".c", ".hpp"))


def line_of(text, position):
    return text.count("\n", 0, position) + 1


class Check:
    def __init__(self, root):
        self.root = Path(root)
        self.layers = read_layers(self.root / "DEVELOPERS.md")
        self.violations = []

    def report(self, path, line, sentence):
        self.violations.append(f"{path.relative_to(self.root)}:{line}: {sentence}")

    def run(self):
        if not self.layers:
            self.violations.append("DEVELOPERS.md: the table \"Layout\" names no folder of src/")
        self.check_folders()
        for path in sources(self.root / "src"):
            text = without_comments(path.read_text(encoding="utf-8"))
            self.check_includes(path, text)
            self.check_reach(path, text)
            self.check_constructs(path, text)
        for path in sources(self.root / "tests"):
            self.check_test_includes(path, without_comments(path.read_text(encoding="utf-8")))
        self.check_lists()
        return self.violations

    def check_folders(self):
        for path in sorted(self.root.iterdir()):
            if path.name not in TOP_LEVEL and not path.name.startswith("."):
                self.report(path, 1, "nothing else belongs at the top level")
        for path in sorted((self.root / "src").iterdir()):
            if path.is_dir() and path.name not in self.layers:
                self.report(path, 1, "this layer is not in DEVELOPERS.md's table")

    def layer_of(self, path):
        """Name of a file's layer; None for src/main.cpp, which joins the app and the cli."""
        parts = path.relative_to(self.root / "src").parts
        return parts[0] if len(parts) > 1 else None

    def includes(self, text):
        for match in re.finditer(r'^[ \t]*#\s*include\s*([<"])([^>"]+)[>"]', text, re.MULTILINE):
            yield line_of(text, match.start(2)), match[1] == '"', match[2]

    def check_includes(self, path, text):
        name = self.layer_of(path)
        if name is None or name not in self.layers:
            return
        layer = self.layers[name]
        for line, is_ours, target in self.includes(text):
            if is_ours:
                self.check_own_include(path, line, target, name)
            elif not STANDARD_HEADER.match(target) and not any(
                    target.startswith(library) for library in layer.libraries):
                self.report(path, line, f"<{target}>: {name} may use only these libraries: "
                                        f"{', '.join(layer.libraries) or 'none'}")

    def check_reach(self, path, text):
        for match in RUNS_OR_CALLS_OUT.finditer(re.sub(r'"(?:[^"\\\n]|\\.)*"', '""', text)):
            self.report(path, line_of(text, match.start()),
                        f"{match[1]}: no program is run and nothing goes over a network")
        for line, _, target in self.includes(text):
            if RUNS_OR_CALLS_OUT_HEADER.match(target):
                self.report(path, line, f"<{target}>: no program is run and nothing goes over a "
                                        "network")

    def check_own_include(self, path, line, target, name):
        other = target.split("/")[0]
        if other == "embedded":  # written by the build from shaders/
            if name != "app":
                self.report(path, line, f'"{target}": only app draws with shaders')
        elif not (self.root / "src" / target).is_file():
            self.report(path, line, f'"{target}": no such file below src/')
        elif other != name and other not in self.layers[name].uses:
            self.report(path, line, f'"{target}": {name} may include only: '
                                    f"{', '.join(self.layers[name].uses) or 'nothing'}")

    def check_test_includes(self, path, text):
        for line, is_ours, target in self.includes(text):
            places = [self.root / "src", self.root / "tests"]
            if (is_ours and not target.startswith("embedded/")
                    and not any((place / target).is_file() for place in places)):
                self.report(path, line, f'"{target}": no such file below src/ or tests/')

    def check_constructs(self, path, text):
        if self.layer_of(path) in (None, "app", "cli"):
            return
        for pattern, name in NOT_IN_OLD_LIBCXX:
            for match in pattern.finditer(text):
                self.report(path, line_of(text, match.start()),
                            f"{name.format(match[1])} is missing in the web build's C++ library")
        for match in CHARS_CALL.finditer(text):
            if re.search(rf"\b(?:double|float)\s+&?{match[1]}\b", text):
                self.report(path, line_of(text, match.start()),
                            "from_chars and to_chars of a floating-point number are missing in "
                            "the web build's C++ library")

        if self.layer_of(path) in SAME_EVERYWHERE:
            for match in ROUNDED_BY_THE_LIBRARY.finditer(text):
                self.report(path, line_of(text, match.start()),
                            f"{match[1] or match[2]} differs in the last digit between C "
                            "libraries; use mechanics/portable.h")

    def check_lists(self):
        """Each source and shader is listed in a CMakeLists.txt, and each listed one exists."""
        listed = set()
        for top in ("src", "tests"):
            for path in sorted((self.root / top).rglob("CMakeLists.txt")):
                text = re.sub(r"#[^\n]*", "", path.read_text(encoding="utf-8"))
                for match in LISTED_FILE.finditer(text):
                    name = re.sub(r"\$\{(CMAKE_SOURCE_DIR|PROJECT_SOURCE_DIR)\}", str(self.root),
                                  match[0]).replace("${CMAKE_CURRENT_SOURCE_DIR}", ".")
                    file = (path.parent / name).resolve()
                    listed.add(file)
                    if not file.is_file() and "$" not in name:
                        self.report(path, line_of(text, match.start()), f"{match[0]}: no such file")
        wanted = [p for top in ("src", "tests", "shaders") for p in (self.root / top).rglob("*")
                  if p.suffix in (".cpp", ".glsl")]
        for path in sorted(wanted):
            if path.resolve() not in listed:
                self.report(path, 1, "no CMakeLists.txt lists this file")


def main():
    default = Path(__file__).resolve().parents[2]
    violations = Check(sys.argv[1] if len(sys.argv) > 1 else default).run()
    for violation in violations:
        print(violation)
    return 1 if violations else 0


if __name__ == "__main__":
    sys.exit(main())
