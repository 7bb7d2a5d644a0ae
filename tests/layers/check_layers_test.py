#!/usr/bin/env python3
"""check_layers.py finds what it is meant to find, shown on small made-up trees."""

import tempfile
import unittest
from pathlib import Path

from check_layers import Check

TABLE = """
## Layout
| folder | what lives there | may include | libraries |
|---|---|---|---|
| `src/app/` | window | `cli_is_not_here` `scene` `mechanics` | `imgui` `GLFW/` |
| `src/cli/` | verbs | `scene` `mechanics` | `CLI/` |
| `src/scene/` | drawing | `mechanics` | `Eigen/` |
| `src/mechanics/` | levers | | `Eigen/` |
| `shaders/` | GLSL | | |
"""

GOOD_TREE = {
    "DEVELOPERS.md": TABLE,
    "src/CMakeLists.txt": "add(main.cpp app/app.cpp cli/cli.cpp scene/scene.cpp mechanics/a.cpp)"
                          "\n# commented.cpp\n"
                          "embed(${CMAKE_SOURCE_DIR}/shaders/stage.glsl)",
    "src/main.cpp": '#include "app/app.h"\n#include "cli/cli.h"\n',
    "src/app/app.h": "#include <format>\n#include <imgui.h>\n#include <GLFW/glfw3.h>\n",
    "src/app/app.cpp": '#include "app/app.h"\n#include "embedded/shaders.h"\n'
                       '#include "scene/scene.h"\n',
    "src/cli/cli.h": "#pragma once\n",
    "src/cli/cli.cpp": '#include "cli/cli.h"\n#include <CLI/CLI.hpp>\n',
    "src/scene/scene.h": '#include "mechanics/a.h"\n#include <vector>\n',
    "src/scene/scene.cpp": '#include "scene/scene.h"\n',
    "src/mechanics/a.h": "#include <Eigen/Core>\n// std::format is not used\n",
    "src/mechanics/a.cpp": '#include "mechanics/a.h"\nconst char* s = "std::ranges::sort";\n'
                           "int i; auto r = std::from_chars(b, e, i);\n",
    "shaders/stage.glsl": "void main() {}\n",
    "tests/CMakeLists.txt": "add(a_test.cpp)",
    "tests/a_test.cpp": '#include "mechanics/a.h"\n',
}


class LayersTest(unittest.TestCase):
    def violations(self, **changes):
        """What is found in the good tree after some files were put in."""
        with tempfile.TemporaryDirectory() as folder:
            tree = dict(GOOD_TREE)
            for path, text in changes.get("files", {}).items():
                tree[path] = text
            for path, text in tree.items():
                if text is None:
                    continue
                file = Path(folder) / path
                file.parent.mkdir(parents=True, exist_ok=True)
                file.write_text(text, encoding="utf-8")
            return Check(folder).run()

    def assert_found(self, files, *words):
        found = self.violations(files=files)
        self.assertEqual(len(found), 1, found)
        for word in words:
            self.assertIn(word, found[0])

    def with_line(self, path, line):
        return {path: GOOD_TREE[path] + line + "\n"}

    def test_a_good_tree_has_no_violations(self):
        self.assertEqual(self.violations(), [])

    def test_a_layer_must_not_include_one_above_it(self):
        self.assert_found(self.with_line("src/mechanics/a.cpp", '#include "scene/scene.h"'),
                          "src/mechanics/a.cpp:4:", "mechanics may include only: nothing")

    def test_app_and_cli_never_include_each_other(self):
        self.assert_found(self.with_line("src/app/app.cpp", '#include "cli/cli.h"'), "app.cpp:4:")
        self.assert_found(self.with_line("src/cli/cli.cpp", '#include "app/app.h"'), "cli.cpp:3:")

    def test_window_libraries_stay_in_the_app(self):
        for header in ("imgui.h", "GLFW/glfw3.h", "glad/gl.h", "GL/gl.h", "imgui_impl_glfw.h"):
            self.assert_found(self.with_line("src/scene/scene.h", f"#include <{header}>"),
                              "scene.h:3:", header, "Eigen/")

    def test_a_comment_does_not_hide_an_include(self):
        self.assert_found(self.with_line("src/mechanics/a.h", "#  include <imgui.h> // why not"),
                          "a.h:3:")

    def test_what_old_libcxx_lacks_is_found_below_the_app(self):
        for line in ("#include <format>", "#include <expected>", "#include <source_location>",
                     "#include <ranges>", "auto s = std::format(x);", "std::ranges::sort(v);",
                     "std::views::iota(1);", "std::jthread t;", "std::pmr::string s;",
                     "double d; std::from_chars(b, e, d);",
                     "double d; std::to_chars(b, e, d);"):
            self.assert_found(self.with_line("src/mechanics/a.cpp", line), "a.cpp:4:", "web build")

    def test_what_c_libraries_round_differently_is_found_where_questions_come_from(self):
        for line in ("double s = std::sin(x);", "double a = std::atan2 (y, x);",
                     "double p = std::pow(10.0, n);", "Eigen::AngleAxisd turn(a, axis);"):
            self.assert_found(self.with_line("src/mechanics/a.cpp", line), "a.cpp:4:", "portable")
        files = self.with_line("src/mechanics/a.cpp", "double r = std::sqrt(std::round(x));")
        self.assertEqual(self.violations(files=files), [])
        files = self.with_line("src/scene/scene.cpp", "double s = std::sin(x);")
        self.assertEqual(self.violations(files=files), [])

    def test_running_a_program_and_calling_out_are_found(self):
        for call in ("system(command)", "std::system(command)", "::popen(c, mode)", "fork()",
                     "execvp(a, b)", "socket(AF_INET, 1, 0)", "getaddrinfo(a, b, c, d)"):
            self.assert_found({"src/mechanics/a.cpp": f"void f() {{\n  {call};\n}}"},
                              "src/mechanics/a.cpp:2", "no program is run")
        for name in ("follow_system()", "unit.system()", "my::connect(a)", 'say("system(x)")'):
            self.assertEqual(self.violations(files={"src/mechanics/a.cpp": f"void f() {{ {name}; }}"}),
                             [])
        found = self.violations(files={"src/main.cpp": "#include <sys/socket.h>\n"})
        self.assertEqual(len(found), 1, found)

    def test_the_app_itself_may_use_newer_things(self):
        files = self.with_line("src/cli/cli.cpp", "std::ranges::sort(v);")
        self.assertEqual(self.violations(files=files), [])

    def test_a_source_that_no_list_names_is_found(self):
        self.assert_found({"src/mechanics/b.cpp": ""}, "b.cpp:1:", "lists")
        self.assert_found({"tests/b_test.cpp": ""}, "b_test.cpp:1:", "lists")
        self.assert_found({"shaders/b.glsl": ""}, "b.glsl:1:", "lists")

    def test_a_listed_source_that_does_not_exist_is_found(self):
        self.assert_found({"tests/CMakeLists.txt": "add(\n  a_test.cpp\n  gone.cpp)"},
                          "tests/CMakeLists.txt:3:", "gone.cpp")

    def test_an_include_that_leads_nowhere_is_found(self):
        self.assert_found(self.with_line("src/mechanics/a.cpp", '#include "a.h"'), "below src/")
        self.assert_found(self.with_line("tests/a_test.cpp", '#include "b.h"'), "or tests/")

    def test_only_the_app_draws_with_shaders(self):
        self.assert_found(self.with_line("src/scene/scene.h", '#include "embedded/shaders.h"'),
                          "only app")

    def test_a_layer_without_a_row_is_found(self):
        self.assert_found({"src/extra/notes.txt": ""}, "src/extra:1:", "table")

    def test_a_stray_file_at_the_top_level_is_found(self):
        self.assert_found({"notes.txt": ""}, "notes.txt:1:", "top level")

    def test_a_missing_table_is_found(self):
        found = self.violations(files={"DEVELOPERS.md": "# Nothing\n"})
        self.assertIn("names no folder", found[0])


if __name__ == "__main__":
    unittest.main()
