#include "server/closing_calls.h"

#include <fmt/format.h>

#include <algorithm>

#include "closing/stage.h"
#include "facts/moment.h"
#include "record/sha256.h"
#include "server/uri.h"
#include "service/closing_service.h"
#include "store/local_time.h"
#include "units/parse.h"
#include "wire/closing_json.h"
#include "wire/fact_body.h"
#include "wire/json_text.h"
#include "words/words.h"

namespace steamworthy::server {
namespace {

using wire::JsonObject;
using wire::Need;
using wire::ObjectReader;

std::string short_json(const record::Scope& scope, const service::Ledger& ledger,
                       std::int64_t now_ms, const words::Style& style) {
  const wire::ClosingView view = ledger.view(now_ms);
  const closing::Stage stage = closing::stage(ledger.state(), ledger.terms());
  const auto alarms = closing::alarms(ledger.state());
  return JsonObject()
      .put("closing", text(scope.id))
      .put("boiler", ledger.state().boiler)
      .put("stage", closing::token(stage))
      .put("stage_text", words::label(fmt::format("stage.{}", closing::token(stage)), style))
      .put("sentence", wire::closing_sentence(view, style))
      .put("since_ms", view.since_ms)
      .put("is_over", stage == closing::Stage::TakenOver)
      .put("alarms", static_cast<int>(alarms.size()))
      .text();
}

/// Everything of a fact that a page may show.
std::string shown(const wire::TakenIn& taken, const service::Plant& plant,
                  const words::Style& style) {
  const facts::Fact& fact = *taken.fact;
  const auto person = plant.people.find(fact.person);
  const auto id = record::from_hex<record::DeviceId>(fact.device);
  const auto device = id ? plant.devices.find(*id) : plant.devices.end();
  const auto* unread = std::get_if<facts::Unread>(&fact.body);
  JsonObject json;
  json.put("intake_no", taken.intake_no)
      .put("id", fact.id)
      .put("kind", facts::kind_of(fact.body).token)
      .put("kind_version", fact.version)
      .put("person", fact.person)
      .put("person_name", person == plant.people.end() ? fact.person : person->second.name)
      .put("device", fact.device)
      .put("device_name", device == plant.devices.end() ? "" : device->second.name)
      .put("device_seq", fact.device_seq)
      .put("happened_at_ms", fact.happened_at_ms)
      .put("precision", facts::token(fact.precision))
      .put("recorded_at_ms", fact.recorded_at_ms)
      .put("utc_offset_min", fact.utc_offset_min)
      .put("when_text", facts::date_and_time(fact.happened_at_ms, fact.utc_offset_min))
      .put("sentence", words::sentence(facts::tell(fact), style))
      .put("note", fact.beside.note)
      .put("photos", fact.beside.photos)
      .put("is_readable", unread == nullptr);
  if (unread != nullptr) {
    json.put_null("body");
  } else {
    json.raw("body", wire::body_json(fact.body, fact.beside));
  }
  return json.text();
}

/// Whether a fact's body names a tag.
bool is_about(const facts::Fact& fact, const std::string& tag) {
  const std::string body = wire::body_json(fact.body, fact.beside);
  return body.find(wire::json_string(tag)) != std::string::npos;
}

std::string be32(std::size_t number) {
  std::string bytes;
  for (int shift = 24; shift >= 0; shift -= 8) bytes += static_cast<char>(number >> shift & 0xffu);
  return bytes;
}

void read_base64(ObjectReader& form, const char* key, std::string& into) {
  std::string written;
  form.text(key, written, form.has(key) ? Need::Optional : Need::Required);
  if (auto bytes = base64_decoded(written)) {
    into = std::move(*bytes);
  } else {
    form.add("server.no_base64", key, written.substr(0, 40), "base64 with padding",
             "cannot be decoded");
  }
}

std::vector<record::SealedFact> read_facts(const std::string& body) {
  std::vector<record::SealedFact> facts;
  constexpr std::size_t most = 1000;
  read_form(body, [&](ObjectReader& form) {
    for (ObjectReader& one : form.tables("facts", "")) {
      std::string header, content, signature;
      read_base64(one, "header_base64", header);
      read_base64(one, "body_base64", content);
      read_base64(one, "signature_base64", signature);
      one.refuse_unknown();
      record::SealedFact fact;
      if (const auto sign = record::from_bytes<record::Signature>(signature)) {
        fact.signature = *sign;
      } else if (!signature.empty()) {
        one.add("server.no_base64", "signature_base64", "", "64 bytes",
                "is not as long as a signature");
      }
      fact.bytes = header + be32(content.size()) + content;
      facts.push_back(std::move(fact));
    }
    if (facts.empty()) form.missing("facts", "at least one fact");
    if (facts.size() > most) {
      form.add("server.too_many_facts", "facts", std::to_string(facts.size()), "at most 1000",
               "are more than one call takes");
    }
  });
  return facts;
}

/// A fact must be one, of this closing, made by the device that sends it, told
/// by somebody who has signed in there. What it says is nobody's business here.
record::Uuid check_fact(const House& house, const Call& call, const record::SealedFact& fact,
                        std::size_t at) {
  const std::string field = fmt::format("facts[{}]", at);
  const auto refuse = [&](int status, const char* code, const std::string& sentence) {
    throw Refusal(status, code, fmt::format("{}: {}", field, sentence),
                  {{code, "", 0, field, "", "", sentence}});
  };
  const record::Parsed parsed = record::parse(fact.bytes);
  if (!parsed) {
    refuse(400, "server.not_a_fact",
           "is no fact: " + words::phrase({std::string(key(parsed.flaw)), {}}));
  }
  const record::Envelope& e = parsed.fact->envelope;
  if (!(e.scope == scope_of(call.closing()))) {
    refuse(400, "server.other_closing", "belongs to another closing");
  }
  if (!(e.device == *call.caller.device)) {
    refuse(403, "server.other_device", "was made by another device");
  }
  // Somebody who signed out since may have told it: the feed must not break for
  // that.
  if (!e.person.empty() && !house.accounts.was_here(e.device, e.person)) {
    refuse(403, "server.other_person", "is told by somebody who never signed in at this device");
  }
  return e.id;
}

std::string receipt_json(const record::Uuid& id, const store::Received& received) {
  return JsonObject()
      .put("id", text(id))
      .put("intake_no", received.intake_no)
      .put("doubled", received.how == store::Intake::Known)
      .put("put_aside", received.reason)
      .text();
}

closing::Clearance asked_for(const Call& call) {
  closing::Clearance clearance;
  const std::string step = call.asked("step").value_or("");
  const auto known = facts::value_of<facts::StepName>(step);
  if (!known) {
    throw Refusal(400, "server.bad_query",
                  fmt::format("step: \"{}\" is not one of {}", step,
                              wire::listed(facts::all_words<facts::StepName>())));
  }
  clearance.step = *known;
  clearance.subject = call.asked("subject").value_or("");
  if (const auto bar = call.number("up_to_bar_gauge")) {
    clearance.up_to = units::GaugePressure::from_si(*bar * 1e5);
  }
  return clearance;
}

struct ClearanceForm {
  closing::Clearance clearance;
  Secret own;
  std::string second;
  Secret second_secret;
};

ClearanceForm read_clearance(const std::string& body) {
  ClearanceForm read;
  read_form(body, [&](ObjectReader& form) {
    read_word(form, "step", read.clearance.step, Need::Required);
    form.text("subject", read.clearance.subject);
    form.measure("up_to", read.clearance.up_to, units::Kind::GaugePressure);
    form.text("secret", read.own.text, Need::Required);
    form.text("kind", read.own.kind);
    form.text("second", read.second, Need::Required);
    form.text("second_secret", read.second_secret.text, Need::Required);
    form.text("second_kind", read.second_secret.kind);
  });
  return read;
}

}  // namespace

Outcome plant(House& house, const Call& call) {
  const words::Style style = call.style();
  const auto plant = house.accounts.plant();
  std::vector<std::string> people;
  for (const auto& [who, person] : plant->people) {
    people.push_back(JsonObject()
                         .put("who", who)
                         .put("name", person.name)
                         .put("roles", service::role_tokens(person.roles))
                         .text());
  }
  std::vector<std::string> boilers;
  std::int64_t newest = 0;
  const auto known_boilers = house.closings.boilers();
  house.closings.read([&](const service::ClosingBook& book) {
    newest = book.intake_no();
    std::map<std::string, std::vector<std::string>> closings;
    for (const record::Scope& scope : book.closings()) {
      const service::Ledger& ledger = book.ledger(scope);
      closings[ledger.state().boiler].push_back(short_json(scope, ledger, call.now_ms, style));
    }
    for (const auto& [tag, known] : known_boilers) {
      boilers.push_back(JsonObject()
                            .put("boiler", tag)
                            .put("name", known.boiler->name)
                            .put("description_sha256", known.sha256)
                            .list("closings", closings[tag])
                            .text());
      closings.erase(tag);
    }
    for (const auto& [tag, list] : closings) {
      boilers.push_back(JsonObject()
                            .put("boiler", tag)
                            .put("name", tag)
                            .put("description_sha256", "")
                            .list("closings", list)
                            .text());
    }
  });
  return answer(JsonObject()
                    .put("plant", text(house.log.plant().id))
                    .put("intake_no", newest)
                    .list("boilers", boilers)
                    .list("people", people)
                    .text());
}

Outcome begin_closing(House& house, const Call& call) {
  std::string boiler;
  read_form(call.request.body,
            [&](ObjectReader& form) { form.text("boiler", boiler, Need::Required); });
  const auto boilers = house.closings.boilers();
  const auto known = std::find_if(boilers.begin(), boilers.end(),
                                  [&](const auto& one) { return one.first == boiler; });
  if (known == boilers.end()) {
    throw Refusal(404, "server.no_boiler", "there is no boiler of this tag here");
  }
  record::Scope begun;
  std::int64_t newest = 0;
  house.writer.run([&] {
    house.closings.write([&](service::ClosingBook& book) {
      for (const record::Scope& scope : book.closings()) {
        const closing::State& state = book.ledger(scope).state();
        if (state.boiler == boiler &&
            closing::stage(state, book.ledger(scope).terms()) != closing::Stage::TakenOver) {
          throw Refusal(409, "server.closing_open",
                        "a closing of this boiler is under way: " + text(scope.id));
        }
      }
      record::RandomForUuid random;
      house.world.random(random);
      begun = service::begin_closing(house.log, book, record::uuid7(call.now_ms, random), boiler,
                                     known->second.sha256, call.caller.person, call.now_ms,
                                     store::utc_offset_min(call.now_ms));
      newest = book.ledger(begun).intake_no();
    });
  });
  return answer(JsonObject().put("closing", text(begun.id)).put("intake_no", newest).text(), 201);
}

Outcome closing(House& house, const Call& call) {
  Response response;
  response.body = house.closings.view(call.closing(), call.style());
  return response;
}

Outcome facts_of(House& house, const Call& call) {
  const words::Style style = call.style();
  constexpr std::int64_t greatest = std::int64_t{1} << 53;
  const auto limit = static_cast<std::size_t>(call.whole("limit", 100, 1, 500));
  const std::int64_t after = call.whole("after", 0, 0, greatest);
  std::int64_t before = call.whole("before", 0, 0, greatest);
  if (call.asked("after") && call.asked("before")) {
    throw Refusal(400, "server.bad_query", "after or before, not both");
  }
  const std::optional<std::string> about = call.asked("about");
  const bool newest_first = call.asked("before").has_value();
  if (before == 0) before = greatest;
  const auto plant = house.accounts.plant();
  std::vector<std::string> list;
  bool more = false;
  std::int64_t newest = 0;
  house.closings.read([&](const service::ClosingBook& book) {
    const service::Ledger& ledger = book.ledger(scope_of(call.closing()));
    newest = ledger.intake_no();
    std::vector<wire::TakenIn> facts =
        ledger.facts_after(newest_first ? 0 : after, std::numeric_limits<std::size_t>::max());
    if (newest_first) std::reverse(facts.begin(), facts.end());
    for (const wire::TakenIn& taken : facts) {
      if (newest_first && taken.intake_no >= before) continue;
      if (about && !is_about(*taken.fact, *about)) continue;
      if (list.size() == limit) {
        more = true;
        break;
      }
      list.push_back(shown(taken, *plant, style));
    }
  });
  return answer(JsonObject().list("facts", list).put("intake_no", newest).put("more", more).text());
}

Outcome report_facts(House& house, const Call& call) {
  const record::Uuid closing = call.closing();
  house.closings.newest(closing);  // throws where there is no such closing
  Taking taking;
  taking.facts = read_facts(call.request.body);
  std::vector<record::Uuid> ids;
  for (std::size_t i = 0; i < taking.facts.size(); ++i) {
    ids.push_back(check_fact(house, call, taking.facts[i], i));
  }
  taking.finish = [&house, closing, ids](const std::vector<store::Received>& received) {
    std::vector<std::string> receipts;
    for (std::size_t i = 0; i < received.size(); ++i) {
      receipts.push_back(receipt_json(ids[i], received[i]));
    }
    std::string alarms;
    house.closings.read([&](const service::ClosingBook& book) {
      alarms = wire::alarms_json(book.ledger(scope_of(closing)).state(), {});
    });
    return answer(JsonObject().list("receipts", receipts).raw("alarms", alarms).text());
  };
  return taking;
}

Outcome feed(House& house, const Call& call) {
  const record::Scope scope = scope_of(call.closing());
  const std::int64_t newest = house.closings.newest(scope.id);
  record::Head own;
  std::vector<std::string> seen;
  for (const record::Head& head : house.log.heads(scope)) {
    if (head.device == *call.caller.device) {
      own = head;
      continue;
    }
    seen.push_back(JsonObject()
                       .put("device", hex(head.device))
                       .put("device_seq", head.device_seq)
                       .put("hash", hex(head.hash))
                       .text());
  }
  return answer(JsonObject()
                    .put("closing", text(scope.id))
                    .put("device", hex(*call.caller.device))
                    .put("device_seq", own.device_seq)
                    .put("hash", hex(own.hash))
                    .list("seen", seen)
                    .put("intake_no", newest)
                    .text());
}

Outcome outstanding(House& house, const Call& call) {
  const closing::Clearance clearance = asked_for(call);
  const words::Style style = call.style();
  std::string json;
  house.closings.read([&](const service::ClosingBook& book) {
    const service::Ledger& ledger = book.ledger(scope_of(call.closing()));
    std::vector<Problem> faults = service::faults_of(clearance, ledger.terms());
    if (!faults.empty()) throw BadInput(std::move(faults));
    json = wire::outstanding_json(clearance, ledger.outstanding(clearance, call.now_ms),
                                  ledger.intake_no(), style);
  });
  return answer(json);
}

Outcome give_clearance(House& house, const Call& call) {
  const ClearanceForm form = read_clearance(call.request.body);
  const words::Style style = call.style();
  const record::Scope scope = scope_of(call.closing());
  house.closings.newest(scope.id);
  if (form.second == call.caller.person) {
    throw Refusal(422, "server.two_names", "the second person must be another one");
  }
  house.accounts.prove(call.caller.person, form.own, 403);
  house.accounts.prove(form.second, form.second_secret, 403);
  service::Asking asking{form.clearance, call.caller.person, form.second, 0};
  std::string json;
  std::int64_t newest = 0;
  house.writer.run([&] {
    house.closings.write([&](service::ClosingBook& book) {
      const service::Clearing clearing =
          service::give_clearance(house.log, book, scope, asking, call.now_ms);
      const service::Ledger& ledger = book.ledger(scope);
      if (!clearing.is_given()) {
        throw Refusal(409, "server.outstanding", "something stands in the way of this step", {},
                      wire::outstanding_items_json(clearing.outstanding, style));
      }
      newest = ledger.intake_no();
      json = wire::clearance_json(ledger.view(call.now_ms), form.clearance.step,
                                  form.clearance.subject, style);
    });
  });
  return answer(JsonObject().put("intake_no", newest).raw("clearance", json).text(), 201);
}

Outcome events(House& house, const Call& call) {
  const record::Uuid closing = call.closing();
  constexpr std::int64_t greatest = std::int64_t{1} << 53;
  Response response;
  Follow follow;
  follow.closing = closing;
  follow.newest = house.closings.newest(closing);
  follow.us_units = call.style().print.system == units::System::Us;
  Call with_header = call;
  const std::string_view last = call.request.header("last-event-id");
  if (!last.empty()) with_header.query["after"] = last;
  if (with_header.asked("after")) follow.after = with_header.whole("after", 0, 0, greatest);
  response.type = "text/event-stream";
  response.follow = follow;
  return response;
}

}  // namespace steamworthy::server
