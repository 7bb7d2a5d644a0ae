#pragma once
// What Cairo leaves out of a PDF's catalog, appended as an incremental update.

#include "paint/pdf/byte_store.h"

#include <string>
#include <string_view>

namespace steelyard::paint {

/// Gives the document a catalog that states its language, asks for its title in the title bar, and
/// marks it as tagged where it has a structure; blanks out the date of its making, so that the same
/// painting gives the same bytes. The update is a new catalog object, a section of the
/// cross-reference table and a trailer that names the one before.
/// A document that is not built as Cairo builds PDF 1.4 (a cross-reference table, no compressed
/// objects) stays as it was.
/// @param language  as in RFC 3066: "en"
/// @return false when the store could not be written
/// Source: PDF 1.7 (ISO 32000-1:2008), 7.5.6 incremental updates, 7.7.2 catalog, 12.2 viewer
/// preferences, 14.7.1 mark information.
bool complete_pdf(const ByteStore& document, std::string_view language);

/// The same for a document in memory.
std::string completed_pdf(std::string bytes, std::string_view language);

} // namespace steelyard::paint
