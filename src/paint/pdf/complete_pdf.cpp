#include "paint/pdf/complete_pdf.h"

#include "paint/pdf/artifact_filter.h"
#include "publish/files/written_text.h"

#include <fmt/format.h>

#include <exception>
#include <functional>
#include <memory>
#include <new>
#include <qpdf/Buffer.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFPageDocumentHelper.hh>
#include <qpdf/QPDFPageObjectHelper.hh>
#include <qpdf/QPDFWriter.hh>

namespace steelyard::paint {
namespace {

/// Gives every figure below an element its words, in order.
void describe_figures(QPDFObjectHandle element, const FigureWords& words, std::size_t& next) {
    if (!element.isDictionary())
        return;
    QPDFObjectHandle kind = element.getKey("/S");
    if (kind.isName() && kind.getName() == "/Figure" && next < words.size())
        element.replaceKey("/Alt", QPDFObjectHandle::newUnicodeString(words[next++]));
    QPDFObjectHandle children = element.getKey("/K");
    if (children.isArray())
        for (const QPDFObjectHandle& child : children.aitems())
            describe_figures(child, words, next);
    else
        describe_figures(children, words, next);
}

/// The title once more, as XMP. It claims no part of PDF/UA, which nobody has certified.
/// Source: PDF/UA-1, 7.1 (dc:title).
std::string metadata_of(const std::string& title) {
    return fmt::format("<?xpacket begin=\"\xEF\xBB\xBF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
                       "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\n"
                       "<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n"
                       "<rdf:Description rdf:about=\"\" "
                       "xmlns:dc=\"http://purl.org/dc/elements/1.1/\">\n"
                       "<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">{}</rdf:li></rdf:Alt>"
                       "</dc:title>\n<dc:language><rdf:Bag><rdf:li>en</rdf:li></rdf:Bag>"
                       "</dc:language>\n</rdf:Description>\n</rdf:RDF>\n</x:xmpmeta>\n"
                       "<?xpacket end=\"r\"?>\n",
                       publish::xml_escaped(publish::one_line(title)));
}

void complete_structure(QPDF& document, const Completion& with) {
    QPDFObjectHandle catalog = document.getRoot();
    catalog.replaceKey("/MarkInfo", "<< /Marked true >>"_qpdf);
    std::size_t figures = 0;
    describe_figures(catalog.getKey("/StructTreeRoot"), with.figures, figures);
    for (QPDFPageObjectHelper page : QPDFPageDocumentHelper(document).getAllPages())
        page.addContentTokenFilter(std::make_shared<ArtifactFilter>());
    QPDFObjectHandle metadata = QPDFObjectHandle::newStream(&document, metadata_of(with.title));
    metadata.getDict().replaceKey("/Type", QPDFObjectHandle::newName("/Metadata"));
    metadata.getDict().replaceKey("/Subtype", QPDFObjectHandle::newName("/XML"));
    catalog.replaceKey("/Metadata", document.makeIndirectObject(metadata));
}

void complete(QPDF& document, const Completion& with) {
    QPDFObjectHandle catalog = document.getRoot();
    catalog.replaceKey("/Lang", QPDFObjectHandle::newString("en"));
    catalog.replaceKey("/ViewerPreferences", "<< /DisplayDocTitle true >>"_qpdf);
    document.getTrailer().getKey("/Info").removeKey("/CreationDate");
    if (catalog.hasKey("/StructTreeRoot"))
        complete_structure(document, with);
}

NotCompleted rewrite(std::FILE* from, const Completion& with,
                     const std::function<void(QPDFWriter&)>& write) {
    try { // qpdf throws when a file cannot be read or written
        QPDF document;
        document.setSuppressWarnings(true);
        document.processFile("the painted pages", from, false);
        complete(document, with);
        QPDFWriter writer(document);
        writer.setStreamDataMode(qpdf_s_compress);
        writer.setDeterministicID(true);
        write(writer);
    } catch (const std::bad_alloc&) {
        return {"out of memory", true};
    } catch (const std::exception& error) {
        return {error.what(), false};
    }
    return {};
}

} // namespace

NotCompleted complete_pdf(std::FILE* from, const Completion& with, std::FILE* to) {
    return rewrite(from, with, [to](QPDFWriter& writer) {
        writer.setOutputFile("the document", to, false);
        writer.write();
    });
}

NotCompleted complete_pdf(std::FILE* from, const Completion& with, std::string& bytes) {
    return rewrite(from, with, [&bytes](QPDFWriter& writer) {
        writer.setOutputMemory();
        writer.write();
        const auto buffer = writer.getBufferSharedPointer();
        bytes.assign(reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize());
    });
}

} // namespace steelyard::paint
