#pragma once
// What stands on a worksheet and on its key, block by block.

#include "paint/paper/paper_pdf.h"
#include "problems/bank/bank.h"
#include "publish/sheets/worksheet.h"

namespace steelyard::paint {

/// The blocks of the sheet for learners. The sheet must outlive them.
PaperBlocks sheet_blocks(const publish::Worksheet& sheet);

/// What a reader's program calls the key.
std::string key_title(const publish::Worksheet& sheet);

/// The blocks of the key. Sheet and bank must outlive them.
PaperBlocks key_blocks(const publish::Worksheet& sheet, const problems::Bank& bank);

} // namespace steelyard::paint
