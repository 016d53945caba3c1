#include "report/papers.h"

#include <array>

namespace steamworthy::report {

std::span<const PaperKind> kinds() {
  static constexpr std::array all = {
      PaperKind{"test-sheet", "paper.kind_test_sheet", test_sheet},
      PaperKind{"pressure-log", "paper.kind_pressure_log", pressure_log},
      PaperKind{"closures", "paper.kind_closures", closure_sheets},
      PaperKind{"walkdown", "paper.kind_walkdown", walkdown_list},
      PaperKind{"tally", "paper.kind_tally", tally_sheet},
      PaperKind{"handover", "paper.kind_handover", handover_sheet},
      PaperKind{"leave-safe", "paper.kind_leave_safe", leave_safe_sheet},
      PaperKind{"taking-over", "paper.kind_taking_over", taking_over_sheet},
      PaperKind{"labels", "paper.kind_labels", labels},
      PaperKind{"temporaries", "paper.kind_temporaries", temporaries_register},
      PaperKind{"isolations", "paper.kind_isolations", isolation_list},
      PaperKind{"stores", "paper.kind_stores", stores_list},
  };
  return all;
}

const PaperKind* find_kind(std::string_view token) {
  for (const PaperKind& kind : kinds()) {
    if (kind.token == token) return &kind;
  }
  return nullptr;
}

}  // namespace steamworthy::report
