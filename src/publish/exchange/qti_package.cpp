#include "publish/exchange/qti_package.h"

#include "publish/exchange/qti_item.h"
#include "publish/pictures/svg.h"
#include "publish/question/question_figure.h"
#include "publish/question/question_view.h"

#include <fmt/format.h>

namespace steelyard::publish {
namespace {

using problems::Question;

constexpr const char* kTestPath = "test.xml";

std::string item_path(const Question& question) {
    return fmt::format("items/{}.xml", qti_identifier(question));
}

std::string figure_path(const Question& question) {
    return fmt::format("figures/{}.svg", qti_identifier(question));
}

void declare_sum(QtiNode& test, const char* outcome) {
    test.add("outcomeDeclaration")
        .set("identifier", outcome)
        .set("cardinality", "single")
        .set("baseType", "float");
}

/// The test's outcome is the sum of those of its items.
void add_sum(QtiNode& processing, const char* outcome) {
    processing.add("setOutcomeValue")
        .set("identifier", outcome)
        .add("sum")
        .add("testVariables")
        .set("variableIdentifier", outcome);
}

/// One section with every item in its order, each answered and submitted by itself.
std::string test_xml(const std::vector<Question>& questions, QtiVersion version,
                     const std::string& title) {
    pugi::xml_document document;
    QtiNode test = qti_root(document, version, "assessmentTest");
    test.set("identifier", "test").set("title", title);
    declare_sum(test, "SCORE");
    declare_sum(test, "MAXSCORE");
    QtiNode part = test.add("testPart");
    part.set("identifier", "part")
        .set("navigationMode", "nonlinear")
        .set("submissionMode", "individual");
    QtiNode section = part.add("assessmentSection");
    section.set("identifier", "section").set("title", title).set("visible", "true");
    for (const Question& question : questions) {
        section.add("assessmentItemRef")
            .set("identifier", qti_identifier(question))
            .set("href", item_path(question));
    }
    QtiNode processing = test.add("outcomeProcessing");
    add_sum(processing, "SCORE");
    add_sum(processing, "MAXSCORE");
    return xml_text(document);
}

pugi::xml_node add_resource(pugi::xml_node resources, const std::string& identifier,
                            const std::string& type, const std::string& path) {
    pugi::xml_node resource = resources.append_child("resource");
    resource.append_attribute("identifier") = identifier.c_str();
    resource.append_attribute("type") = type.c_str();
    resource.append_attribute("href") = path.c_str();
    resource.append_child("file").append_attribute("href") = path.c_str();
    return resource;
}

/// Source: 1EdTech Content Packaging 1.1 (for 2.1) and its QTI 3.0 profile.
std::string manifest_xml(const std::vector<Question>& questions, QtiVersion version) {
    const bool v2 = version == QtiVersion::v2_1;
    const std::string edition = v2 ? "v2p1" : "v3p0";
    pugi::xml_document document;
    pugi::xml_node declaration = document.append_child(pugi::node_declaration);
    declaration.append_attribute("version") = "1.0";
    declaration.append_attribute("encoding") = "UTF-8";
    pugi::xml_node manifest = document.append_child("manifest");
    manifest.append_attribute("xmlns") = v2 ? "http://www.imsglobal.org/xsd/imscp_v1p1"
                                            : "http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1";
    manifest.append_attribute("identifier") = "manifest";
    pugi::xml_node metadata = manifest.append_child("metadata");
    metadata.append_child("schema").text() = v2 ? "QTIv2.1 Package" : "QTI Package";
    metadata.append_child("schemaversion").text() = v2 ? "1.0.0" : "3.0.0";
    manifest.append_child("organizations");
    pugi::xml_node resources = manifest.append_child("resources");
    pugi::xml_node test = add_resource(resources, "test", "imsqti_test_xml" + edition, kTestPath);
    for (const Question& question : questions) {
        const std::string identifier = qti_identifier(question);
        test.append_child("dependency").append_attribute("identifierref") = identifier.c_str();
        pugi::xml_node item =
            add_resource(resources, identifier, "imsqti_item_xml" + edition, item_path(question));
        if (has_figure(question))
            item.append_child("file").append_attribute("href") = figure_path(question).c_str();
    }
    return xml_text(document);
}

} // namespace

tl::expected<std::vector<PackedFile>, PublishError>
qti_files(const problems::Bank& bank, const std::vector<Question>& questions, QtiVersion version,
          const std::string& title, const Progress& progress) {
    std::vector<PackedFile> files{{"imsmanifest.xml", manifest_xml(questions, version)},
                                  {kTestPath, test_xml(questions, version, title)}};
    for (std::size_t i = 0; i < questions.size(); ++i) {
        const Question& question = questions[i];
        ItemFigure figure;
        if (has_figure(question)) {
            const scene::Drawing drawing = question_figure(question, figure_size(question));
            auto svg = svg_of(drawing, {scene::Look::print, "figure", true});
            if (!svg)
                return tl::make_unexpected(svg.error());
            files.push_back({figure_path(question), std::move(*svg)});
            // The item lies in a folder of its own: its figure is one up.
            figure = {"../" + figure_path(question), drawing.description};
        }
        files.push_back({item_path(question), qti_item(bank, question, version, figure)});
        if (!goes_on(progress, i + 1, questions.size()))
            return stopped_work();
    }
    return files;
}

} // namespace steelyard::publish
