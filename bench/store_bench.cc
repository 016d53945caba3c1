// The store: durable facts one by one and in batches, against raw sqlite3 that writes the very same
// bytes (already made and signed) into the same tables with the same settings; on the disk and on a
// memory file system. Signing apart. Then the verification of an export of 20,000 facts.
//
// The store's own run signs with signatures that were made beforehand in the same order, so that
// the comparison is of storing alone; its clock and chance are the same each time, so the bytes are
// too. It still does what raw does not: numbers, heads, envelope, hash, chain.
#include <benchmark/benchmark.h>
#include <sqlite3.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "record/export_file.h"
#include "record/sha256.h"
#include "store/ed25519.h"
#include "store/schema.h"
#include "store/sqlite_fact_log.h"

namespace steamworthy::store {
namespace {

class SteadySurroundings : public Surroundings {
 public:
  std::int64_t now_ms() override { return clock_ms_++; }
  void random(std::span<std::uint8_t> into) override {
    for (std::uint8_t& byte : into) {
      state_ = state_ * 6364136223846793005u + 1442695040888963407u;
      byte = static_cast<std::uint8_t>(state_ >> 56);
    }
  }

 private:
  std::int64_t clock_ms_ = 1764072000000;
  std::uint64_t state_ = 1;
};

/// Signs and remembers, or gives back what was remembered, in the same order.
class RememberingSigner : public record::Signer {
 public:
  const record::PublicKey& public_key() const override { return signer_.public_key(); }
  record::Signature sign(std::string_view bytes) override {
    if (replaying) return made[next++];
    made.push_back(signer_.sign(bytes));
    return made.back();
  }
  std::vector<record::Signature> made;
  std::size_t next = 0;
  bool replaying = false;

 private:
  Ed25519Signer signer_{Seed{}};
};

class Folder {
 public:
  explicit Folder(const std::string& base) : path_(base + "/steamworthy_bench_XXXXXX") {
    if (mkdtemp(path_.data()) == nullptr) std::abort();
  }
  ~Folder() { std::filesystem::remove_all(path_); }
  std::string file() { return path_ + "/" + std::to_string(++count_); }

 private:
  std::string path_;
  int count_ = 0;
};

const char* const places[] = {"/dev/shm", "/var/tmp"};

Draft draft() {
  Draft draft;
  record::RandomForUuid random{};
  draft.scope = {record::ScopeKind::Closing, record::uuid7(1764072000000, random)};
  draft.person = "P-01";
  draft.kind = "closure.looked_at";
  draft.happened_at_ms = 1764072000000;
  draft.happened_precision_ms = 60000;
  draft.body =
      R"({"closure":"FW-A07","seat":"clean","plate":"clean","note":"wire-brushed, no pits"})";
  return draft;
}

std::unique_ptr<Database> new_database(const std::string& path) {
  auto database = std::make_unique<Database>(path, OpenMode::Create);
  create_tables(*database, record::uuid7(1, {}));
  prepare_to_write(*database);
  return database;
}

struct Sample {
  std::vector<StoredFact> facts;
  std::vector<record::Signature> signatures;
};

/// The facts that both sides write; made once.
const Sample& sample(std::size_t count) {
  static Sample made;
  if (made.facts.size() == count) return made;
  made = {};
  Folder folder("/dev/shm");
  RememberingSigner signer;
  const Ed25519Verifier verifier;
  SteadySurroundings surroundings;
  SqliteFactLog log(new_database(folder.file()), signer, verifier, surroundings);
  for (std::size_t i = 0; i < count; i += 1000) {
    log.append(std::vector<Draft>(std::min<std::size_t>(1000, count - i), draft()));
  }
  made.facts = log.read(0, count);
  made.signatures = signer.made;
  return made;
}

/// range(0): index of the place; range(1): facts a commit.
void BM_Store(benchmark::State& state) {
  const auto batch = static_cast<std::size_t>(state.range(1));
  const std::size_t count = batch == 1 ? (state.range(0) == 0 ? 4000 : 400) : 20000;
  const Sample& facts = sample(count);
  Folder folder(places[state.range(0)]);
  const std::vector<Draft> drafts(batch, draft());
  for (auto _ : state) {
    state.PauseTiming();
    RememberingSigner signer;
    signer.made = facts.signatures;
    signer.replaying = true;
    const Ed25519Verifier verifier;
    SteadySurroundings surroundings;
    SqliteFactLog log(new_database(folder.file()), signer, verifier, surroundings);
    state.ResumeTiming();
    for (std::size_t i = 0; i < count; i += batch) log.append(drafts);
    state.PauseTiming();
    const auto last = log.read(static_cast<std::int64_t>(count) - 1, 1);
    if (last.size() != 1 || last[0].sealed.bytes != facts.facts.back().sealed.bytes) std::abort();
    state.ResumeTiming();
  }
  state.SetItemsProcessed(static_cast<std::int64_t>(count) * state.iterations());
  state.SetLabel(places[state.range(0)]);
}

/// The same bytes by sqlite3 alone: one prepared statement, the same tables and settings.
void BM_Raw(benchmark::State& state) {
  const auto batch = static_cast<std::size_t>(state.range(1));
  const std::size_t count = batch == 1 ? (state.range(0) == 0 ? 4000 : 400) : 20000;
  const Sample& facts = sample(count);
  Folder folder(places[state.range(0)]);
  std::vector<record::Hash> hashes;
  for (const StoredFact& fact : facts.facts) hashes.push_back(record::sha256(fact.sealed.bytes));
  const record::Envelope envelope = record::parse(facts.facts[0].sealed.bytes).fact->envelope;
  for (auto _ : state) {
    state.PauseTiming();
    const auto database = new_database(folder.file());
    sqlite3* handle = database->handle();
    Tables(*database).insert_feed(envelope.feed());
    sqlite3_stmt* insert = nullptr;
    sqlite3_prepare_v3(handle,
                       "INSERT INTO fact(intake_no, feed, device_seq, hash, signature, bytes)"
                       " VALUES(?, 1, ?, ?, ?, ?)",
                       -1, SQLITE_PREPARE_PERSISTENT, &insert, nullptr);
    state.ResumeTiming();
    for (std::size_t i = 0; i < count; i += batch) {
      sqlite3_exec(handle, "BEGIN IMMEDIATE", nullptr, nullptr, nullptr);
      for (std::size_t k = i; k < i + batch; ++k) {
        const record::SealedFact& fact = facts.facts[k].sealed;
        sqlite3_bind_int64(insert, 1, static_cast<std::int64_t>(k) + 1);
        sqlite3_bind_int64(insert, 2, static_cast<std::int64_t>(k) + 1);
        sqlite3_bind_blob(insert, 3, hashes[k].bytes.data(), 32, SQLITE_STATIC);
        sqlite3_bind_blob(insert, 4, fact.signature.bytes.data(), 64, SQLITE_STATIC);
        sqlite3_bind_blob(insert, 5, fact.bytes.data(), static_cast<int>(fact.bytes.size()),
                          SQLITE_STATIC);
        if (sqlite3_step(insert) != SQLITE_DONE) std::abort();
        sqlite3_reset(insert);
      }
      if (sqlite3_exec(handle, "COMMIT", nullptr, nullptr, nullptr) != SQLITE_OK) std::abort();
    }
    state.PauseTiming();
    sqlite3_finalize(insert);
    state.ResumeTiming();
  }
  state.SetItemsProcessed(static_cast<std::int64_t>(count) * state.iterations());
  state.SetLabel(places[state.range(0)]);
}

void arguments(benchmark::internal::Benchmark* bench) {
  bench->UseRealTime()->Unit(benchmark::kMillisecond)->MinTime(1.0);
}
// One after the other, so that both sides of a comparison run in the same minute.
BENCHMARK(BM_Raw)->Args({0, 1})->Apply(arguments);
BENCHMARK(BM_Store)->Args({0, 1})->Apply(arguments);
BENCHMARK(BM_Raw)->Args({0, 100})->Apply(arguments);
BENCHMARK(BM_Store)->Args({0, 100})->Apply(arguments);
BENCHMARK(BM_Raw)->Args({0, 1000})->Apply(arguments);
BENCHMARK(BM_Store)->Args({0, 1000})->Apply(arguments);
BENCHMARK(BM_Raw)->Args({1, 1})->Apply(arguments);
BENCHMARK(BM_Store)->Args({1, 1})->Apply(arguments);
BENCHMARK(BM_Raw)->Args({1, 1000})->Apply(arguments);
BENCHMARK(BM_Store)->Args({1, 1000})->Apply(arguments);

void BM_Sign(benchmark::State& state) {
  Ed25519Signer signer{Seed{}};
  const std::string bytes = sample(20000).facts[0].sealed.bytes;
  for (auto _ : state) benchmark::DoNotOptimize(signer.sign(bytes));
}
BENCHMARK(BM_Sign)->Unit(benchmark::kMicrosecond);

void BM_VerifyExport(benchmark::State& state) {
  const Sample& facts = sample(20000);
  std::string file;
  record::ExportWriter writer([&file](std::string_view bytes) { file += bytes; }, {});
  writer.add_key(Ed25519Signer(Seed{}).public_key());
  for (const StoredFact& fact : facts.facts) {
    writer.add_fact(static_cast<std::uint64_t>(fact.intake_no), fact.sealed);
  }
  writer.end();
  const Ed25519Verifier verifier;
  for (auto _ : state) {
    if (!record::verify_export(file, verifier).is_whole()) std::abort();
  }
  state.SetLabel("20,000 facts, " + std::to_string(file.size() / 1000) + " kB");
}
BENCHMARK(BM_VerifyExport)->Unit(benchmark::kMillisecond);

void BM_InspectWithoutSignatures(benchmark::State& state) {
  struct Trusting : record::Verifier {
    bool verify(const record::PublicKey&, std::string_view,
                const record::Signature&) const override {
      return true;
    }
  };
  const Sample& facts = sample(20000);
  for (auto _ : state) {
    const Trusting verifier;
    record::Inspection inspection(verifier);
    inspection.add_key(Ed25519Signer(Seed{}).public_key());
    for (const StoredFact& fact : facts.facts) {
      inspection.add_fact(fact.sealed.bytes, fact.sealed.signature, "");
    }
    if (!inspection.report().is_whole()) std::abort();
  }
}
BENCHMARK(BM_InspectWithoutSignatures)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace steamworthy::store
