#include "problems/bank/published_claim.h"

#include <fmt/core.h>

#include <algorithm>
#include <cctype>

namespace steelyard::problems {

namespace {

using setup::TomlArray;
using setup::TomlNode;
using setup::TomlTable;

bool claims_published(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text.find("published") != std::string::npos;
}

/// Texts below a node that claim it, with their keys.
void collect_claims(const TomlNode& node, const std::string& path,
                    std::vector<std::pair<std::string, const TomlNode*>>& claims) {
    const auto below = [&](const TomlNode& child) {
        const std::string dot = path.empty() || child.key.empty() ? "" : ".";
        collect_claims(child, path + dot + child.key, claims);
    };
    if (const auto* text = std::get_if<std::string>(&node.value)) {
        if (claims_published(*text))
            claims.emplace_back(path, &node);
    } else if (const auto* array = std::get_if<TomlArray>(&node.value)) {
        std::for_each(array->items.begin(), array->items.end(), below);
    } else if (const auto* table = std::get_if<TomlTable>(&node.value)) {
        std::for_each(table->entries.begin(), table->entries.end(), below);
    }
}

/// The preferred source of an arm that the family states, where it is from memory.
const mechanics::Citation* remembered(const Family& family) {
    for (const Let& let : family.before)
        if (let.arm && let.arm->sources.front().citation.mark == mechanics::Evidence::memory)
            return &let.arm->sources.front().citation;
    return nullptr;
}

} // namespace

void check_published_claims(const setup::TomlDocument& document, const Family& family,
                            setup::InputErrors& errors) {
    const mechanics::Citation* citation = remembered(family);
    if (citation == nullptr)
        return;
    std::vector<std::pair<std::string, const TomlNode*>> claims;
    collect_claims(document.root, "", claims);
    for (const auto& [key, node] : claims) {
        setup::InputError error;
        error.file = document.file;
        error.line = node->line;
        error.column = node->column;
        error.key = key;
        error.found = "the word \"published\"";
        error.expected =
            fmt::format("no such claim for an arm that is marked memory (\"{}\")", citation->text);
        error.mend =
            "Call the value illustrative, or draw on a muscle whose first source was seen.";
        errors.push_back(std::move(error));
    }
}

} // namespace steelyard::problems
