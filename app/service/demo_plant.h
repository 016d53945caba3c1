// The demo plant: an invented plant to look at and to learn on, as a store of its own.
#pragma once

#include <string>
#include <vector>

#include "assets/assets.h"
#include "store/account_book.h"
#include "store/fact_log.h"
#include "store/surroundings.h"

namespace steamworthy::service {

/// With which everybody of the demo plant signs in.
inline constexpr const char* demo_pin = "274913";

/// Descriptions of its boilers.
std::vector<assets::Asset> demo_boilers();

/// Fills a new store with the demo plant: its people, a closing of its watertube boiler that was
/// taken over a year ago, and one of the same boiler in the middle of its work, whose last entry is
/// two minutes old. The facts are those of examples/, moved in time and signed by this node.
/// Throws   what store::FactLog::append() throws.
void make_demo_plant(store::FactLog& log, store::AccountBook& accounts,
                     store::Surroundings& surroundings);

}  // namespace steamworthy::service
