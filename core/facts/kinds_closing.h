// Kinds: the closing itself, its devices, shifts, permission, what was issued and signed.
#pragma once

#include <vector>

#include "facts/shapes.h"

namespace steamworthy::facts {

struct ClosingStarted {
  static constexpr Kind kind{"closing.started", 1, Undo::Never,
                             "the closing was begun on a boiler as described"};
  std::string boiler;
  std::string description_sha256;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("boiler", self.boiler, "tag of the boiler");
    v.text("description_sha256", self.description_sha256,
           "hash of the description that this closing is pinned to");
  }
  friend bool operator==(const ClosingStarted&, const ClosingStarted&) = default;
};

struct PenHandedOn {
  static constexpr Kind kind{"pen.handed_on", 1, Undo::Never,
                             "clearances of this closing are from now on given by another device"};
  std::string to_device;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("to_device", self.to_device, "the device that holds the pen now");
  }
  friend bool operator==(const PenHandedOn&, const PenHandedOn&) = default;
};

struct DeviceJoined : OfDevice {
  static constexpr Kind kind{"device.joined", 1, Undo::Never,
                             "a device takes part in this closing and may hold entries"};
};

struct DeviceReported : Bare {
  static constexpr Kind kind{"device.reported", 1, Undo::Never,
                             "this device has sent all that it holds; it has seen what is named "
                             "in `seen`"};
};

struct DeviceLeft : Bare {
  static constexpr Kind kind{"device.left", 1, Undo::Never,
                             "this device has sent all that it holds and takes no more entries"};
};

struct DeviceLost {
  static constexpr Kind kind{"device.lost", 1, Undo::Never,
                             "a device will not be heard from again; a fresh count is needed"};
  std::string device;
  std::string second;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("device", self.device, "the device");
    v.text("second", self.second, "the second of the two names");
  }
  friend bool operator==(const DeviceLost&, const DeviceLost&) = default;
};

struct ShiftHandedOver {
  static constexpr Kind kind{"shift.handed_over", 1, Undo::Never,
                             "one lead hand handed the closing over to the next"};
  std::string from;
  std::string to;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("from", self.from, "who handed over");
    v.text("to", self.to, "who took over");
  }
  friend bool operator==(const ShiftHandedOver&, const ShiftHandedOver&) = default;
};

struct EntryWithdrawn {
  static constexpr Kind kind{"entry.withdrawn", 1, Undo::Never,
                             "an earlier entry was made by mistake; only entries that make a step "
                             "easier lose their effect by it"};
  std::string device;
  int device_seq = 0;
  std::string reason;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("device", self.device, "the device that made the entry");
    v.whole("device_seq", self.device_seq, "its number in that device's feed");
    v.text("reason", self.reason, "why");
  }
  friend bool operator==(const EntryWithdrawn&, const EntryWithdrawn&) = default;
};

/// What asking for, giving, taking back a clearance have in common.
struct OfClearance {
  StepName step = StepName::Open;
  std::string subject;
  std::optional<Measured<units::GaugePressure>> up_to;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.word("step", self.step, "the step");
    v.maybe("subject", self.subject, "tag of the space, way in or closure that it is for");
    v.maybe_measure("up_to", self.up_to, units::Kind::GaugePressure,
                    "the pressure that it is for, at the reference level");
  }
  friend bool operator==(const OfClearance&, const OfClearance&) = default;
};

struct ClearanceAsked : OfClearance {
  static constexpr Kind kind{"clearance.asked", 1, Undo::Never, "a clearance was asked for"};
};

struct ClearanceGiven {
  static constexpr Kind kind{"clearance.given", 1, Undo::Never,
                             "a clearance was given by the device that holds the pen, on all that "
                             "is named in `seen`"};
  StepName step = StepName::Open;
  std::string subject;
  std::optional<Measured<units::GaugePressure>> up_to;
  std::string second;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    OfClearance::fields(self, v);
    v.text("second", self.second, "the second of the two names");
  }
  friend bool operator==(const ClearanceGiven&, const ClearanceGiven&) = default;
};

struct ClearanceLapsed : OfClearance {
  static constexpr Kind kind{"clearance.lapsed", 1, Undo::Never,
                             "a clearance was taken back or seen to have lapsed"};
};

struct ClearanceOverridden {
  static constexpr Kind kind{"clearance.overridden", 1, Undo::Allowed,
                             "somebody with the right role lets one outstanding thing pass, once "
                             "and with a reason"};
  StepName step = StepName::Open;
  std::string check;
  std::string subject;
  std::string reason;
  RoleName role = RoleName::Engineer;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.word("step", self.step, "the step");
    v.text("check", self.check, "which check of docs/safety.md, such as s5_hangers");
    v.maybe("subject", self.subject, "tag of what is let pass");
    v.text("reason", self.reason, "why");
    v.word("role", self.role, "the role in which it was let pass");
  }
  friend bool operator==(const ClearanceOverridden&, const ClearanceOverridden&) = default;
};

struct AlarmRaised {
  static constexpr Kind kind{"alarm.raised", 1, Undo::Never,
                             "the device that holds the pen saw an alarm; it stays until it is "
                             "taken, whatever is told later"};
  std::string alarm;
  std::string why;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("alarm", self.alarm, "the alarm's name");
    v.text("why", self.why, "key of what it says");
  }
  friend bool operator==(const AlarmRaised&, const AlarmRaised&) = default;
};

struct AlarmTaken {
  static constexpr Kind kind{"alarm.taken", 1, Undo::Never,
                             "somebody with the right role has taken an alarm"};
  std::string alarm;
  RoleName role = RoleName::LeadHand;
  std::string done;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("alarm", self.alarm, "the alarm's name");
    v.word("role", self.role, "in which role");
    v.maybe("done", self.done, "what was done about it");
  }
  friend bool operator==(const AlarmTaken&, const AlarmTaken&) = default;
};

struct SheetIssued {
  static constexpr Kind kind{"sheet.issued", 1, Undo::Never,
                             "a test sheet was issued; the bytes are kept as issued"};
  std::string sheet_sha256;
  std::string rule;
  std::string rule_sha256;
  std::string program;
  Measured<units::GaugePressure> test_pressure;
  Measured<units::GaugePressure> never_above;
  std::optional<Measured<units::GaugePressure>> examination_pressure;
  std::optional<Measured<units::GaugePressure>> safety_valves_in_place_below;
  std::optional<Measured<units::Temperature>> coldest;
  std::optional<Measured<units::Temperature>> warmest;
  std::optional<Measured<units::Duration>> hold;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("sheet_sha256", self.sheet_sha256, "hash of the sheet's bytes, kept as a blob");
    v.text("rule", self.rule, "id of the rule");
    v.text("rule_sha256", self.rule_sha256, "hash of the rule as used");
    v.text("program", self.program, "version of the program that computed it");
    v.measure("test_pressure", self.test_pressure, units::Kind::GaugePressure,
              "at the reference level");
    v.measure("never_above", self.never_above, units::Kind::GaugePressure,
              "at the reference level");
    v.maybe_measure("examination_pressure", self.examination_pressure, units::Kind::GaugePressure,
                    "at the reference level");
    v.maybe_measure("safety_valves_in_place_below", self.safety_valves_in_place_below,
                    units::Kind::GaugePressure,
                    "up to here, at the reference level, safety valves need no gag");
    v.maybe_measure("coldest", self.coldest, units::Kind::Temperature,
                    "of water and metal while raising pressure");
    v.maybe_measure("warmest", self.warmest, units::Kind::Temperature,
                    "of water and metal while raising pressure");
    v.maybe_measure("hold", self.hold, units::Kind::Duration, "the hold that the rule asks for");
  }
  friend bool operator==(const SheetIssued&, const SheetIssued&) = default;
};

struct ResultAccepted {
  static constexpr Kind kind{"result.accepted", 1, Undo::Allowed,
                             "what the gauge says was accepted; the bytes are kept as issued"};
  GaugeAnswer answer = GaugeAnswer::CannotTell;
  std::string result_sha256;
  std::string program;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.word("answer", self.answer, "what the gauge says");
    v.maybe("result_sha256", self.result_sha256, "hash of the analysis, kept as a blob");
    v.maybe("program", self.program, "version of the program that computed it");
  }
  friend bool operator==(const ResultAccepted&, const ResultAccepted&) = default;
};

struct SignatureGiven {
  static constexpr Kind kind{"signature.given", 1, Undo::Never,
                             "somebody signed a paper that was in front of them"};
  std::string what;
  RoleName role = RoleName::Inspector;
  std::string paper_sha256;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("what", self.what, "what was signed");
    v.word("role", self.role, "in which role");
    v.maybe("paper_sha256", self.paper_sha256, "hash of the paper, kept as a blob");
  }
  friend bool operator==(const SignatureGiven&, const SignatureGiven&) = default;
};

// The plant's own feed.

struct PersonEnrolled {
  static constexpr Kind kind{"person.enrolled", 1, Undo::Never,
                             "a person and their roles are known to the plant", Feed::Plant};
  std::string who;
  std::string name;
  std::vector<std::string> roles;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("who", self.who, "short name, used in entries");
    v.text("name", self.name, "full name");
    v.texts("roles", self.roles,
            "lead_hand, hand, pump_hand, attendant, engineer, inspector or "
            "watch_engineer");
  }
  friend bool operator==(const PersonEnrolled&, const PersonEnrolled&) = default;
};

struct PersonLeft {
  static constexpr Kind kind{"person.left", 1, Undo::Never, "a person works here no more",
                             Feed::Plant};
  std::string who;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("who", self.who, "short name");
  }
  friend bool operator==(const PersonLeft&, const PersonLeft&) = default;
};

struct DeviceEnrolled {
  static constexpr Kind kind{"device.enrolled", 1, Undo::Never,
                             "a device with its key is known to the plant", Feed::Plant};
  std::string device;
  std::string public_key;
  std::string name;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("device", self.device, "the device");
    v.text("public_key", self.public_key, "its Ed25519 public key, 64 hexadecimal digits");
    v.maybe("name", self.name, "what people call it");
  }
  friend bool operator==(const DeviceEnrolled&, const DeviceEnrolled&) = default;
};

struct DeviceRevoked : OfDevice {
  static constexpr Kind kind{"device.revoked", 1, Undo::Never,
                             "entries of a device made after this are not accepted", Feed::Plant};
};

struct RuleAdopted {
  static constexpr Kind kind{"rule.adopted", 1, Undo::Never, "the site works by a rule of its own",
                             Feed::Plant};
  std::string rule;
  std::string rule_sha256;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("rule", self.rule, "id of the rule");
    v.text("rule_sha256", self.rule_sha256, "hash of its file, kept as a blob");
  }
  friend bool operator==(const RuleAdopted&, const RuleAdopted&) = default;
};

/// A field that is missing takes the limit away: what it is for is then not cleared.
struct SiteLimitsSet {
  static constexpr Kind kind{"site.limits_set", 1, Undo::Never,
                             "the site set its own limits, all of them anew", Feed::Plant};
  std::optional<Measured<units::Duration>> air_holds;
  std::optional<Measured<units::Duration>> count_holds;
  std::optional<Measured<units::Temperature>> open_below;
  std::optional<MeasuredNumber> carbon_monoxide_alarm;
  std::optional<MeasuredNumber> hydrogen_sulfide_alarm;
  std::optional<Measured<units::GaugePressure>> tighten_below;
  bool spring_hangers = true;
  std::string source;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.maybe_measure("air_holds", self.air_holds, units::Kind::Duration,
                    "how long a test of the air holds before somebody goes in");
    v.maybe_measure("count_holds", self.count_holds, units::Kind::Duration,
                    "how long a count holds before the last way in is closed");
    v.maybe_measure("open_below", self.open_below, units::Kind::Temperature,
                    "the warmest metal at which a boiler is opened");
    v.maybe_measure("carbon_monoxide_alarm_ppm", self.carbon_monoxide_alarm, units::Kind::Count,
                    "parts in a million from which nobody goes in");
    v.maybe_measure("hydrogen_sulfide_alarm_ppm", self.hydrogen_sulfide_alarm, units::Kind::Count,
                    "parts in a million from which nobody goes in");
    v.maybe_measure("tighten_below", self.tighten_below, units::Kind::GaugePressure,
                    "up to this a plate may be tightened by the site's own rule");
    v.flag("spring_hangers", self.spring_hangers, "boilers of the site hang in springs");
    v.maybe("source", self.source, "which paper of the site says so");
  }
  friend bool operator==(const SiteLimitsSet&, const SiteLimitsSet&) = default;
};

}  // namespace steamworthy::facts
