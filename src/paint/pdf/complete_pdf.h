#pragma once
// What Cairo leaves out of a PDF document, put in by qpdf.

#include "paint/pdf/figure_words.h"

#include <cstdio>
#include <string>

namespace steelyard::paint {

/// Why a document could not be completed.
struct NotCompleted {
    std::string why; ///< a phrase; empty = it was
    bool no_memory = false;
};

/// What Cairo is not told.
struct Completion {
    std::string title;
    FigureWords figures; ///< of the structure's figures, in their order
};

/// Writes a document anew with a catalog that states English as its language, asks for its title in
/// the title bar, and marks it as tagged where it has a structure, and without the date of its
/// making, so that the same pages give the same bytes. In a tagged document every figure says what
/// it shows, what belongs to no element is marked as an artifact, and the metadata repeat the
/// title. Both files are open; the first may be read anywhere. Source: PDF 1.7 (ISO
/// 32000-1:2008), 7.7.2 catalog, 12.2 viewer preferences, 14.3.2 metadata streams, 14.7.1 mark
/// information, 14.8.2.2 artifacts, 14.9.3 alternate descriptions; PDF/UA-1 (ISO 14289-1:2014),
/// clause 7.
NotCompleted complete_pdf(std::FILE* from, const Completion& with, std::FILE* to);

/// The same into memory.
NotCompleted complete_pdf(std::FILE* from, const Completion& with, std::string& bytes);

} // namespace steelyard::paint
