// Calls whose answer is a paper, a drawing, a file or the test sheet.
#pragma once

#include "server/call.h"
#include "server/house.h"

namespace steamworthy::server {

Outcome drawing(House& house, const Call& call);
Outcome paper(House& house, const Call& call);
Outcome record_paper(House& house, const Call& call);
Outcome export_closing(House& house, const Call& call);
Outcome sheet(House& house, const Call& call);
Outcome issue_sheet(House& house, const Call& call);
Outcome add_blob(House& house, const Call& call);
Outcome blob(House& house, const Call& call);

}  // namespace steamworthy::server
