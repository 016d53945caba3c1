// Any bytes as the body of any kind of fact: it is read or kept verbatim with its faults, and what
// is read can be told, and comes back from its own bytes as it was. The first byte chooses the
// kind.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "base/error.h"
#include "facts/table.h"
#include "wire/fact_body.h"
#include "wire/fact_line.h"

namespace {

using namespace steamworthy;

void demand(bool condition) {
  if (!condition) std::abort();
}

void use(const facts::Row& row, std::string_view text) {
  const wire::ReadBody lenient =
      wire::read_body(row.kind.token, row.kind.version, text, wire::UnknownKeys::Allow);
  const wire::ReadBody strict =
      wire::read_body(row.kind.token, row.kind.version, text, wire::UnknownKeys::Refuse);
  demand(lenient.problems.size() <= strict.problems.size());
  facts::Fact fact;
  fact.closing = "C";
  fact.device = "D";
  fact.device_seq = 1;
  fact.person = "P";
  fact.body = lenient.body;
  demand(!facts::tell(fact).key.empty());
  if (!lenient.problems.empty()) {
    for (const Problem& problem : lenient.problems) demand(!sentence(problem).empty());
    const auto& unread = std::get<facts::Unread>(lenient.body);
    demand(unread.json == text && wire::body_json(lenient.body) == text);
    return;
  }
  const std::string written = wire::body_json(lenient.body, lenient.beside);
  const wire::ReadBody again =
      wire::read_body(row.kind.token, row.kind.version, written, wire::UnknownKeys::Refuse);
  demand(again.problems.empty() && again.body == lenient.body && again.beside == lenient.beside);
  fact.beside = lenient.beside;
  const wire::ReadFacts line = wire::read_fact_lines(wire::fact_line(fact), "fuzz");
  demand(line.problems.empty() && line.facts.size() == 1 && line.facts[0].body == lenient.body);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  const std::string_view text(reinterpret_cast<const char*>(data) + 1, size - 1);
  const std::vector<facts::Row>& table = facts::table();
  use(table[data[0] % table.size()], text);
  wire::read_fact_lines(text, "fuzz");
  return 0;
}
