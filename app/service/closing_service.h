// Use cases of a closing: append and raise alarms, give a clearance, begin a closing.
//
// Each takes the log and its book (closing_book.h), and leaves the book caught up. Facts are
// never refused here; permission is never given against them.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/error.h"
#include "service/closing_book.h"

namespace steamworthy::service {

/// Roles that may ask for and give clearances.
inline constexpr closing::Roles may_clear =
    closing::bit(facts::RoleName::LeadHand) | closing::bit(facts::RoleName::Engineer);

/// A fact by this device as a draft for the log.
store::Draft draft_of(const record::Scope& scope, const std::string& person,
                      const facts::Body& body, std::int64_t happened_at_ms, int utc_offset_min);

/// Brings the book up to the log and, in every closing whose pen this device holds, writes an
/// `alarm.raised` for each alarm that none tells of yet, so that it stays until it is taken,
/// whatever is told later; and, where a count that another device made waits to hear from this one,
/// a `device.reported`: a node holds no entry back. To be called after every append and after every
/// receive. Returns how many alarms were raised.
std::size_t raise_alarms(store::FactLog& log, ClosingBook& book, std::int64_t now_ms);

/// Appends by this device, then raise_alarms(). All or none of the drafts; throws as
/// store::FactLog::append().
std::vector<store::Receipt> append(store::FactLog& log, ClosingBook& book,
                                   const std::vector<store::Draft>& drafts, std::int64_t now_ms);

/// Begins a closing of the boiler that is described by bytes with that hash; this device joins it
/// and holds its pen. Throws as append().
record::Scope begin_closing(store::FactLog& log, ClosingBook& book, const record::Uuid& id,
                            const std::string& boiler, const std::string& description_sha256,
                            const std::string& person, std::int64_t now_ms, int utc_offset_min);

/// Who asks for a clearance, and for which.
struct Asking {
  closing::Clearance clearance;
  std::string person;
  std::string second;
  int utc_offset_min = 0;
};

/// What became of it.
struct Clearing {
  std::vector<closing::Outstanding> outstanding;  ///< empty: it was given
  std::vector<store::Receipt> receipts;           ///< of clearance.asked and clearance.given
  bool is_given() const { return outstanding.empty(); }
};

/// Gives a clearance if nothing stands in its way: `clearance.asked` and `clearance.given` under
/// this device's feed. If a fact came in between that speaks against it, it is given and lapsed at
/// once, with an alarm, and what speaks against it is returned.
///
/// Throws   BadInput "service.no_pen" if another device holds the pen; "service.no_role" if the
///          person is not a lead hand or engineer of the plant; "service.two_names" if the second
///          is missing, the same, or not known to the plant; "service.no_subject",
///          "service.no_pressure" if the step needs one. NotFound "service.unknown_closing".
Clearing give_clearance(store::FactLog& log, ClosingBook& book, const record::Scope& closing,
                        const Asking& asking, std::int64_t now_ms);

/// Faults of a clearance that somebody named: a step without the subject or pressure that it
/// needs, a subject that it cannot have.
std::vector<Problem> faults_of(const closing::Clearance& clearance, const closing::Terms& terms);

}  // namespace steamworthy::service
