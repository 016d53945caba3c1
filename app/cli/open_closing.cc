#include "cli/open_closing.h"

#include <fmt/format.h>

#include "cli/files.h"
#include "record/sha256.h"
#include "service/log_service.h"
#include "service/sheet_service.h"
#include "store/reader.h"

namespace steamworthy::cli {
namespace {

[[noreturn]] void refuse(const char* code, const char* option, const std::string& found,
                         const std::string& accepted, const std::string& message) {
  throw BadInput({{code, "", 0, option, found, accepted, message}});
}

}  // namespace

service::ClosingBook book_for(const record::Scope& plant, const std::string& boiler_file) {
  const std::string bytes = read_file(boiler_file);
  auto boiler = std::make_shared<const boiler::Boiler>(
      service::read_description(bytes, base_name(boiler_file)));
  return service::ClosingBook(
      plant, [boiler, hash = hex(record::sha256(bytes))](const std::string& sha256) {
        return sha256 == hash ? boiler : nullptr;
      });
}

record::Scope closing_in(const service::ClosingBook& book, const record::Scope& plant,
                         const std::string& name, const std::string& boiler_file) {
  const std::vector<record::Scope> closings = book.closings();
  record::Scope scope;
  if (!name.empty()) {
    scope = service::scope_named(name, plant, "--closing");
    if (scope.kind == record::ScopeKind::Plant) {
      refuse("service.no_closing", "--closing", name, "the id of a closing", "is no closing");
    }
  } else if (closings.size() == 1) {
    scope = closings.front();
  } else {
    std::string accepted;
    for (const record::Scope& one : closings) {
      accepted += (accepted.empty() ? "" : ", ") + text(one.id);
    }
    refuse("service.which_closing", "--closing", "", accepted.empty() ? "none yet" : accepted,
           fmt::format("the store has {} closings; say which", closings.size()));
  }
  const service::Ledger& ledger = book.ledger(scope);
  const std::string& pinned = ledger.state().description_sha256;
  if (!ledger.is_described()) {
    if (pinned.empty()) {
      refuse("service.other_description", "--boiler", base_name(boiler_file),
             "a closing.started that names it",
             "cannot be held to this closing: no entry says how its boiler is described");
    }
    refuse("service.other_description", "--boiler", hex(record::sha256(read_file(boiler_file))),
           pinned,
           fmt::format("is the SHA-256 of {}, and this closing was begun on another description",
                       base_name(boiler_file)));
  }
  return scope;
}

OpenClosing open_closing(const std::string& store, const std::string& closing,
                         const std::string& boiler_file) {
  const store::StoreContents contents = store::read_store(store);
  service::ClosingBook book = book_for(contents.plant, boiler_file);
  book.take_in(contents.facts);
  const record::Scope scope = closing_in(book, contents.plant, closing, boiler_file);
  return {std::move(book), scope};
}

}  // namespace steamworthy::cli
