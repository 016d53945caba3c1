#include "materials/steels.h"

#include <initializer_list>

#include "units/makers.h"

namespace steamworthy::materials {
namespace {

using units::celsius;
using units::megapascals;
using units::millimetres;

Provenance second_hand(std::string source) { return {Trust::SecondHand, std::move(source), ""}; }
Provenance remembered() { return {Trust::Remembered, "", ""}; }

// Elastic and thermal values of a family of steels.
struct Family {
  const char* name;
  double young_gpa;
  double poisson;
  double expansion_per_million_kelvin;
  Provenance expansion_provenance;
  double density;
  double specific_heat;
};

Family carbon() {
  return {"carbon steel", 200.0, 0.30, 11.5, second_hand("B31.3-C"), 7850.0, 470.0};
}
Family low_alloy(const char* name) {
  return {name, 200.0, 0.30, 11.5, remembered(), 7850.0, 470.0};
}
Family austenitic(const char* name) {
  return {name, 195.0, 0.30, 16.0, remembered(), 7930.0, 500.0};
}
Family ductile_iron() { return {"ductile iron", 169.0, 0.275, 11.0, remembered(), 7100.0, 460.0}; }
Family cast_iron() { return {"grey cast iron", 100.0, 0.26, 10.0, remembered(), 7200.0, 460.0}; }

struct Point {
  double at_celsius;
  double yield_mpa;
};

YieldCurve curve(const char* source, std::optional<double> greatest_wall_mm,
                 std::initializer_list<Point> points) {
  YieldCurve made;
  made.provenance = source == nullptr ? remembered() : second_hand(source);
  if (greatest_wall_mm) made.greatest_wall = millimetres(*greatest_wall_mm);
  for (const Point& point : points) {
    made.points.push_back({celsius(point.at_celsius), megapascals(point.yield_mpa)});
  }
  return made;
}

Material grade(const Family& family, const char* name, std::vector<std::string> other_names,
               std::vector<YieldCurve> yield) {
  Material made;
  made.name = name;
  made.other_names = std::move(other_names);
  made.family = family.name;
  made.young = {units::Modulus::from_si(family.young_gpa * 1e9), remembered()};
  made.poisson = {family.poisson, remembered()};
  made.expansion = {units::per_kelvin(family.expansion_per_million_kelvin * 1e-6),
                    family.expansion_provenance};
  made.density = {units::kilograms_per_cubic_metre(family.density), remembered()};
  made.specific_heat = {units::joules_per_kilogram_kelvin(family.specific_heat), remembered()};
  made.yield = std::move(yield);
  return made;
}

// EN 10216-2: proof strength at temperature does not depend on the wall; at room temperature it
// does. Above 60 mm other values hold.
constexpr const char* en_tube = "EN-10216-2";

std::vector<Material> european() {
  std::vector<Material> made;
  made.push_back(grade(carbon(), "P195GH", {"1.0348"},
                       {curve(en_tube, 16.0,
                              {{20, 195},
                               {100, 175},
                               {150, 165},
                               {200, 150},
                               {250, 130},
                               {300, 113},
                               {350, 102},
                               {400, 94}})}));
  const auto p235 = [](double wall, double room) {
    return curve(en_tube, wall,
                 {{20, room},
                  {100, 198},
                  {150, 187},
                  {200, 170},
                  {250, 150},
                  {300, 132},
                  {350, 120},
                  {400, 112},
                  {450, 108}});
  };
  made.push_back(
      grade(carbon(), "P235GH", {"1.0345"}, {p235(16, 235), p235(40, 225), p235(60, 215)}));
  const auto p265 = [](double wall, double room) {
    return curve(en_tube, wall,
                 {{20, room},
                  {100, 226},
                  {150, 213},
                  {200, 192},
                  {250, 171},
                  {300, 154},
                  {350, 141},
                  {400, 134},
                  {450, 128}});
  };
  made.push_back(
      grade(carbon(), "P265GH", {"1.0425"}, {p265(16, 265), p265(40, 255), p265(60, 245)}));
  // At room temperature the lowest figure seen for walls up to 40 mm [EN-10028-2].
  made.push_back(grade(low_alloy("0.3Mo steel"), "16Mo3", {"1.5415", "15Mo3"},
                       {curve(en_tube, 40.0,
                              {{20, 270},
                               {100, 243},
                               {150, 237},
                               {200, 224},
                               {250, 205},
                               {300, 173},
                               {350, 159},
                               {400, 156},
                               {450, 150},
                               {500, 146}})}));
  made.push_back(grade(low_alloy("1Cr-0.5Mo steel"), "13CrMo4-5", {"1.7335", "13CrMo44"},
                       {curve(en_tube, 40.0,
                              {{20, 290},
                               {100, 264},
                               {150, 253},
                               {200, 245},
                               {250, 236},
                               {300, 192},
                               {350, 182},
                               {400, 174},
                               {450, 168},
                               {500, 166}})}));
  made.push_back(grade(low_alloy("2.25Cr-1Mo steel"), "10CrMo9-10", {"1.7380", "10CrMo910"},
                       {curve(en_tube, 40.0,
                              {{20, 280},
                               {100, 249},
                               {150, 241},
                               {200, 234},
                               {250, 224},
                               {300, 219},
                               {350, 212},
                               {400, 207},
                               {450, 193},
                               {500, 180}})}));
  return made;
}

// American grades state one least yield strength, at room temperature. Higher temperatures are in
// a table that was not seen, so strength above 35 °C cannot be told from these.
std::vector<Material> american() {
  std::vector<Material> made;
  const auto room = [](const char* source, double yield_mpa) {
    return std::vector<YieldCurve>{curve(source, std::nullopt, {{20, yield_mpa}})};
  };
  made.push_back(grade(carbon(), "SA-178-A", {"A178-A"}, room("ASTM-A178", 180)));
  made.push_back(grade(carbon(), "SA-178-C", {"A178-C"}, room("ASTM-A178", 255)));
  made.push_back(grade(carbon(), "SA-192", {"A192"}, room("ASTM-A192", 180)));
  made.push_back(grade(carbon(), "SA-210-A1", {"A210-A1"}, room("ASME-SA-210", 255)));
  made.push_back(grade(carbon(), "SA-210-C", {"A210-C"}, room("ASME-SA-210", 275)));
  made.push_back(grade(carbon(), "SA-106-A", {"A106-A"}, room("ASTM-A106", 205)));
  made.push_back(grade(carbon(), "SA-106-B", {"A106-B"}, room("ASTM-A106", 240)));
  made.push_back(grade(carbon(), "SA-106-C", {"A106-C"}, room("ASTM-A106", 275)));
  made.push_back(grade(carbon(), "SA-516-55", {"A516-55"}, room("ASTM-A516", 205)));
  made.push_back(grade(carbon(), "SA-516-60", {"A516-60"}, room("ASTM-A516", 220)));
  made.push_back(grade(carbon(), "SA-516-65", {"A516-65"}, room("ASTM-A516", 240)));
  made.push_back(grade(carbon(), "SA-516-70", {"A516-70"}, room("ASTM-A516", 260)));
  made.push_back(grade(carbon(), "SA-515-70", {"A515-70"}, room(nullptr, 260)));
  made.push_back(grade(carbon(), "SA-285-C", {"A285-C"}, room(nullptr, 205)));
  made.push_back(grade(low_alloy("1.25Cr-0.5Mo steel"), "SA-335-P11", {"A335-P11", "P11"},
                       room("ASTM-A335", 205)));
  made.push_back(grade(low_alloy("2.25Cr-1Mo steel"), "SA-335-P22", {"A335-P22", "P22"},
                       room("ASTM-A335", 205)));
  made.push_back(grade(low_alloy("1.25Cr-0.5Mo steel"), "SA-213-T11", {"A213-T11", "T11"},
                       room(nullptr, 205)));
  made.push_back(
      grade(low_alloy("2.25Cr-1Mo steel"), "SA-213-T22", {"A213-T22", "T22"}, room(nullptr, 205)));
  made.push_back(grade(austenitic("18Cr-8Ni steel"), "TP304",
                       {"304", "SA-213-TP304", "SA-312-TP304"}, room("ASTM-A312", 205)));
  made.push_back(grade(austenitic("18Cr-10Ni-Ti steel"), "TP321",
                       {"321", "SA-213-TP321", "SA-312-TP321"}, room("ASTM-A312", 205)));
  made.push_back(grade(austenitic("18Cr-10Ni-Nb steel"), "TP347",
                       {"347", "SA-213-TP347", "SA-312-TP347"}, room("ASTM-A312", 205)));
  return made;
}

const std::vector<Material>& all() {
  static const std::vector<Material> made = [] {
    std::vector<Material> list = european();
    for (Material& material : american()) list.push_back(std::move(material));
    // Irons: for growth, weight and heat. Grey iron breaks without yielding.
    list.push_back(grade(ductile_iron(), "ductile iron", {"EN-GJS-400-18", "nodular iron"}, {}));
    list.push_back(grade(cast_iron(), "cast iron", {"grey cast iron", "gray cast iron"}, {}));
    return list;
  }();
  return made;
}

// Letters and digits only, as capitals, without the words that people put between them.
std::string plain(std::string_view name) {
  std::string letters;
  std::string word;
  const auto end_word = [&] {
    if (word != "GR" && word != "GRADE" && word != "TYPE" && word != "STEEL") letters += word;
    word.clear();
  };
  for (const char c : name) {
    if (c >= 'a' && c <= 'z') {
      word += static_cast<char>(c - 'a' + 'A');
    } else if ((c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9')) {
      word += c;
    } else {
      end_word();
    }
  }
  end_word();
  return letters;
}

}  // namespace

std::optional<Material> steel(std::string_view name) {
  const std::string wanted = plain(name);
  if (wanted.empty()) return std::nullopt;
  if (wanted == plain(generic_boiler_steel().name)) return generic_boiler_steel();
  for (const Material& material : all()) {
    if (plain(material.name) == wanted) return material;
    for (const std::string& other : material.other_names) {
      if (plain(other) == wanted) return material;
    }
  }
  return std::nullopt;
}

std::vector<std::string> steel_names() {
  std::vector<std::string> names;
  for (const Material& material : all()) names.push_back(material.name);
  return names;
}

Material generic_boiler_steel() {
  Material made = grade(carbon(), "boiler steel", {}, {});
  made.family = "unalloyed steel, grade not stated";
  made.expansion.provenance = remembered();
  return made;
}

}  // namespace steamworthy::materials
