#include "app/platform/wishes.h"

#include <emscripten.h>

namespace steelyard::app {

namespace {

EM_JS(int, page_wishes_dark, (), { return Module.page.wishes('(prefers-color-scheme: dark)'); });
EM_JS(int, page_wishes_less_motion, (),
      { return Module.page.wishes('(prefers-reduced-motion: reduce)'); });
EM_JS(void, page_ask_for_digits, (), { Module.page.asksForDigits = true; });

} // namespace

SystemWishes system_wishes() {
    return {page_wishes_dark() != 0, page_wishes_less_motion() != 0};
}

void ask_for_digits() {
    page_ask_for_digits();
}

} // namespace steelyard::app
