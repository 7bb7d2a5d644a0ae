#include "app/look/narration.h"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace steelyard::app {

namespace {

nlohmann::json list_of(const std::vector<Narration::Entry>& entries) {
    nlohmann::json list = nlohmann::json::array();
    for (const Narration::Entry& entry : entries)
        list.push_back({{"text", entry.text},
                        {"x", entry.at_px.x()},
                        {"y", entry.at_px.y()},
                        {"width", entry.width_px},
                        {"em", entry.em_px}});
    return list;
}

} // namespace

std::optional<Narration::Entry> Narration::find(std::string_view beginning) const {
    const auto begins = [beginning](const Entry& entry) {
        return !beginning.empty() && entry.text.compare(0, beginning.size(), beginning) == 0;
    };
    for (const std::vector<Entry>* entries : {&texts_, &grips_}) {
        const auto found = std::find_if(entries->begin(), entries->end(), begins);
        if (found != entries->end())
            return *found;
    }
    return std::nullopt;
}

std::string Narration::to_json(long frame, const std::string& window) const {
    nlohmann::json line{{"frame", frame}, {"texts", list_of(texts_)}, {"grips", list_of(grips_)}};
    if (!window.empty())
        line["window"] = window;
    return line.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

std::string Narration::rest_to_json(bool rests, bool kept) {
    return nlohmann::json{{"rest", rests}, {"kept", kept}}.dump();
}

} // namespace steelyard::app
