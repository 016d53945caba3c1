// The words of every enumeration, in one place: a value has one token for ever.
#include <algorithm>
#include <array>
#include <cassert>

#include "rules/circumstances.h"
#include "rules/rule.h"

namespace steamworthy::rules {
namespace {

template <class Enum, std::size_t N>
using Words = std::array<std::pair<Enum, std::string_view>, N>;

constexpr Words<BoilerKind, 4> boiler_kinds{{{BoilerKind::Watertube, "watertube"},
                                             {BoilerKind::Firetube, "firetube"},
                                             {BoilerKind::CastIron, "cast-iron"},
                                             {BoilerKind::OnceThrough, "once-through"}}};
constexpr Words<Work, 7> works{{{Work::GasketsOnly, "gaskets"},
                                {Work::TubesRolledOrPlugged, "tubes-rolled"},
                                {Work::TubesRenewed, "tubes-renewed"},
                                {Work::DrumRepaired, "drum-repaired"},
                                {Work::StrengthDoubted, "strength-doubted"},
                                {Work::NewInstallation, "new-installation"},
                                {Work::Periodic, "periodic"}}};
constexpr Words<Subject, 8> subjects{
    {{Subject::Boiler, "boiler"},
     {Subject::UnfiredVessel, "unfired-vessel"},
     {Subject::UnfiredVesselDivision2, "unfired-vessel-division-2"},
     {Subject::BoilerPiping, "boiler-piping"},
     {Subject::Economizer, "economizer"},
     {Subject::Fitting, "fitting"},
     {Subject::ValveSeat, "valve-seat"},
     {Subject::SafetyValve, "safety-valve"}}};
constexpr Words<Trait, 7> traits{{{Trait::LapSeam, "lap_seam"},
                                  {Trait::CanBeEntered, "can_be_entered"},
                                  {Trait::ExtensiveRepair, "extensive_repair"},
                                  {Trait::AllPartsShopTested, "all_parts_shop_tested"},
                                  {Trait::Locomotive, "locomotive"},
                                  {Trait::CanBeBlanked, "can_be_blanked"},
                                  {Trait::StopValveBetween, "stop_valve_between"}}};
constexpr Words<Reference, 10> references{
    {{Reference::WorkingPressure, "working pressure"},
     {Reference::OperatingPressure, "operating pressure"},
     {Reference::LowestSafetyValve, "lowest safety valve"},
     {Reference::HighestSafetyValve, "highest safety valve"},
     {Reference::LesserOfWorkingAndHighestSafetyValve,
      "lesser of working pressure and highest safety valve"},
     {Reference::DesignPressure, "design pressure"},
     {Reference::ServiceLoading, "service loading"},
     {Reference::BoilerTestPressure, "boiler test pressure"},
     {Reference::RetestPressure, "retest pressure"},
     {Reference::OriginalTestPressure, "original test pressure"}}};
constexpr Words<Purpose, 6> purposes{{{Purpose::Tightness, "tightness"},
                                      {Purpose::Strength, "strength"},
                                      {Purpose::Working, "working"},
                                      {Purpose::Limit, "limit"},
                                      {Purpose::Interval, "interval"},
                                      {Purpose::History, "history"}}};
constexpr Words<Seen, 4> seen_words{{{Seen::Seen, "seen"},
                                     {Seen::SecondHand, "second-hand"},
                                     {Seen::FromMemory, "from-memory"},
                                     {Seen::Site, "site"}}};
constexpr Words<SourceKind, 7> source_kinds{{{SourceKind::Law, "law"},
                                             {SourceKind::HistoricLaw, "historic-law"},
                                             {SourceKind::Standard, "standard"},
                                             {SourceKind::Manual, "manual"},
                                             {SourceKind::Handbook, "handbook"},
                                             {SourceKind::CommonPractice, "common-practice"},
                                             {SourceKind::SiteRule, "site-rule"}}};
constexpr Words<Sense, 5> senses{{{Sense::Exactly, "exactly"},
                                  {Sense::AtLeast, "at-least"},
                                  {Sense::AtMost, "at-most"},
                                  {Sense::Between, "between"},
                                  {Sense::NamedByAuthority, "named-by-authority"}}};
constexpr Words<Stage, 3> stages{{{Stage::Filling, "filling"},
                                  {Stage::UnderTest, "under-test"},
                                  {Stage::Examination, "examination"}}};
constexpr Words<Medium, 2> media{{{Medium::Water, "water"}, {Medium::Metal, "metal"}}};
constexpr Words<HoldAt, 2> hold_ats{{{HoldAt::TestPressure, "test-pressure"},
                                     {HoldAt::ExaminationPressure, "examination-pressure"}}};
constexpr Words<ValveTreatment, 4> treatments{
    {{ValveTreatment::NotStated, "not-stated"},
     {ValveTreatment::MustBeGagged, "must-be-gagged"},
     {ValveTreatment::RemovedOrClamped, "removed-or-clamped"},
     {ValveTreatment::MayBeGagged, "may-be-gagged"}}};

template <class Enum, std::size_t N>
std::string_view word_of(const Words<Enum, N>& words, Enum value) {
  const auto it = std::find_if(words.begin(), words.end(),
                               [&](const auto& word) { return word.first == value; });
  assert(it != words.end());  // every table above names every value: tokens_test.cc
  return it->second;
}

template <class Enum, std::size_t N>
std::optional<Enum> value_of(const Words<Enum, N>& words, std::string_view token) {
  const auto it = std::find_if(words.begin(), words.end(),
                               [&](const auto& word) { return word.second == token; });
  if (it == words.end()) return std::nullopt;
  return it->first;
}

template <class Enum, std::size_t N>
std::vector<std::string_view> all_words(const Words<Enum, N>& words) {
  std::vector<std::string_view> result;
  for (const auto& word : words) result.push_back(word.second);
  return result;
}

}  // namespace

#define STEAMWORTHY_TOKENS(Enum, name, table)                                              \
  std::string_view token(Enum value) { return word_of(table, value); }                     \
  std::optional<Enum> name##_of(std::string_view token) { return value_of(table, token); } \
  std::vector<std::string_view> name##_tokens() { return all_words(table); }

STEAMWORTHY_TOKENS(BoilerKind, boiler_kind, boiler_kinds)
STEAMWORTHY_TOKENS(Work, work, works)
STEAMWORTHY_TOKENS(Subject, subject, subjects)
STEAMWORTHY_TOKENS(Trait, trait, traits)
STEAMWORTHY_TOKENS(Reference, reference, references)
STEAMWORTHY_TOKENS(Purpose, purpose, purposes)
STEAMWORTHY_TOKENS(Seen, seen, seen_words)
STEAMWORTHY_TOKENS(SourceKind, source_kind, source_kinds)
STEAMWORTHY_TOKENS(Sense, sense, senses)
STEAMWORTHY_TOKENS(Stage, stage, stages)
STEAMWORTHY_TOKENS(Medium, medium, media)
STEAMWORTHY_TOKENS(HoldAt, hold_at, hold_ats)
STEAMWORTHY_TOKENS(ValveTreatment, valve_treatment, treatments)

#undef STEAMWORTHY_TOKENS

}  // namespace steamworthy::rules
