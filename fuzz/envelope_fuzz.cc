// Any bytes as a fact: they are refused with a flaw that has words, or read to an envelope that
// gives the same bytes again and that the chain and the order can be computed of.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "record/chain.h"
#include "record/envelope.h"
#include "record/sha256.h"
#include "words/words.h"

namespace {

using namespace steamworthy;

void demand(bool condition) {
  if (!condition) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes(reinterpret_cast<const char*>(data), size);
  const record::Parsed parsed = record::parse(bytes);
  if (!parsed) {
    demand(words::label(record::key(parsed.flaw)).front() != '<');
    return 0;
  }
  const record::ParsedFact& fact = *parsed.fact;
  demand(record::encode(fact.envelope, fact.body) == bytes);
  const record::Link link = record::link_of(fact.envelope, record::sha256(bytes));
  const record::Link links[] = {link, link};
  demand(record::causal_order(links).size() == 2);
  for (const record::Finding& finding : record::check_chain(links).findings) {
    demand(words::sentence(record::message(finding)).find('<') == std::string::npos);
  }
  return 0;
}
