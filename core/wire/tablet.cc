#include "wire/tablet.h"

#include "boiler/tokens.h"
#include "facts/table.h"
#include "fitup/fitup.h"
#include "units/parse.h"
#include "wire/fitup_json.h"
#include "wire/tablet_request.h"
#include "words/words.h"

namespace steamworthy::wire {
namespace {

words::Style style_of(const TabletRequest& request) {
  words::Style style;
  style.print.system = request.system();
  return style;
}

units::Kind kind_named(TabletRequest& request) {
  const std::string name = request.text("kind");
  for (int i = 0; i <= static_cast<int>(units::Kind::Count); ++i) {
    if (units::info(static_cast<units::Kind>(i)).name == name) return static_cast<units::Kind>(i);
  }
  request.refuse("kind", name, "a kind of quantity, such as \"gauge_pressure\"");
  return units::Kind::Count;
}

/// A quantity that somebody typed; a number without a unit is in the unit of their system.
std::optional<units::Measure> typed(TabletRequest& request, units::Kind kind,
                                    const std::string& field, const std::string& written,
                                    bool* unit_assumed = nullptr) {
  const auto parsed = units::parse_measure(kind, written, {units::unit(kind, request.system())});
  if (unit_assumed != nullptr) *unit_assumed = parsed.unit_assumed;
  if (!parsed) {
    Problem problem = parsed.problem;
    problem.field = field;
    request.add(problem);
  }
  return parsed.value;
}

std::string answer_quantity(std::string_view json) {
  TabletRequest request(json);
  const units::Kind kind = kind_named(request);
  const std::string written = request.text("text");
  request.settle();
  bool unit_assumed = false;
  const auto measure = typed(request, kind, "", written, &unit_assumed);
  request.settle();
  Json answer = Json::object();
  put_measure(answer, "value", *measure);
  answer["text"] = words::text(*measure, style_of(request));
  answer["unit_assumed"] = unit_assumed;
  return text(answer);
}

std::string answer_in_unit(std::string_view json) {
  TabletRequest request(json);
  const units::Kind kind = kind_named(request);
  Json values = Json::array();
  for (const Json& value : request.list("values")) {
    if (!value.is_number()) request.refuse("values", value.dump(), "a list of numbers");
    request.settle();
    values.push_back(
        units::in_unit(units::from_border(kind, value.get<double>()), request.system()));
  }
  request.settle();
  return text(Json{{"unit", units::unit(kind, request.system())}, {"values", std::move(values)}});
}

std::string answer_label(std::string_view json) {
  TabletRequest request(json);
  Json texts = Json::array();
  for (const Json& key : request.list("keys")) {
    if (!key.is_string()) request.refuse("keys", key.dump(), "a list of texts");
    request.settle();
    texts.push_back(words::label(key.get<std::string>(), style_of(request)));
  }
  request.settle();
  return text(Json{{"texts", std::move(texts)}});
}

std::string answer_words(std::string_view json) {
  TabletRequest request(json);
  Json answer = Json::object();
  for (const Json& wanted : request.list("families")) {
    const std::string name = wanted.is_string() ? wanted.get<std::string>() : wanted.dump();
    Json family = Json::array();
    for (const auto& [known, tokens] : facts::families()) {
      if (known != name) continue;
      for (const std::string_view token : tokens) {
        const std::string key = name + "." + std::string(token);
        family.push_back({{"token", token}, {"text", words::label(key, style_of(request))}});
      }
    }
    if (family.empty()) request.refuse("families", name, "a family of words of facts");
    answer[name] = std::move(family);
  }
  request.settle();
  return text(answer);
}

units::Length length_of(TabletRequest& request, const char* key, units::Length otherwise) {
  const auto at = request.json().find(key);
  if (at == request.json().end() || *at == "") return otherwise;
  if (at->is_number()) {
    return units::Length::from_si(units::from_border(units::Kind::Size, at->get<double>()).si);
  }
  const auto measure = typed(request, units::Kind::Size, key, request.text(key));
  return measure ? units::Length::from_si(measure->si) : otherwise;
}

fitup::FitRequest fit_request(TabletRequest& request) {
  fitup::FitRequest fit;
  fit.closure = request.text("closure");
  const std::string shape = request.text("shape");
  if (const auto value = boiler::Words<boiler::OpeningShape>::value_of(shape)) {
    fit.outline.opening.shape = *value;
  } else {
    request.refuse("shape", shape, "oval, circle or oblong");
  }
  fit.outline.opening.width = length_of(request, "width_mm", {});
  fit.outline.opening.height = length_of(request, "height_mm", {});
  fit.outline.long_axis = request.number("long_axis_clock", 3.0);
  if (request.json().contains("makers_limit") && !request.maybe("makers_limit").empty()) {
    fit.makers_limit = length_of(request, "makers_limit", {});
  }
  const units::Length step = length_of(request, "step", units::Length::from_si(0.0001));
  for (const Json& one : request.list("gaps")) {
    TabletRequest gap(text(one));
    fit.readings.push_back({gap.number("clock", -1.0), length_of(gap, "gap", {}), step});
    gap.settle();
  }
  return fit;
}

/// The word for the record; none where the plate must first be moved or felt again.
std::string verdict_of_fact(fitup::FitVerdict verdict) {
  switch (verdict) {
    case fitup::FitVerdict::GoodAsItStands:
      return "good";
    case fitup::FitVerdict::Report:
      return "report";
    case fitup::FitVerdict::GoodOnceMoved:
    case fitup::FitVerdict::CannotTell:
      break;
  }
  return {};
}

std::string answer_gaps(std::string_view json) {
  TabletRequest request(json);
  const fitup::FitRequest fit = fit_request(request);
  request.settle();
  const fitup::FitAnswer judged = fitup::judge_fit(fit);
  const words::Style style = style_of(request);
  Json answer = Json::parse(fitup_json(judged, /*with_working=*/false));
  answer["sentence_text"] = words::sentence(judged.sentence, style);
  Json notes = Json::array(), figures = Json::array();
  for (const working::Message& note : judged.notes) notes.push_back(words::sentence(note, style));
  for (const working::Figure& figure : judged.figures) {
    figures.push_back({{"text", words::render_figure(figure, style)},
                       {"working", words::render_working(figure, style)}});
  }
  answer["note_texts"] = std::move(notes);
  answer["figure_texts"] = std::move(figures);
  answer["verdict_of_fact"] = verdict_of_fact(judged.verdict);
  return text(answer);
}

std::string refusal(const std::string& code, const std::string& message,
                    const std::vector<Problem>& problems) {
  return text(Json{{"code", code}, {"message", message}, {"problems", problems_json(problems)}});
}

}  // namespace

std::string answer(std::string_view question, std::string_view request) {
  try {
    if (question == "fact") return make_fact(request);
    if (question == "outstanding") return answer_outstanding(request);
    if (question == "quantity") return answer_quantity(request);
    if (question == "in_unit") return answer_in_unit(request);
    if (question == "label") return answer_label(request);
    if (question == "words") return answer_words(request);
    if (question == "gaps") return answer_gaps(request);
    throw BadInput({{"tablet.unknown_question", "", 0, "", std::string(question),
                     "fact, outstanding, quantity, in_unit, label, words or gaps",
                     "is not a question known here"}});
  } catch (const BadInput& error) {
    return refusal(error.problems().front().code, error.what(), error.problems());
  } catch (const Error& error) {
    return refusal(error.code(), error.what(), {});
  } catch (const std::exception& error) {
    return refusal("tablet.bad_request", error.what(), {});
  }
}

}  // namespace steamworthy::wire
