#include "app/platform/extras.h"

#include <array>
#include <emscripten.h>

namespace steelyard::app {

namespace {

EM_JS(void, page_choose_file, (), { Module.page.chooseFile(); });
EM_JS(void, page_show_licences, (), { location.href = 'licences.html'; });

} // namespace

std::span<const Extra> extras() {
    static constexpr std::array all{
        Extra{"Open a setup, lesson, sheet or record …", [] { page_choose_file(); }},
        Extra{"Licences and notices", [] { page_show_licences(); }}};
    return all;
}

} // namespace steelyard::app
