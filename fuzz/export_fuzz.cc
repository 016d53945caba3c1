// Any bytes as an export: they are read and inspected, and every finding and every sentence on what
// is proved has words. The file's own hash is made good half of the time, so that what lies behind
// it is reached; signatures hold where their first byte says so.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "record/export_file.h"
#include "record/sha256.h"
#include "words/words.h"

namespace {

using namespace steamworthy;

void demand(bool condition) {
  if (!condition) std::abort();
}

class OddVerifier : public record::Verifier {
 public:
  bool verify(const record::PublicKey&, std::string_view,
              const record::Signature& signature) const override {
    return signature.bytes[0] % 4 != 3;
  }
};

/// Puts the right hash at the file's end.
std::string made_good(std::string_view file) {
  std::string out(file);
  if (out.size() < 76) return out;
  const record::Hash hash = record::sha256(std::string_view(out).substr(0, out.size() - 76));
  out.replace(out.size() - 32, 32, hash.view());
  return out;
}

void use(std::string_view file) {
  const record::Report report = record::verify_export(file, OddVerifier());
  for (const record::Finding& finding : report.findings) {
    demand(words::sentence(record::message(finding)).find("<record.") == std::string::npos);
  }
  const record::Meaning meaning = record::meaning(report);
  demand(report.is_sound() || meaning.proves.empty());
  demand(!meaning.not_proved.empty());
  for (const auto* messages : {&meaning.proves, &meaning.not_proved}) {
    for (const working::Message& message : *messages) {
      demand(words::sentence(message).find("<record.") == std::string::npos);
    }
  }
  demand(!report.is_whole() || report.is_sound());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes(reinterpret_cast<const char*>(data), size);
  use(bytes);
  use(made_good(bytes));
  return 0;
}
