// Which closing of a store a command is about, with its boiler.
#pragma once

#include <string>

#include "service/closing_book.h"

namespace steamworthy::cli {

/// A closing that a command is about.
struct OpenClosing {
  service::ClosingBook book;
  record::Scope scope;
  const service::Ledger& ledger() const { return book.ledger(scope); }
};

/// A book of closings for the boiler described in a file. Closings of other boilers are in it,
/// without a description.
service::ClosingBook book_for(const record::Scope& plant, const std::string& boiler_file);

/// The closing with that id; of an empty name the only one.
/// Throws   BadInput "service.no_closing", "service.which_closing", "service.other_description" if
///          the closing pins another description; NotFound "service.unknown_closing".
record::Scope closing_in(const service::ClosingBook& book, const record::Scope& plant,
                         const std::string& name, const std::string& boiler_file);

/// Reads a store without its key and without its lock.
OpenClosing open_closing(const std::string& store, const std::string& closing,
                         const std::string& boiler_file);

}  // namespace steamworthy::cli
