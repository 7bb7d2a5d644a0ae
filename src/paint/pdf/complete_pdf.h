#pragma once
// What Cairo leaves out of a PDF document, put in by qpdf.

#include <cstdio>
#include <string>

namespace steelyard::paint {

/// Why a document could not be completed.
struct NotCompleted {
    std::string why; ///< a phrase; empty = it was
    bool no_memory = false;
};

/// Writes a document anew with a catalog that states English as its language, asks for its title in
/// the title bar, and marks it as tagged where it has a structure, and without the date of its
/// making, so that the same pages give the same bytes. Both files are open; the first may be read
/// anywhere.
/// Source: PDF 1.7 (ISO 32000-1:2008), 7.7.2 catalog, 12.2 viewer preferences, 14.7.1 mark
/// information.
NotCompleted complete_pdf(std::FILE* from, std::FILE* to);

/// The same into memory.
NotCompleted complete_pdf(std::FILE* from, std::string& bytes);

} // namespace steelyard::paint
