// The texts of a fact's body by the names of its fields.
#pragma once

#include <functional>
#include <string>
#include <string_view>

#include "facts/body.h"

namespace steamworthy::report {

/// Calls `use` with each text that the body must have, in the order of its fields; with none of a
/// body that cannot be read.
void for_each_text(const facts::Body& body,
                   const std::function<void(std::string_view name, const std::string& value)>& use);

}  // namespace steamworthy::report
