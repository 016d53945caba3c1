// Checks record/export_file.h and record/inspection.h: a whole file is whole, any changed byte and
// any cut is found, and a fact changed with care (file hash made good) is still found and named.
#include "record/export_file.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "record/making_test.h"

namespace steamworthy::record {
namespace {

const FakeVerifier verifier;

struct Example {
  Example() : crew(3) {
    facts.push_back(crew.report(0, "{\"closure\":\"FW-A01\"}"));
    crew.hears(1, 0);
    facts.push_back(crew.report(1, "{}", "photo.taken", {sha256("a photo")}));
    facts.push_back(crew.report(0));
    crew.hears(2, 0);
    crew.hears(2, 1);
    facts.push_back(crew.report(2, "{}", checkpoint_kind));
  }

  std::string file() const {
    std::string out;
    ExportWriter writer([&out](std::string_view bytes) { out += bytes; },
                        {1764072000000, "steamworthy test", closing_scope()});
    for (int device = 0; device < 3; ++device) {
      if (device != left_out_key) writer.add_key(crew.key(device));
    }
    std::uint64_t intake_no = 0;
    for (const Made& fact : facts) writer.add_fact(++intake_no, fact.sealed);
    if (with_blob) writer.add_blob("a photo");
    if (with_quarantined) writer.add_quarantined({1, "bad_signature", "nonsense", {}});
    writer.end();
    return out;
  }

  Crew crew;
  std::vector<Made> facts;
  int left_out_key = -1;
  bool with_blob = true;
  bool with_quarantined = false;
};

std::size_t count(const Report& report, Fault fault) {
  return static_cast<std::size_t>(
      std::count_if(report.findings.begin(), report.findings.end(),
                    [fault](const Finding& finding) { return finding.what == fault; }));
}

bool says(const std::vector<working::Message>& messages, std::string_view key) {
  return std::any_of(messages.begin(), messages.end(),
                     [key](const working::Message& message) { return message.key == key; });
}

TEST(Export, ThatWasNotTouchedIsWhole) {
  const Example example;
  const Report report = verify_export(example.file(), verifier);
  EXPECT_TRUE(report.is_whole());
  EXPECT_TRUE(report.findings.empty());
  EXPECT_EQ(report.facts, 4u);
  EXPECT_EQ(report.verified, 4u);
  EXPECT_EQ(report.keys, 3u);
  EXPECT_EQ(report.blobs, 1u);
  const Meaning meaning = record::meaning(report);
  EXPECT_TRUE(says(meaning.proves, "record.proves.signed"));
  EXPECT_TRUE(says(meaning.proves, "record.proves.whole"));
  EXPECT_TRUE(says(meaning.proves, "record.proves.checkpoint"));
  EXPECT_TRUE(says(meaning.not_proved, "record.not_proved.truth"));
  EXPECT_TRUE(says(meaning.not_proved, "record.not_proved.whose_key"));
  // The checkpoint itself is the end of its feed, and nobody has seen that.
  EXPECT_TRUE(says(meaning.not_proved, "record.not_proved.end_of_feed"));
}

TEST(Export, SaysWhatItIsOf) {
  const std::string file = Example().file();
  const ExportContents contents = read_export(file);
  ASSERT_TRUE(contents.head);
  EXPECT_EQ(contents.head->program, "steamworthy test");
  EXPECT_EQ(contents.head->closing, closing_scope());
  EXPECT_EQ(contents.facts[2].intake_no, 3u);
}

TEST(Export, AnyChangedByteIsFound) {
  Example example;
  example.with_quarantined = true;
  const std::string file = example.file();
  ASSERT_TRUE(verify_export(file, verifier).is_sound());
  for (std::size_t i = 0; i < file.size(); ++i) {
    for (const int bit : {0, 7}) {
      std::string changed = file;
      changed[i] = static_cast<char>(changed[i] ^ (1 << bit));
      EXPECT_FALSE(verify_export(changed, verifier).is_sound()) << "byte " << i;
    }
  }
}

TEST(Export, AnyCutIsFound) {
  const std::string file = Example().file();
  for (std::size_t size = 0; size < file.size(); ++size) {
    EXPECT_FALSE(verify_export(file.substr(0, size), verifier).is_sound()) << size;
  }
  EXPECT_FALSE(verify_export(file + "x", verifier).is_sound());
}

TEST(Export, AFactChangedWithCareIsNamed) {
  Example example;
  std::string& bytes = example.facts[0].sealed.bytes;
  bytes[bytes.size() - 3] = '2';  // FW-A01 -> FW-A02, under a file hash made good
  const Report report = verify_export(example.file(), verifier);
  ASSERT_EQ(count(report, Fault::BadSignature), 1u);
  EXPECT_EQ(report.findings[0].fact.device_seq, 1u);
  EXPECT_EQ(report.findings[0].fact.feed.device, device_of(example.crew.key(0)));
  EXPECT_EQ(count(report, Fault::BrokenChain), 1u);
  EXPECT_EQ(count(report, Fault::SeenDiffers), 1u);
  const Meaning meaning = record::meaning(report);
  EXPECT_TRUE(meaning.proves.empty());
  EXPECT_TRUE(says(meaning.not_proved, "record.not_proved.not_sound"));
}

TEST(Export, AForgerWithAKeyOfHisOwnIsFound) {
  // The whole of a feed signed anew under another key has another device's name.
  Example example;
  FakeSigner forger(99);
  example.facts[2].sealed.signature = forger.sign(example.facts[2].sealed.bytes);
  EXPECT_EQ(count(verify_export(example.file(), verifier), Fault::BadSignature), 1u);
}

TEST(Export, FactsTakenOutAreMissing) {
  for (std::size_t taken = 0; taken < 3; ++taken) {
    Example example;
    example.facts.erase(example.facts.begin() + static_cast<long>(taken));
    const Report report = verify_export(example.file(), verifier);
    EXPECT_TRUE(report.is_sound());
    EXPECT_FALSE(report.is_whole()) << taken;
    EXPECT_TRUE(says(meaning(report).not_proved, "record.not_proved.missing"));
    EXPECT_FALSE(says(meaning(report).proves, "record.proves.whole"));
  }
}

TEST(Export, WithoutAKeyTheFactIsNotTaken) {
  Example example;
  example.left_out_key = 1;
  const Report report = verify_export(example.file(), verifier);
  ASSERT_EQ(count(report, Fault::NoKey), 1u);
  EXPECT_FALSE(report.is_sound());
  EXPECT_TRUE(verify_export(example.file(), verifier, {example.crew.key(1)}).is_whole());
}

TEST(Export, AKeyThatYouNamedIsProved) {
  const Example example;
  const Report report = verify_export(example.file(), verifier, {example.crew.key(1)});
  ASSERT_EQ(report.known_devices.size(), 1u);
  EXPECT_EQ(report.known_devices[0], device_of(example.crew.key(1)));
  EXPECT_TRUE(says(meaning(report).proves, "record.proves.known_key"));
}

TEST(Export, BlobsMissingAndUnused) {
  Example example;
  example.with_blob = false;
  EXPECT_EQ(count(verify_export(example.file(), verifier), Fault::BlobMissing), 1u);
  Example other;
  other.facts.erase(other.facts.begin() + 1);
  EXPECT_EQ(count(verify_export(other.file(), verifier), Fault::BlobUnused), 1u);
}

TEST(Export, QuarantinedFactsAreShown) {
  Example example;
  example.with_quarantined = true;
  const Report report = verify_export(example.file(), verifier);
  EXPECT_EQ(report.quarantined, 1u);
  EXPECT_EQ(count(report, Fault::Quarantined), 1u);
  EXPECT_TRUE(report.is_whole());
}

TEST(Export, OfNothingProvesNothing) {
  Example example;
  example.facts.clear();
  example.with_blob = false;
  EXPECT_TRUE(
      says(meaning(verify_export(example.file(), verifier)).not_proved, "record.not_proved.empty"));
}

TEST(Export, OtherFilesAreNoExports) {
  EXPECT_EQ(count(verify_export("", verifier), Fault::NoExport), 1u);
  EXPECT_EQ(count(verify_export("SQLite format 3", verifier), Fault::NoExport), 1u);
  std::string later = Example().file();
  later[9] = 2;
  EXPECT_EQ(count(verify_export(later, verifier), Fault::ExportFormat), 1u);
}

}  // namespace
}  // namespace steamworthy::record
