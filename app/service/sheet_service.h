// Use cases around a boiler's description: check it, compute its test sheet.
//
// Each function takes the bytes that were given and answers with what a person
// or a program can be shown; nothing here reads files or prints.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/error.h"
#include "boiler/boiler.h"
#include "rules/rule.h"
#include "sheet/sheet.h"

namespace steamworthy::service {

/// Reads a description, TOML or JSON by what it looks like.
/// Throws BadInput with every fault of it.
boiler::Boiler read_description(std::string_view bytes, const std::string& file);

/// The rules that ship with the program, in the order of their files.
std::vector<rules::Rule> shipped_rules();

/// The test sheet of a description. Throws as read_description() and sheet::make_sheet().
sheet::Sheet make_sheet(std::string_view bytes, const std::string& file,
                        const sheet::Request& request);

}  // namespace steamworthy::service
