#include "wire/json.h"

#include <fmt/format.h>

#include <cmath>

#include "base/error.h"

namespace steamworthy::wire {
namespace {

std::string_view origin_name(working::Origin origin) {
  switch (origin) {
    case working::Origin::Described:
      return "described";
    case working::Origin::Stated:
      return "stated";
    case working::Origin::Rule:
      return "rule";
    case working::Origin::Published:
      return "published";
    case working::Origin::Remembered:
      return "remembered";
    case working::Origin::Computed:
      return "computed";
    case working::Origin::Assumed:
      return "assumed";
  }
  return "computed";
}

/// Takes off what the unit's conversion left in the last bit: 45.1, not
/// 45.10000000000001. Never moves a number by more than that bit.
double tidy(double value) {
  if (value == 0.0) return 0.0;
  const double scale = std::fabs(value);
  if (scale < 1e15 && scale > 1e-12) {
    for (double step = 1.0; step <= 1e12; step *= 10.0) {
      const double rounded = std::round(value * step) / step;
      if (std::fabs(rounded - value) <= 4e-16 * scale) return rounded;
    }
  }
  return value;
}

}  // namespace

void put_measure(Json& object, const std::string& name, const units::Measure& measure) {
  const double value = units::at_border(measure);
  if (!std::isfinite(value)) {
    throw OutOfRange("wire.not_finite",
                     fmt::format("{} is {}, and only finite numbers may be written", name, value));
  }
  const std::string key = name + std::string(units::info(measure.kind).suffix);
  if (measure.kind == units::Kind::Count && value == std::floor(value) && std::fabs(value) < 1e15) {
    object[key] = static_cast<long long>(value);
  } else {
    object[key] = tidy(value);
  }
}

Json message_json(const working::Message& message) {
  Json values = Json::object();
  for (const auto& [name, value] : message.values) {
    if (const auto* plain = std::get_if<std::string>(&value)) {
      values[name] = *plain;
    } else if (const auto* term = std::get_if<working::Term>(&value)) {
      values[name] = Json{{"key", term->key}};
    } else {
      put_measure(values, name, std::get<units::Measure>(value));
    }
  }
  return Json{{"key", message.key}, {"values", std::move(values)}};
}

Json figure_json(const working::Figure& figure, bool with_working) {
  Json json{{"key", figure.key}, {"subject", figure.subject}};
  if (figure.value) {
    put_measure(json, "value", *figure.value);
  } else {
    json["cannot_tell"] = message_json(figure.cannot_tell);
  }
  if (!with_working) return json;

  Json inputs = Json::array();
  for (const working::Input& input : figure.working.inputs) {
    Json row{{"symbol", input.symbol}, {"name", input.name}};
    put_measure(row, "value", input.value);
    row["origin"] = origin_name(input.origin);
    if (!input.source.empty()) row["source"] = input.source;
    inputs.push_back(std::move(row));
  }
  Json remarks = Json::array();
  for (const working::Message& remark : figure.working.remarks)
    remarks.push_back(message_json(remark));
  json["working"] = Json{{"formula", figure.working.formula},
                         {"inputs", std::move(inputs)},
                         {"sources", figure.working.sources},
                         {"method", figure.working.method},
                         {"remarks", std::move(remarks)}};
  return json;
}

Json messages_json(const std::vector<working::Message>& messages) {
  Json list = Json::array();
  for (const working::Message& message : messages) list.push_back(message_json(message));
  return list;
}

Json section_json(const working::Section& section, bool with_working) {
  Json figures = Json::array();
  for (const working::Figure& figure : section.figures) {
    figures.push_back(figure_json(figure, with_working));
  }
  return Json{{"key", section.key},
              {"figures", std::move(figures)},
              {"notes", messages_json(section.notes)},
              {"cautions", messages_json(section.cautions)}};
}

std::string text(const Json& json) {
  return json.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace steamworthy::wire
