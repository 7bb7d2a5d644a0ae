#pragma once
// A file within a package.

#include <string>

namespace steelyard::publish {

struct PackedFile {
    std::string path; ///< within the package, with strokes between folders: "items/a.xml"
    std::string bytes;
};

} // namespace steelyard::publish
