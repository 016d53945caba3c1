#include "server/routes.h"

#include "server/account_calls.h"
#include "server/closing_calls.h"
#include "server/paper_calls.h"
#include "server/plain_calls.h"
#include "server/repair_calls.h"
#include "server/test_calls.h"

namespace steamworthy::server {
namespace {

constexpr std::string_view json = "application/json";
constexpr std::string_view speech = "units language";
// What is said of a test, for its sheet and its papers.
constexpr std::string_view about_test =
    "rule work authority pick own_pressure reason ceiling water metal hold heater trait "
    "units language";
constexpr std::string_view about_paper =
    "rule work authority pick own_pressure reason ceiling water metal hold heater trait paper "
    "units language";
constexpr std::size_t facts_body = 8 * mib;
constexpr std::size_t photo_body = 16 * mib;
constexpr std::size_t log_body = 32 * mib;

constexpr Route table[] = {
    {Method::Get, "/api/health", "health", Where::Loop, Who::Anybody, "", "", 0, health},
    {Method::Get, "/api/openapi.json", "openapi", Where::Loop, Who::Anybody, "", "", 0, openapi},
    {Method::Get, "/api/me", "me", Where::Loop, Who::Anybody, "", "", 0, me},
    {Method::Post, "/api/enrolments", "enrol", Where::Heavy, Who::Anybody, "", json, 0, enrol},
    {Method::Post, "/api/enrolment-codes", "make_enrolment_code", Where::Heavy, Who::Lead, "", "",
     0, make_enrolment_code},
    {Method::Post, "/api/sessions", "sign_in", Where::Heavy, Who::Device, "", json, 0, sign_in},
    {Method::Delete, "/api/sessions", "sign_out", Where::Heavy, Who::Person, "", "", 0, sign_out},
    {Method::Get, "/api/sessions", "sessions", Where::Loop, Who::Lead, "", "", 0, sessions},
    {Method::Delete, "/api/sessions/{session}", "end_session", Where::Heavy, Who::Lead, "", "", 0,
     end_session},
    {Method::Get, "/api/people", "people", Where::Reader, Who::Device, "units language", "", 0,
     people},
    {Method::Post, "/api/people", "add_person", Where::Heavy, Who::Lead, "", json, 0, add_person},
    {Method::Delete, "/api/people/{who}", "remove_person", Where::Heavy, Who::Lead, "", "", 0,
     remove_person},
    {Method::Put, "/api/people/{who}/secrets", "set_secret", Where::Heavy, Who::Person, "", json, 0,
     set_secret},
    {Method::Get, "/api/devices", "devices", Where::Loop, Who::Person, "", "", 0, devices},
    {Method::Delete, "/api/devices/{device}", "revoke_device", Where::Heavy, Who::Lead, "", "", 0,
     revoke_device},
    {Method::Get, "/api/rules", "rules", Where::Reader, Who::Person, "", "", 0, rules_shipped},
    {Method::Get, "/api/site/limits", "site_limits", Where::Loop, Who::Person, "", "", 0,
     site_limits},
    {Method::Put, "/api/site/limits", "set_site_limits", Where::Heavy, Who::Lead, "", json, 0,
     set_site_limits},
    {Method::Get, "/api/plant", "plant", Where::Reader, Who::Person, speech, "", 0, plant},
    {Method::Post, "/api/closings", "begin_closing", Where::Heavy, Who::Lead, "", json, 0,
     begin_closing},
    {Method::Get, "/api/closings/{closing}", "closing", Where::Reader, Who::Person, speech, "", 0,
     closing},
    {Method::Get, "/api/closings/{closing}/facts", "facts", Where::Reader, Who::Person,
     "after before limit about units language", "", 0, facts_of},
    {Method::Post, "/api/closings/{closing}/facts", "report_facts", Where::Reader, Who::Person, "",
     json, facts_body, report_facts},
    {Method::Get, "/api/closings/{closing}/feed", "feed", Where::Reader, Who::Person, "", "", 0,
     feed},
    {Method::Get, "/api/closings/{closing}/outstanding", "outstanding", Where::Reader, Who::Person,
     "step subject up_to_bar_gauge units language", "", 0, outstanding},
    {Method::Post, "/api/closings/{closing}/clearances", "give_clearance", Where::Heavy, Who::Lead,
     speech, json, 0, give_clearance},
    {Method::Get, "/api/closings/{closing}/events", "events", Where::Reader, Who::Person, "after",
     "", 0, events},
    {Method::Get, "/api/closings/{closing}/drawing.svg", "drawing", Where::Heavy, Who::Person,
     speech, "", 0, drawing},
    {Method::Get, "/api/closings/{closing}/papers/{kind}", "paper", Where::Heavy, Who::Person,
     about_paper, "", 0, paper},
    {Method::Get, "/api/closings/{closing}/record.pdf", "record", Where::Heavy, Who::Person,
     about_paper, "", 0, record_paper},
    {Method::Get, "/api/closings/{closing}/export", "export_closing", Where::Heavy, Who::Person, "",
     "", 0, export_closing},
    {Method::Get, "/api/closings/{closing}/sheet", "sheet", Where::Heavy, Who::Person, about_test,
     "", 0, sheet},
    {Method::Post, "/api/closings/{closing}/sheet", "issue_sheet", Where::Heavy, Who::Lead, speech,
     json, 0, issue_sheet},
    {Method::Post, "/api/closings/{closing}/traces", "trace", Where::Heavy, Who::Person,
     "accept name columns column_units started_at_ms gauge units language", "text/csv", log_body,
     trace},
    {Method::Get, "/api/closings/{closing}/gauge", "gauge", Where::Heavy, Who::Person,
     "trace leak_of_concern_ml_per_min units language", "", 0, gauge},
    {Method::Get, "/api/closings/{closing}/repair", "repair_plan", Where::Heavy, Who::Person,
     "cure drain_rate fill_rate margin let_down repairs raise_and_hold walkdown walkdown_left "
     "units language",
     "", 0, repair_plan},
    {Method::Post, "/api/closings/{closing}/blobs", "add_blob", Where::Heavy, Who::Person, "",
     "image/jpeg image/png application/pdf", photo_body, add_blob},
    {Method::Get, "/api/blobs/{sha256}", "blob", Where::Heavy, Who::Person, "", "", 0, blob},
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
  }
  return "nobody";
}

std::span<const Route> routes() { return table; }

}  // namespace steamworthy::server
