// Papers: what each says. One function a paper; kinds() lists them all.
//
// What rests on log entries is left blank, to be filled in by hand.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "report/context.h"
#include "sheet/sheet.h"

namespace steamworthy::report {

/// What every paper is made of.
struct Papers {
  Context context;
  sheet::Sheet sheet;
};

paper::Document test_sheet(const Papers& papers);
paper::Document pressure_log(const Papers& papers);
paper::Document closure_sheets(const Papers& papers);
paper::Document walkdown_list(const Papers& papers);
paper::Document tally_sheet(const Papers& papers);
paper::Document handover_sheet(const Papers& papers);
paper::Document leave_safe_sheet(const Papers& papers);
paper::Document taking_over_sheet(const Papers& papers);
paper::Document labels(const Papers& papers);
paper::Document temporaries_register(const Papers& papers);
paper::Document isolation_list(const Papers& papers);
paper::Document stores_list(const Papers& papers);

struct PaperKind {
  std::string_view token;  ///< on the command line: "test-sheet"
  std::string_view key;    ///< words key of its title
  paper::Document (*make)(const Papers&);
};

std::span<const PaperKind> kinds();
/// Nothing for a token that is no kind of paper.
const PaperKind* find_kind(std::string_view token);

}  // namespace steamworthy::report
