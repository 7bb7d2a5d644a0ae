#include "paint/pdf/complete_pdf.h"

#include <exception>
#include <functional>
#include <new>
#include <qpdf/Buffer.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFWriter.hh>

namespace steelyard::paint {
namespace {

void complete(QPDF& document) {
    QPDFObjectHandle catalog = document.getRoot();
    catalog.replaceKey("/Lang", QPDFObjectHandle::newString("en"));
    catalog.replaceKey("/ViewerPreferences", "<< /DisplayDocTitle true >>"_qpdf);
    if (catalog.hasKey("/StructTreeRoot"))
        catalog.replaceKey("/MarkInfo", "<< /Marked true >>"_qpdf);
    document.getTrailer().getKey("/Info").removeKey("/CreationDate");
}

NotCompleted rewrite(std::FILE* from, const std::function<void(QPDFWriter&)>& write) {
    try { // qpdf throws when a file cannot be read or written
        QPDF document;
        document.setSuppressWarnings(true);
        document.processFile("the painted pages", from, false);
        complete(document);
        QPDFWriter writer(document);
        writer.setStreamDataMode(qpdf_s_preserve); // Cairo has compressed them
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

NotCompleted complete_pdf(std::FILE* from, std::FILE* to) {
    return rewrite(from, [to](QPDFWriter& writer) {
        writer.setOutputFile("the document", to, false);
        writer.write();
    });
}

NotCompleted complete_pdf(std::FILE* from, std::string& bytes) {
    return rewrite(from, [&bytes](QPDFWriter& writer) {
        writer.setOutputMemory();
        writer.write();
        const auto buffer = writer.getBufferSharedPointer();
        bytes.assign(reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize());
    });
}

} // namespace steelyard::paint
