#pragma once
// What stands on a worksheet and on its key, block by block.

#include "problems/bank/bank.h"
#include "publish/paper/paper_pdf.h"
#include "publish/sheets/worksheet.h"

namespace steelyard::publish {

/// The blocks of the sheet for learners. The sheet must outlive them.
PaperBlocks sheet_blocks(const Worksheet& sheet);

/// The blocks of the key. Sheet and bank must outlive them.
PaperBlocks key_blocks(const Worksheet& sheet, const problems::Bank& bank);

} // namespace steelyard::publish
