#include "report/papers.h"

#include <array>

namespace steamworthy::report {

std::span<const Kind> kinds() {
  static constexpr std::array all = {
      Kind{"test-sheet", "paper.kind_test_sheet", test_sheet},
      Kind{"pressure-log", "paper.kind_pressure_log", pressure_log},
      Kind{"closures", "paper.kind_closures", closure_sheets},
      Kind{"walkdown", "paper.kind_walkdown", walkdown_list},
      Kind{"tally", "paper.kind_tally", tally_sheet},
      Kind{"handover", "paper.kind_handover", handover_sheet},
      Kind{"leave-safe", "paper.kind_leave_safe", leave_safe_sheet},
      Kind{"taking-over", "paper.kind_taking_over", taking_over_sheet},
      Kind{"labels", "paper.kind_labels", labels},
      Kind{"temporaries", "paper.kind_temporaries", temporaries_register},
      Kind{"isolations", "paper.kind_isolations", isolation_list},
      Kind{"stores", "paper.kind_stores", stores_list},
  };
  return all;
}

const Kind* find_kind(std::string_view token) {
  for (const Kind& kind : kinds()) {
    if (kind.token == token) return &kind;
  }
  return nullptr;
}

}  // namespace steamworthy::report
