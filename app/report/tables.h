// Tables: closures, places, readings and figures as a spreadsheet.
#pragma once

#include "paper/workbook.h"
#include "report/papers.h"

namespace steamworthy::report {

/// Sheets: figures, closures, fittings, places, parts; units in the heads, numbers as numbers in
/// the unit system of the context.
paper::Workbook workbook(const Papers& papers);

}  // namespace steamworthy::report
