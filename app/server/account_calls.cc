#include "server/account_calls.h"

#include <fmt/format.h>

#include <algorithm>

#include "paper/qr.h"
#include "paper/write.h"
#include "wire/json_text.h"
#include "words/words.h"

namespace steamworthy::server {
namespace {

using wire::JsonObject;
using wire::Need;
using wire::ObjectReader;

std::string cookie_text(std::string_view name, std::string_view value, bool secure,
                        std::int64_t seconds) {
  return fmt::format("{}={}; Path=/; Max-Age={}; HttpOnly; SameSite=Strict{}", name, value, seconds,
                     secure ? "; Secure" : "");
}

std::string roles_text(closing::Roles roles, const words::Style& style) {
  std::string text;
  for (const facts::RoleName role : service::each_of(roles)) {
    text +=
        (text.empty() ? "" : ", ") +
        words::label(
            fmt::format("{}.{}", facts::Words<facts::RoleName>::family, facts::token(role)), style);
  }
  return text;
}

std::string person_json(const std::string& who, const service::Person& person,
                        const std::vector<std::string>& secrets, const words::Style& style) {
  return JsonObject()
      .put("who", who)
      .put("name", person.name)
      .put("roles", service::role_tokens(person.roles))
      .put("roles_text", roles_text(person.roles, style))
      .put("secrets", secrets)
      .text();
}

std::string device_json(const record::DeviceId& id, const service::Device& device,
                        const Call& call) {
  return JsonObject()
      .put("device", hex(id))
      .put("name", device.name)
      .put("public_key", hex(device.key))
      .put("enrolled_at_ms", device.enrolled_at_ms)
      .put("enrolled_by", device.enrolled_by)
      .put("revoked", device.revoked)
      .put("is_this_one", call.caller.device && *call.caller.device == id)
      .put("is_node", false)
      .text();
}

std::string node_json(const House& house) {
  return JsonObject()
      .put("device", hex(house.accounts.node()))
      .put("name", "Steamworthy")
      .put("public_key", hex(house.node_key))
      .put("enrolled_at_ms", std::int64_t{0})
      .put("enrolled_by", "")
      .put("revoked", false)
      .put("is_this_one", false)
      .put("is_node", true)
      .text();
}

std::string me_json(House& house, const Call& call, const Caller& caller) {
  const auto plant = house.accounts.plant();
  JsonObject json;
  const auto device = caller.device ? plant->devices.find(*caller.device) : plant->devices.end();
  if (device == plant->devices.end()) {
    json.put_null("device");
  } else {
    json.raw("device", device_json(device->first, device->second, call));
  }
  const auto person = plant->people.find(caller.person);
  if (person == plant->people.end()) {
    json.put_null("person").put_null("session").put_null("expires_at_ms");
  } else {
    json.raw("person", person_json(person->first, person->second, {}, {}))
        .put("session", caller.session)
        .put("expires_at_ms", caller.expires_at_ms);
  }
  return json.put("plant", text(house.log.plant().id))
      .put("is_new_plant", plant->people.empty())
      .put("version", STEAMWORTHY_VERSION)
      .text();
}

void read_secret_kind(ObjectReader& form, const char* key, std::string& into) {
  form.text(key, into);
  if (!into.empty() && into != "pin" && into != "badge" && into != "passphrase") {
    form.add("wire.unknown_word", key, into, "pin, badge or passphrase",
             "is not one of the words that may stand here");
  }
}

void read_roles(ObjectReader& form, std::vector<facts::RoleName>& into) {
  std::vector<std::string> written;
  form.texts("roles", written);
  if (!form.has("roles")) form.missing("roles", "a list of roles");
  for (const std::string& word : written) {
    if (const auto role = facts::value_of<facts::RoleName>(word)) {
      into.push_back(*role);
    } else {
      form.add("wire.unknown_word", "roles", word,
               wire::listed(facts::all_words<facts::RoleName>()), "is not a role");
    }
  }
}

/// A secret may be left out unless it is needed.
void read_secret(ObjectReader& form, std::optional<Secret>& into, Need need) {
  Secret secret;
  form.text("secret", secret.text, need);
  read_secret_kind(form, "kind", secret.kind);
  if (form.has("secret")) into = secret;
}

template <class T>
void read_hex(ObjectReader& form, const char* key, T& into) {
  std::string written;
  form.text(key, written, Need::Required);
  const auto value = record::from_hex<T>(written);
  if (value) {
    into = *value;
  } else if (!written.empty()) {
    form.add("server.no_hex", key, written, fmt::format("{} hexadecimal digits", 2 * T::size),
             "is not of this length");
  }
}

std::string qr_svg(const std::string& link) {
  constexpr double side_mm = 60.0;
  paper::Page page;
  page.width = page.height = side_mm;
  paper::draw_code(page, {0.0, 0.0, side_mm, side_mm}, link);
  return paper::svg(page, "QR code");
}

}  // namespace

std::string enrolment_link(const std::string& origin, const std::string& code) {
  return fmt::format("{}/enrol#{}", origin, code);
}

Outcome me(House& house, const Call& call) { return answer(me_json(house, call, call.caller)); }

Outcome enrol(House& house, const Call& call) {
  NewDevice device;
  read_form(call.request.body, [&](ObjectReader& form) {
    form.text("code", device.code, Need::Required);
    form.text("device_name", device.name, Need::Required);
    read_hex(form, "public_key", device.key);
    read_hex(form, "signature", device.signature);
    if (auto first = form.table("first_person")) {
      NewPerson person;
      first->text("who", person.who, Need::Required);
      first->text("name", person.name, Need::Required);
      read_roles(*first, person.roles);
      read_secret(*first, person.secret, Need::Required);
      first->refuse_unknown();
      device.first_person = person;
    }
  });
  const Accounts::Enrolled enrolled = house.accounts.enrol(device);
  Response response = answer(JsonObject()
                                 .put("device", hex(enrolled.device))
                                 .put("plant", text(house.log.plant().id))
                                 .put("name", device.name)
                                 .text(),
                             201);
  constexpr std::int64_t five_years_s = std::int64_t{5} * 365 * 24 * 3600;
  response.headers.emplace_back(
      "Set-Cookie", cookie_text(device_cookie, enrolled.token, call.request.secure, five_years_s));
  return response;
}

Outcome make_enrolment_code(House& house, const Call& call) {
  const std::string code = house.accounts.make_code(call.caller.person, code_ms);
  const std::string link = enrolment_link(house.origin, code);
  return answer(JsonObject()
                    .put("code", code)
                    .put("link", link)
                    .put("qr_svg", qr_svg(link))
                    .put("expires_at_ms", call.now_ms + code_ms)
                    .text(),
                201);
}

Outcome sign_in(House& house, const Call& call) {
  std::string person;
  std::optional<Secret> secret;
  read_form(call.request.body, [&](ObjectReader& form) {
    form.text("person", person, Need::Required);
    read_secret(form, secret, Need::Required);
  });
  const Accounts::SignedIn done = house.accounts.sign_in(*call.caller.device, person, *secret);
  if (!call.caller.session.empty()) house.accounts.sign_out(call.caller.session);
  Caller caller = call.caller;
  caller.person = person;
  caller.session = done.session.id;
  caller.expires_at_ms = done.session.expires_at_ms;
  Response response = answer(me_json(house, call, caller), 201);
  response.headers.emplace_back("Set-Cookie", cookie_text(session_cookie, done.token,
                                                          call.request.secure, session_ms / 1000));
  return response;
}

Outcome sign_out(House& house, const Call& call) {
  house.accounts.sign_out(call.caller.session);
  Response response = no_content();
  response.headers.emplace_back("Set-Cookie",
                                cookie_text(session_cookie, "", call.request.secure, 0));
  return response;
}

Outcome sessions(House& house, const Call& call) {
  std::vector<std::string> list;
  for (const Session& session : house.accounts.sessions()) {
    list.push_back(JsonObject()
                       .put("session", session.id)
                       .put("who", session.person)
                       .put("device", hex(session.device))
                       .put("started_at_ms", session.started_at_ms)
                       .put("last_used_at_ms", session.last_used_at_ms)
                       .put("expires_at_ms", session.expires_at_ms)
                       .put("is_this_one", session.id == call.caller.session)
                       .text());
  }
  return answer(JsonObject().list("sessions", list).text());
}

Outcome end_session(House& house, const Call& call) {
  const std::vector<Session> all = house.accounts.sessions();
  const bool there = std::any_of(all.begin(), all.end(), [&](const Session& session) {
    return session.id == call.part("session");
  });
  if (!there) throw Refusal(404, "server.no_session", "there is no such session");
  house.accounts.sign_out(call.part("session"));
  return no_content();
}

Outcome people(House& house, const Call& call) {
  const words::Style style = call.style();
  const auto kinds = house.accounts.kinds_of_secret();
  const auto plant = house.accounts.plant();
  std::vector<std::string> list;
  for (const auto& [who, person] : plant->people) {
    const auto secrets = kinds.find(who);
    list.push_back(person_json(
        who, person, secrets == kinds.end() ? std::vector<std::string>{} : secrets->second, style));
  }
  return answer(JsonObject().list("people", list).text());
}

Outcome add_person(House& house, const Call& call) {
  NewPerson person;
  read_form(call.request.body, [&](ObjectReader& form) {
    form.text("who", person.who, Need::Required);
    form.text("name", person.name, Need::Required);
    read_roles(form, person.roles);
    read_secret(form, person.secret, Need::Optional);
  });
  const std::int64_t intake_no = house.accounts.add_person(person, call.caller.person);
  return answer(JsonObject().put("intake_no", intake_no).text(), 201);
}

Outcome remove_person(House& house, const Call& call) {
  const std::int64_t intake_no = house.accounts.remove_person(call.part("who"), call.caller.person);
  return answer(JsonObject().put("intake_no", intake_no).text());
}

Outcome set_secret(House& house, const Call& call) {
  Secret secret;
  Secret own;
  read_form(call.request.body, [&](ObjectReader& form) {
    form.text("secret", secret.text, Need::Required);
    form.text("kind", secret.kind, Need::Required);
    read_secret_kind(form, "kind", secret.kind);
    form.text("own_secret", own.text, Need::Required);
    read_secret_kind(form, "own_kind", own.kind);
  });
  const std::string& who = call.part("who");
  if (who != call.caller.person && !house.accounts.plant()->may(call.caller.person, leads)) {
    throw Refusal(403, "server.role",
                  "only an engineer or a lead hand may set somebody else's secret");
  }
  house.accounts.prove(call.caller.person, own, 403);
  house.accounts.set_secret(who, secret);
  return no_content();
}

Outcome devices(House& house, const Call& call) {
  const auto plant = house.accounts.plant();
  std::vector<std::string> list{node_json(house)};
  for (const auto& [id, device] : plant->devices) list.push_back(device_json(id, device, call));
  return answer(JsonObject().list("devices", list).text());
}

Outcome revoke_device(House& house, const Call& call) {
  const auto device = record::from_hex<record::DeviceId>(call.part("device"));
  if (!device) throw Refusal(404, "server.no_device", "no such device is enrolled");
  const std::int64_t intake_no = house.accounts.revoke(*device, call.caller.person);
  return answer(JsonObject().put("intake_no", intake_no).text());
}

}  // namespace steamworthy::server
