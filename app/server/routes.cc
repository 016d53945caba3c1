#include "server/routes.h"

#include "server/account_calls.h"
#include "server/plain_calls.h"

namespace steamworthy::server {
namespace {

constexpr std::string_view json = "application/json";

constexpr Route table[] = {
    {Method::Get, "/api/health", "health", Where::Loop, Who::Anybody, "", "", 0, health},
    {Method::Get, "/api/openapi.json", "openapi", Where::Loop, Who::Anybody, "", "", 0, openapi},
    {Method::Get, "/api/me", "me", Where::Loop, Who::Anybody, "", "", 0, me},
    {Method::Post, "/api/enrolments", "enrol", Where::Heavy, Who::Anybody, "", json, usual_body,
     enrol},
    {Method::Post, "/api/enrolment-codes", "make_enrolment_code", Where::Heavy, Who::Lead, "", "",
     0, make_enrolment_code},
    {Method::Post, "/api/sessions", "sign_in", Where::Heavy, Who::Device, "", json, usual_body,
     sign_in},
    {Method::Delete, "/api/sessions", "sign_out", Where::Heavy, Who::Person, "", "", 0, sign_out},
    {Method::Get, "/api/sessions", "sessions", Where::Loop, Who::Lead, "", "", 0, sessions},
    {Method::Delete, "/api/sessions/{session}", "end_session", Where::Heavy, Who::Lead, "", "", 0,
     end_session},
    {Method::Get, "/api/people", "people", Where::Reader, Who::Device, "units language", "", 0,
     people},
    {Method::Post, "/api/people", "add_person", Where::Heavy, Who::Lead, "", json, usual_body,
     add_person},
    {Method::Delete, "/api/people/{who}", "remove_person", Where::Heavy, Who::Lead, "", "", 0,
     remove_person},
    {Method::Put, "/api/people/{who}/secrets", "set_secret", Where::Heavy, Who::Person, "", json,
     usual_body, set_secret},
    {Method::Get, "/api/devices", "devices", Where::Loop, Who::Person, "", "", 0, devices},
    {Method::Delete, "/api/devices/{device}", "revoke_device", Where::Heavy, Who::Lead, "", "", 0,
     revoke_device},
};

}  // namespace

std::string_view words_of(Who who) {
  switch (who) {
    case Who::Anybody:
      return "anybody";
    case Who::Device:
      return "device";
    case Who::Person:
      return "signed in";
    case Who::Lead:
      return "engineer or lead_hand";
    case Who::Permitter:
      return "engineer, lead_hand or watch_engineer";
  }
  return "nobody";
}

std::span<const Route> routes() { return table; }

}  // namespace steamworthy::server
