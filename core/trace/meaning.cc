#include "trace/meaning.h"

#include <array>

namespace steamworthy::trace {
namespace {

struct Row {
  Meaning meaning;
  std::string_view token;
  std::string_view key;
};

// In the order of the enumeration.
constexpr std::array rows = {
    Row{Meaning::Elapsed, "elapsed", "trace_meaning.elapsed"},
    Row{Meaning::Clock, "clock", "trace_meaning.clock"},
    Row{Meaning::DateTime, "date-time", "trace_meaning.date_time"},
    Row{Meaning::Date, "date", "trace_meaning.date"},
    Row{Meaning::Pressure, "pressure", "trace_meaning.pressure"},
    Row{Meaning::Water, "water", "trace_meaning.water"},
    Row{Meaning::Metal, "metal", "trace_meaning.metal"},
    Row{Meaning::Ambient, "ambient", "trace_meaning.ambient"},
    Row{Meaning::Supply, "supply", "trace_meaning.supply"},
    Row{Meaning::OtherTemperature, "temperature", "trace_meaning.other_temperature"},
    Row{Meaning::Pumped, "pumped", "trace_meaning.pumped"},
    Row{Meaning::Strokes, "strokes", "trace_meaning.strokes"},
    Row{Meaning::Remarks, "remarks", "trace_meaning.remarks"},
    Row{Meaning::Ignored, "ignored", "trace_meaning.ignored"},
    Row{Meaning::Unknown, "unknown", "trace_meaning.unknown"},
};

const Row& row(Meaning meaning) { return rows[static_cast<std::size_t>(meaning)]; }

}  // namespace

std::string_view token(Meaning meaning) { return row(meaning).token; }
std::string_view words_key(Meaning meaning) { return row(meaning).key; }

std::optional<Meaning> meaning_of(std::string_view token) {
  for (const Row& row : rows) {
    if (row.token == token && row.meaning != Meaning::Unknown) return row.meaning;
  }
  return std::nullopt;
}

std::vector<std::string_view> meaning_tokens() {
  std::vector<std::string_view> tokens;
  for (const Row& row : rows) {
    if (row.meaning != Meaning::Unknown) tokens.push_back(row.token);
  }
  return tokens;
}

bool is_time(Meaning meaning) {
  return meaning == Meaning::Elapsed || meaning == Meaning::Clock || meaning == Meaning::DateTime ||
         meaning == Meaning::Date;
}

bool is_temperature(Meaning meaning) {
  return meaning == Meaning::Water || meaning == Meaning::Metal || meaning == Meaning::Ambient ||
         meaning == Meaning::Supply || meaning == Meaning::OtherTemperature;
}

bool is_measured(Meaning meaning) {
  return meaning == Meaning::Pressure || is_temperature(meaning) || meaning == Meaning::Pumped ||
         meaning == Meaning::Strokes;
}

std::optional<units::Dimension> dimension(Meaning meaning) {
  if (meaning == Meaning::Elapsed) return units::Dimension{0, 0, 1, 0};
  if (meaning == Meaning::Pressure) return units::Dimension{1, -1, -2, 0};
  if (meaning == Meaning::Pumped) return units::Dimension{0, 3, 0, 0};
  if (is_temperature(meaning)) return units::Dimension{0, 0, 0, 1};
  return std::nullopt;
}

}  // namespace steamworthy::trace
