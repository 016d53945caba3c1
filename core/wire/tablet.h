// What a page asks of core on the tablet: one JSON text in, one JSON text out.
//
// The page has its clock, randomness, key and memory; core has every rule. wasm/face.cc hands these
// to the browser as they are; tablet_test.cc and web/test/core_test.ts hold both to the same bytes.
#pragma once

#include <string>
#include <string_view>

namespace steamworthy::wire {

/// Answers a question; never throws. What cannot be answered gives
/// {"code", "message", "problems": [{"code", "field", "found", "accepted", "message"}]}.
///
///   "fact"      make_fact()
///   "outstanding"  answer_outstanding()
///   "quantity"  {"kind": "gauge_pressure", "text": "650 psi", "units"} ->
///               {"value_bar_gauge": 44.8, "text": "44.82 bar gauge", "unit_assumed": false}
///   "in_unit"   for a plot: {"kind": "gauge_pressure", "values": numbers in the unit of the kind's
///               suffix, "units"} -> {"unit": "psig", "values": [...]}
///   "label"     {"keys": ["leak_kind.gasket"], "units"} -> {"texts": ["gasket"]}
///   "words"     {"families": ["leak_kind"]} -> {"leak_kind": [{"token", "text"}]}
///   "gaps"      how a plate sits: {"closure", "shape", "width_mm", "height_mm", "long_axis_clock",
///               "makers_limit", "step", "gaps": [{"clock", "gap"}], "units"} -> fitup_json() with
///               "sentence_text", "note_texts", "figure_texts" and "verdict_of_fact" beside it
///
/// "units" is "si" (if missing) or "us"; it is also the unit that a number without one is read in.
///
/// Codes   tablet.unknown_question, tablet.bad_request, and those of what is asked.
std::string answer(std::string_view question, std::string_view request);

/// Makes a fact's bytes, to be signed by the tablet.
///
///   {"scope": "closing" | "plant", "scope_id", "random": 20 hexadecimal digits, "previous_id",
///    "device", "device_seq", "prev_hash", "seen": [{"device", "device_seq", "hash"}], "person",
///    "kind", "happened_at_ms", "happened_precision_ms", "recorded_at_ms", "utc_offset_min",
///    "blobs": [...], "fields": {...}, "units"}
///
/// `fields` are those of docs/formats/facts.md; a measured one may stand without its unit's suffix
/// as text ("pressure": "650 psi"), and then becomes the number with its suffix and the text as
/// entered. Hashes and devices are hexadecimal. The id is `id`, or where that is missing made of
/// `recorded_at_ms` and `random`, after `previous_id` if there is one.
///
/// Returns {"id", "bytes": hexadecimal, "header_size", "hash", "body"}: the header is the first
/// `header_size` bytes, then come four with the body's length.
std::string make_fact(std::string_view request);

/// What stands in the way of a clearance, by the facts that the tablet knows.
///
///   {"description": the boiler's as TOML text or JSON object, "limits": body of site.limits_set or
///    null, "people": [{"who", "roles"}], "facts": [as in read_fact_lines()], "step", "subject",
///    "up_to_bar_gauge", "now_ms", "units"} -> outstanding_json(); its "intake_no" is the number of
///    facts.
std::string answer_outstanding(std::string_view request);

}  // namespace steamworthy::wire
