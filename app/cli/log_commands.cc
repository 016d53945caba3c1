#include "cli/log_commands.h"

#include <fmt/format.h>

#include <optional>

#include "cli/closing_commands.h"
#include "cli/files.h"
#include "facts/moment.h"
#include "service/log_service.h"
#include "store/backup.h"
#include "store/ed25519.h"
#include "store/export.h"
#include "store/reader.h"
#include "store/store.h"
#include "wire/fact_line.h"
#include "wire/record_json.h"
#include "words/words.h"

namespace steamworthy::cli {
namespace {

constexpr int done = 0;
constexpr int failed = 1;

void say(const std::string& text) { std::fwrite(text.data(), 1, text.size(), stdout); }

std::string scope_text(const record::Scope& scope) {
  return scope.kind == record::ScopeKind::Plant ? "plant" : text(scope.id);
}

int create(const LogOptions& options) {
  store::RealSurroundings world;
  store::create_store(options.store, world);
  store::Store store(options.store, world);
  say(
      fmt::format("{}: a new, empty store.\nplant  {}\ndevice {}\nkey    {}\n"
                  "Its private key is {}: whoever has it can sign as this device.\n",
                  base_name(options.store), text(store.log().plant().id), hex(store.log().device()),
                  hex(store.log().keys().front()), base_name(store::key_path(options.store))));
  return done;
}

int append(const LogOptions& options) {
  const std::string lines = read_file(options.file);
  store::RealSurroundings world;
  store::Store store(options.store, world);
  const service::Entered entered =
      service::enter_facts(store.log(), world, lines, base_name(options.file), options.closing,
                           options.script ? wire::LogKeys::LeaveOut : wire::LogKeys::Refuse);
  for (const auto& [name, scope] : entered.begun) {
    say(fmt::format("closing {} begins: {}\n", name, text(scope.id)));
  }
  for (const store::Receipt& receipt : entered.receipts) {
    say(fmt::format("{} {} {}\n", receipt.intake_no, text(receipt.id), hex(receipt.hash)));
  }
  say(fmt::format("{} facts stored and synced.\n", entered.receipts.size()));
  return done;
}

int list(const LogOptions& options) {
  const store::StoreContents contents = store::read_store(options.store);
  std::optional<record::Scope> scope;
  if (!options.closing.empty()) {
    scope = service::scope_named(options.closing, contents.plant, "--closing");
  }
  std::optional<record::Scope> last;
  for (const service::Listed& fact : service::list_facts(contents.facts, scope)) {
    const record::Envelope& e = fact.envelope;
    if (options.json) {
      const std::string body(
          record::parse(contents.facts[static_cast<std::size_t>(fact.intake_no - 1)].sealed.bytes)
              .fact->body);
      const auto told = service::fact_of(e, body);
      if (told) say(wire::fact_line(*told) + "\n");
      continue;
    }
    if (!last || !(*last == e.scope)) {
      say(fmt::format(
          "{}{}\n", last ? "\n" : "",
          e.scope.kind == record::ScopeKind::Plant ? "Plant" : "Closing " + scope_text(e.scope)));
      last = e.scope;
    }
    say(fmt::format("{:>6}  {}  {}  {}\n", fact.intake_no,
                    facts::date_and_time(e.happened_at_ms, e.utc_offset_min),
                    hex(e.device).substr(0, 8), fact.sentence));
  }
  if (!contents.quarantined.empty()) {
    fmt::print(stderr,
               "steamworthy: {} facts were refused when they came, and are kept aside; see: "
               "steamworthy log verify\n",
               contents.quarantined.size());
  }
  return done;
}

int export_command(const LogOptions& options) {
  store::RealSurroundings world;
  store::Store store(options.store, world);
  std::optional<record::Scope> closing;
  if (!options.closing.empty()) {
    closing = service::scope_named(options.closing, store.log().plant(), "--closing");
  }
  const store::Exported exported =
      store::export_log(store.log(), options.file, closing, world.now_ms());
  say(fmt::format("{}: {} facts, {} blobs.\n", base_name(options.file), exported.facts,
                  exported.blobs));
  for (const record::Hash& hash : exported.missing_blobs) {
    say(fmt::format("A fact names blob {}, which is not in this store.\n", hex(hash)));
  }
  return done;
}

void say_all(const char* head, const std::vector<std::string>& sentences) {
  if (sentences.empty()) return;
  say(fmt::format("\n{}\n", head));
  for (const std::string& sentence : sentences) say("  - " + sentence + "\n");
}

std::vector<std::string> sentences_of(const std::vector<working::Message>& messages) {
  std::vector<std::string> sentences;
  for (const working::Message& message : messages) sentences.push_back(words::sentence(message));
  return sentences;
}

std::vector<std::string> sentences_of(const record::Report& report, record::Weight weight) {
  std::vector<std::string> sentences;
  for (const record::Finding& finding : report.findings) {
    if (weight_of(finding.what) == weight) {
      sentences.push_back(words::sentence(record::message(finding)));
    }
  }
  return sentences;
}

int verify(const LogOptions& options) {
  store::Examination examination;
  const std::string bytes = read_file(options.file);
  const bool is_store = bytes.compare(0, 15, "SQLite format 3") == 0;
  if (is_store) {
    const store::Ed25519Verifier verifier;
    examination = store::examine(options.file, verifier);
  } else {
    examination = service::verify_export(bytes, options.keys);
  }
  const record::Report& report = examination.report;
  const int code = examination.is_sound() ? done : failed;
  if (options.json) {
    say(wire::report_json(report, examination.damage) + "\n");
    return code;
  }
  say(fmt::format("{}: {}, {} facts, {} of them with a signature that holds, {} keys, {} blobs.\n",
                  base_name(options.file), is_store ? "a store" : "an export", report.facts,
                  report.verified, report.keys, report.blobs));
  std::vector<std::string> wrong = examination.damage;
  for (std::string& sentence : sentences_of(report, record::Weight::Fault)) {
    wrong.push_back(std::move(sentence));
  }
  say_all("WRONG", wrong);
  say_all("Missing", sentences_of(report, record::Weight::Missing));
  say_all("Remarks", sentences_of(report, record::Weight::Remark));
  record::Meaning meaning = record::meaning(report);
  if (!examination.damage.empty()) meaning = {{}, {{"record.not_proved.not_sound", {}}}};
  say_all("This proves", sentences_of(meaning.proves));
  say_all("This does not prove", sentences_of(meaning.not_proved));
  return code;
}

int keys(const LogOptions& options) {
  for (const record::PublicKey& key : store::read_store(options.store).keys) {
    say(fmt::format("device {}  key {}\n", hex(device_of(key)), hex(key)));
  }
  return done;
}

int backup(const LogOptions& options) {
  store::back_up(options.store, options.file);
  say(fmt::format("{}: a copy of {}, checked. It holds no private key.\n", base_name(options.file),
                  base_name(options.store)));
  return done;
}

int restore(const LogOptions& options) {
  store::RealSurroundings world;
  store::restore(options.file, options.store, world);
  store::Store store(options.store, world);
  say(
      fmt::format("{}: made of {}, checked. It signs as a new device, {}; the old one's feed ends "
                  "with the backup unless its later facts are brought in.\n",
                  base_name(options.store), base_name(options.file), hex(store.log().device())));
  return done;
}

}  // namespace

int log_command(const Commands& commands) {
  const LogOptions& options = commands.log_options;
  if (commands.log_create->parsed()) return create(options);
  if (commands.log_append->parsed()) return append(options);
  if (commands.log_list->parsed()) return list(options);
  if (commands.log_export->parsed()) return export_command(options);
  if (commands.log_verify->parsed()) return verify(options);
  if (commands.log_keys->parsed()) return keys(options);
  if (commands.log_state->parsed()) return state_command(options);
  if (commands.log_outstanding->parsed()) return outstanding_command(options);
  if (commands.log_clear->parsed()) return clear_command(options);
  if (commands.log_backup->parsed()) return backup(options);
  return restore(options);
}

}  // namespace steamworthy::cli
