#include "publish/sheets/html_page.h"

#include "publish/files/written_text.h"
#include "words/caution.h"
#include "words/formula_parts.h"

#include <fmt/format.h>

namespace steelyard::publish {
namespace {

/// Sizes are those of the paper: see page_format.h. Colours are the print look's.
constexpr std::string_view kStyle = R"css(
:root { font: 10.5pt/1.4 Inter, "Noto Sans", "DejaVu Sans", sans-serif; color: #14171a; }
:root.large { font-size: 18pt; }
body { margin: 2rem auto; max-width: 48rem; padding: 0 1rem; }
h1 { font-size: 2.1em; font-weight: 600; line-height: 1.2; margin: 0; }
h2 { font-size: 1.24em; font-weight: 600; margin: 1.6em 0 .6em; break-after: avoid; }
p { margin: 0 0 .4em; }
header { border-bottom: 1px solid; padding-bottom: .9em; margin-bottom: 1.5em; position: relative; }
.version { position: absolute; right: 0; top: 0; border: 1.5pt solid; width: 1.5em; height: 1.5em;
  font-size: 2.1em; line-height: 1.5em; font-weight: 600; text-align: center; }
.note, .pen, .code, footer, .why { color: #58606a; }
.pen, .code, footer { font-size: .81em; }
.fields { display: flex; gap: 1em; margin-top: 1.2em; font-size: .81em; color: #58606a; }
.fields span { flex: 2; border-bottom: .6pt solid #14171a; }
.fields span + span { flex: 1; }
ol.questions { list-style: none; margin: 0; padding: 0; }
.questions > li { display: grid; grid-template-columns: 2.2em 1fr; break-inside: avoid;
  margin-bottom: 2.2em; }
.number { font-weight: 600; }
.two { display: grid; grid-template-columns: 1fr 47%; gap: 1.4em; }
.large .two { grid-template-columns: 1fr; }
.two svg { width: 100%; height: auto; }
.body { display: flex; flex-direction: column; }
.room { flex: 1; min-height: 5em; print-color-adjust: exact; -webkit-print-color-adjust: exact;
  background: radial-gradient(#c9ccd0 .6pt, transparent .7pt) 0 0 / 5mm 5mm; }
.answer { font-weight: 600; margin-top: .6em; display: flex; flex-wrap: wrap; }
.answer i { flex: 1 1 4em; max-width: 9em; border-bottom: .7pt solid; margin: 0 .5em; }
.choices { list-style: none; margin: .2em 0 0; padding: 0; }
.choices li { display: grid; grid-template-columns: 1.6em 1.6em 1fr; margin-bottom: .2em; }
.box { width: .8em; height: .8em; border: .9pt solid; margin-top: .25em; }
.box.round { border-radius: 50%; }
.box.line { border-width: 0 0 .9pt; width: 1.2em; }
.choices b, .right, .wrong { font-weight: 600; }
.right { color: #004c7d; display: flex; justify-content: space-between; }
.wrong { color: #a84700; }
.formula { margin-left: 1.5em; }
.watch { border-collapse: collapse; }
.watch td { padding: 0 1em 0 0; vertical-align: top; }
.glance { columns: 4; border-bottom: 1px solid; padding: 0 0 .8em; list-style: none; margin: 0; }
.glance span { display: inline-block; width: 2.2em; color: #58606a; }
footer { border-top: .6pt solid #c9ccd0; padding-top: .4em; display: flex;
  justify-content: space-between; gap: 2em; }
@media print { body { margin: 0; max-width: none; padding: 0; } }
)css";

/// The sheet's size, and on every page the code that makes it again, for browsers that print in
/// margins. Source: CSS Paged Media Module Level 3, section 5.
std::string page_rule(const Worksheet& sheet) {
    constexpr std::string_view kSmall = "font-size: 8.5pt; color: #58606a";
    return fmt::format(
        "@page {{ size: {}; margin: 18mm;\n"
        "  @bottom-left {{ content: {}; {} }}\n"
        "  @bottom-right {{ content: counter(page) \" / \" counter(pages); {} }} }}\n",
        sheet.paper == PaperSize::a4 ? "A4" : "letter", css_string(sheet.code), kSmall, kSmall);
}

} // namespace

std::string html_page(const Worksheet& sheet, std::string_view title, std::string_view body) {
    return fmt::format("<!DOCTYPE html>\n<html lang=\"en\"{}>\n<head>\n<meta charset=\"utf-8\">\n"
                       "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
                       "<title>{}</title>\n<style>{}{}</style>\n</head>\n"
                       "<body>\n<main>\n{}</main>\n<footer><span>{}</span><span>{}</span></"
                       "footer>\n</body>\n</html>\n",
                       sheet.large_print ? " class=\"large\"" : "", xml_escaped(title), kStyle,
                       page_rule(sheet), body, xml_escaped(sheet.code),
                       xml_escaped(words::kCaution));
}

std::string html_element(std::string_view tag, std::string_view css_class, std::string_view text) {
    if (text.empty())
        return "";
    return fmt::format("<{} class=\"{}\">{}</{}>\n", tag, css_class, xml_escaped(text), tag);
}

std::string html_formula(std::string_view formula) {
    std::string html;
    for (const words::FormulaPart& part : words::formula_parts(formula))
        html += part.index ? "<sub>" + xml_escaped(part.text) + "</sub>" : xml_escaped(part.text);
    return html;
}

} // namespace steelyard::publish
