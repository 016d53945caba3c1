#include "units/unit_text.h"

#include <array>
#include <vector>

#include "units/makers.h"
#include "units/number_text.h"

namespace steamworthy::units {
namespace {

constexpr Dimension none{};
constexpr Dimension length{0, 1, 0, 0};
constexpr Dimension area{0, 2, 0, 0};
constexpr Dimension volume{0, 3, 0, 0};
constexpr Dimension mass{1, 0, 0, 0};
constexpr Dimension time{0, 0, 1, 0};
constexpr Dimension temperature{0, 0, 0, 1};
constexpr Dimension force{1, 1, -2, 0};
constexpr Dimension pressure{1, -1, -2, 0};
constexpr Dimension energy{1, 2, -2, 0};
constexpr Dimension power{1, 2, -3, 0};
constexpr Dimension viscosity{1, -1, -1, 0};
constexpr Dimension flow{0, 3, -1, 0};

constexpr double foot = 12.0 * metres_per_inch;
constexpr double standard_g = 9.80665;
constexpr double kgf_per_cm2 = standard_g / 1e-4;

struct Name {
  std::string_view text;
  Dimension dimension;
  double factor;
  double offset = 0.0;
  Zero zero = Zero::Unsaid;
};

// Factors: [NIST-SP811], app. B.8; exact where the unit is defined by SI units, otherwise
// (inHg, mmHg, inH2O, ftH2O, Btu) to the digits printed there.
constexpr std::array names = {
    Name{"m", length, 1.0},
    Name{"metre", length, 1.0},
    Name{"metres", length, 1.0},
    Name{"meter", length, 1.0},
    Name{"meters", length, 1.0},
    Name{"km", length, 1e3},
    Name{"dm", length, 0.1},
    Name{"cm", length, 1e-2},
    Name{"mm", length, 1e-3},
    Name{"um", length, 1e-6},
    Name{"uin", length, 1e-6 * metres_per_inch},
    Name{"in", length, metres_per_inch},
    Name{"in.", length, metres_per_inch},
    Name{"inch", length, metres_per_inch},
    Name{"inches", length, metres_per_inch},
    Name{"\"", length, metres_per_inch},
    Name{"''", length, metres_per_inch},
    Name{"Zoll", length, metres_per_inch},
    Name{"mil", length, 1e-3 * metres_per_inch},
    Name{"ft", length, foot},
    Name{"ft.", length, foot},
    Name{"foot", length, foot},
    Name{"feet", length, foot},
    Name{"'", length, foot},
    Name{"yd", length, 3.0 * foot},
    Name{"sq in", area, metres_per_inch* metres_per_inch},
    Name{"sq ft", area, foot* foot},
    Name{"sq m", area, 1.0},
    Name{"sq mm", area, 1e-6},
    Name{"L", volume, 1e-3},
    Name{"l", volume, 1e-3},
    Name{"ltr", volume, 1e-3},
    Name{"litre", volume, 1e-3},
    Name{"litres", volume, 1e-3},
    Name{"liter", volume, 1e-3},
    Name{"liters", volume, 1e-3},
    Name{"hL", volume, 0.1},
    Name{"dL", volume, 1e-4},
    Name{"cL", volume, 1e-5},
    Name{"mL", volume, 1e-6},
    Name{"ml", volume, 1e-6},
    Name{"millilitre", volume, 1e-6},
    Name{"millilitres", volume, 1e-6},
    Name{"cc", volume, 1e-6},
    Name{"ccm", volume, 1e-6},
    Name{"cbm", volume, 1.0},
    Name{"cu m", volume, 1.0},
    Name{"cu ft", volume, foot* foot* foot},
    Name{"cu in", volume, metres_per_inch* metres_per_inch* metres_per_inch},
    Name{"gal", volume, cubic_metres_per_us_gallon},
    Name{"gals", volume, cubic_metres_per_us_gallon},
    Name{"gallon", volume, cubic_metres_per_us_gallon},
    Name{"gallons", volume, cubic_metres_per_us_gallon},
    Name{"US gal", volume, cubic_metres_per_us_gallon},
    Name{"US gallon", volume, cubic_metres_per_us_gallon},
    Name{"US gallons", volume, cubic_metres_per_us_gallon},
    Name{"U.S. gal", volume, cubic_metres_per_us_gallon},
    Name{"gal (US)", volume, cubic_metres_per_us_gallon},
    Name{"gal US", volume, cubic_metres_per_us_gallon},
    Name{"imp gal", volume, 4.54609e-3},
    Name{"UK gal", volume, 4.54609e-3},
    Name{"gal (imp)", volume, 4.54609e-3},
    Name{"gal (UK)", volume, 4.54609e-3},
    Name{"US qt", volume, cubic_metres_per_us_gallon / 4.0},
    Name{"kg", mass, 1.0},
    Name{"kilogram", mass, 1.0},
    Name{"kilograms", mass, 1.0},
    Name{"g", mass, 1e-3},
    Name{"t", mass, 1e3},
    Name{"tonne", mass, 1e3},
    Name{"tonnes", mass, 1e3},
    Name{"lb", mass, kilograms_per_pound},
    Name{"lbs", mass, kilograms_per_pound},
    Name{"lbm", mass, kilograms_per_pound},
    Name{"pound", mass, kilograms_per_pound},
    Name{"pounds", mass, kilograms_per_pound},
    Name{"oz", mass, kilograms_per_pound / 16.0},
    Name{"s", time, 1.0},
    Name{"sec", time, 1.0},
    Name{"secs", time, 1.0},
    Name{"second", time, 1.0},
    Name{"seconds", time, 1.0},
    Name{"ms", time, 1e-3},
    Name{"min", time, 60.0},
    Name{"min.", time, 60.0},
    Name{"mins", time, 60.0},
    Name{"minute", time, 60.0},
    Name{"minutes", time, 60.0},
    Name{"Minuten", time, 60.0},
    Name{"h", time, 3600.0},
    Name{"hr", time, 3600.0},
    Name{"hrs", time, 3600.0},
    Name{"hour", time, 3600.0},
    Name{"hours", time, 3600.0},
    Name{"Std", time, 3600.0},
    Name{"d", time, 86400.0},
    Name{"day", time, 86400.0},
    Name{"days", time, 86400.0},
    Name{"K", temperature, 1.0},
    Name{"kelvin", temperature, 1.0},
    Name{"kelvins", temperature, 1.0},
    Name{"degK", temperature, 1.0},
    Name{"mK", temperature, 1e-3},
    Name{"\u00b0C", temperature, 1.0, kelvin_of_zero_celsius},
    Name{"\u00b0 C", temperature, 1.0, kelvin_of_zero_celsius},
    Name{"C", temperature, 1.0, kelvin_of_zero_celsius},
    Name{"degC", temperature, 1.0, kelvin_of_zero_celsius},
    Name{"deg C", temperature, 1.0, kelvin_of_zero_celsius},
    Name{"degrees C", temperature, 1.0, kelvin_of_zero_celsius},
    Name{"Celsius", temperature, 1.0, kelvin_of_zero_celsius},
    Name{"degrees Celsius", temperature, 1.0, kelvin_of_zero_celsius},
    Name{"\u00b0F", temperature, 1.0 / 1.8, 459.67 / 1.8},
    Name{"\u00b0 F", temperature, 1.0 / 1.8, 459.67 / 1.8},
    Name{"F", temperature, 1.0 / 1.8, 459.67 / 1.8},
    Name{"degF", temperature, 1.0 / 1.8, 459.67 / 1.8},
    Name{"deg F", temperature, 1.0 / 1.8, 459.67 / 1.8},
    Name{"degrees F", temperature, 1.0 / 1.8, 459.67 / 1.8},
    Name{"Fahrenheit", temperature, 1.0 / 1.8, 459.67 / 1.8},
    Name{"degrees Fahrenheit", temperature, 1.0 / 1.8, 459.67 / 1.8},
    Name{"\u00b0R", temperature, 1.0 / 1.8},
    Name{"N", force, 1.0},
    Name{"kN", force, 1e3},
    Name{"MN", force, 1e6},
    Name{"lbf", force, newtons_per_pound_force},
    Name{"kip", force, 1e3 * newtons_per_pound_force},
    Name{"kgf", force, standard_g},
    Name{"kp", force, standard_g},
    Name{"Pa", pressure, 1.0},
    Name{"hPa", pressure, 1e2},
    Name{"kPa", pressure, 1e3},
    Name{"MPa", pressure, 1e6},
    Name{"GPa", pressure, 1e9},
    Name{"bar", pressure, 1e5},
    Name{"bars", pressure, 1e5},
    Name{"mbar", pressure, 1e2},
    Name{"psi", pressure, pascals_per_psi},
    Name{"lb/in2", pressure, pascals_per_psi},
    Name{"lbs/in2", pressure, pascals_per_psi},
    Name{"lb/sq in", pressure, pascals_per_psi},
    Name{"lbs/sq in", pressure, pascals_per_psi},
    Name{"lbf/sq in", pressure, pascals_per_psi},
    Name{"ksi", pressure, 1e3 * pascals_per_psi},
    Name{"Msi", pressure, 1e6 * pascals_per_psi},
    Name{"kg/cm2", pressure, kgf_per_cm2},
    Name{"ksc", pressure, kgf_per_cm2},
    Name{"at", pressure, kgf_per_cm2},
    Name{"ata", pressure, kgf_per_cm2, 0.0, Zero::Absolute},
    Name{"at\u00fc", pressure, kgf_per_cm2, 0.0, Zero::Gauge},
    Name{"kg/mm2", pressure, 1e2 * kgf_per_cm2},
    Name{"atm", pressure, 101325.0},
    Name{"Torr", pressure, 101325.0 / 760.0},
    Name{"mmHg", pressure, 133.322387415},
    Name{"inHg", pressure, 3386.389},
    Name{"in Hg", pressure, 3386.389},
    Name{"mmH2O", pressure, standard_g},
    Name{"mmWC", pressure, standard_g},
    Name{"mH2O", pressure, 1e3 * standard_g},
    Name{"mWC", pressure, 1e3 * standard_g},
    Name{"mWS", pressure, 1e3 * standard_g},
    Name{"inH2O", pressure, 249.08891},
    Name{"inWC", pressure, 249.08891},
    Name{"ftH2O", pressure, 2989.0669},
    Name{"J", energy, 1.0},
    Name{"kJ", energy, 1e3},
    Name{"MJ", energy, 1e6},
    Name{"GJ", energy, 1e9},
    Name{"kWh", energy, 3.6e6},
    Name{"kcal", energy, 4186.8},
    Name{"Btu", energy, 1055.05585262},
    Name{"Nm", energy, 1.0},
    Name{"kNm", energy, 1e3},
    Name{"ft lb", energy, foot* newtons_per_pound_force},
    Name{"ft-lb", energy, foot* newtons_per_pound_force},
    Name{"lb ft", energy, foot* newtons_per_pound_force},
    Name{"lb-ft", energy, foot* newtons_per_pound_force},
    Name{"ft-lbf", energy, foot* newtons_per_pound_force},
    Name{"in-lbf", energy, metres_per_inch* newtons_per_pound_force},
    Name{"W", power, 1.0},
    Name{"kW", power, 1e3},
    Name{"MW", power, 1e6},
    Name{"hp", power, 550.0 * foot* newtons_per_pound_force},
    Name{"cP", viscosity, 1e-3},
    Name{"mPa s", viscosity, 1e-3},
    Name{"mPa*s", viscosity, 1e-3},
    Name{"mPas", viscosity, 1e-3},
    Name{"gpm", flow, cubic_metres_per_us_gallon / 60.0},
    Name{"gph", flow, cubic_metres_per_us_gallon / 3600.0},
    Name{"lpm", flow, 1e-3 / 60.0},
    Name{"cfm", flow, foot* foot* foot / 60.0},
    Name{"%", none, 1e-2},
    Name{"percent", none, 1e-2},
    Name{"per cent", none, 1e-2},
    Name{"pct", none, 1e-2},
    Name{"ppm", none, 1e-6},
};

struct Trap {
  std::string_view text;
  std::string_view instead;
};
constexpr std::array traps = {
    Trap{"mPa", "MPa for megapascals"}, Trap{"mN", "MN for meganewtons"},
    Trap{"mJ", "MJ for megajoules"},    Trap{"mW", "MW for megawatts"},
    Trap{"ML", "mL for millilitres"},   Trap{"Ml", "mL for millilitres"},
    Trap{"MBAR", "mbar for millibars"}, Trap{"Mbar", "mbar for millibars"},
    Trap{"ton", "t, kg or lb"},         Trap{"tons", "t, kg or lb"},
    Trap{"M", "m for metres"},          Trap{"MK", "K"},
    Trap{"BTU/F", "Btu/\u00b0F"},
};

struct Ending {
  std::string_view text;
  Zero zero;
};
// Longest first. A blank or an opening parenthesis before them is taken off as well.
constexpr std::array endings = {
    Ending{"absolute", Zero::Absolute}, Ending{"gauge", Zero::Gauge},
    Ending{"gage", Zero::Gauge},        Ending{"diff", Zero::Difference},
    Ending{"abs.", Zero::Absolute},     Ending{"abs", Zero::Absolute},
    Ending{"\u00fc", Zero::Gauge},      Ending{"g", Zero::Gauge},
    Ending{"a", Zero::Absolute},        Ending{"d", Zero::Difference},
};

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

bool same_letters(std::string_view a, std::string_view b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (lower(a[i]) != lower(b[i])) return false;
  }
  return true;
}

std::string_view trim(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

/// One name of the table: as written if it stands there so, otherwise without regard to capitals.
std::optional<Unit> named_unit(std::string_view text) {
  const Name* found = nullptr;
  for (const Name& name : names) {
    if (name.text == text) {
      found = &name;
      break;
    }
    if (found == nullptr && same_letters(name.text, text)) found = &name;
  }
  if (found == nullptr || !unit_trap(text).empty()) return std::nullopt;
  return Unit{found->dimension, found->factor, found->offset, found->zero};
}

void multiply(Unit& unit, const Unit& by, int exponent) {
  unit.dimension.mass += exponent * by.dimension.mass;
  unit.dimension.length += exponent * by.dimension.length;
  unit.dimension.time += exponent * by.dimension.time;
  unit.dimension.temperature += exponent * by.dimension.temperature;
  for (int i = 0; i < exponent; ++i) unit.factor *= by.factor;
  for (int i = 0; i > exponent; --i) unit.factor /= by.factor;
}

/// A name of the table with its exponent: "m", "cm2", "s^2", "h-1".
bool multiply_term(Unit& unit, std::string_view term, int sign) {
  if (const auto whole = named_unit(term)) {
    if (whole->zero != Zero::Unsaid) return false;
    multiply(unit, *whole, sign);
    return true;
  }
  if (term.size() < 2 || term.back() < '1' || term.back() > '4') return false;
  int exponent = term.back() - '0';
  term.remove_suffix(1);
  if (term.back() == '-') {
    exponent = -exponent;
    term.remove_suffix(1);
  }
  if (!term.empty() && term.back() == '^') term.remove_suffix(1);
  const auto base = named_unit(trim(term));
  if (!base || base->zero != Zero::Unsaid) return false;
  multiply(unit, *base, sign * exponent);
  return true;
}

/// Multiplies by the terms of a product, parted by "*", blanks or, where dividing, further "/".
bool multiply_product(Unit& unit, std::string_view text, int sign) {
  // The whole first, so that names with blanks ("US gal", "deg F") are found.
  text = trim(text);
  if (text.empty()) return false;
  if (multiply_term(unit, text, sign)) return true;
  for (std::size_t at = text.find_first_of("*/ "); at != std::string_view::npos;
       at = text.find_first_of("*/ ", at + 1)) {
    Unit first = unit;
    if (multiply_term(first, trim(text.substr(0, at)), sign) &&
        multiply_product(first, text.substr(at + 1), sign)) {
      unit = first;
      return true;
    }
  }
  return false;
}

std::optional<Unit> composed_unit(std::string_view text) {
  if (const auto whole = named_unit(text)) return whole;
  Unit unit;
  std::string_view above = text;
  std::string below;
  if (const std::size_t slash = text.find('/'); slash != std::string_view::npos) {
    above = trim(text.substr(0, slash));
    for (const char c : text.substr(slash + 1)) {
      if (c != '(' && c != ')') below += c;
    }
    if (!multiply_product(unit, below, -1)) return std::nullopt;
    if (above.empty() || above == "1") return unit;
  }
  if (!multiply_product(unit, above, 1)) return std::nullopt;
  return unit;
}

/// The unit without its mark for gauge, absolute or difference, and that mark.
std::optional<Unit> marked_unit(std::string_view text) {
  for (const Ending& ending : endings) {
    std::string_view rest = text;
    const bool closed = rest.back() == ')';
    if (closed) rest = trim(rest.substr(0, rest.size() - 1));
    if (rest.size() <= ending.text.size() ||
        !same_letters(rest.substr(rest.size() - ending.text.size()), ending.text)) {
      continue;
    }
    rest.remove_suffix(ending.text.size());
    if (closed) {
      rest = trim(rest);
      if (rest.empty() || rest.back() != '(') continue;
      rest.remove_suffix(1);
    }
    rest = trim(rest);
    if (!rest.empty() && (rest.back() == '-' || rest.back() == ',' || rest.back() == '_')) {
      rest = trim(rest.substr(0, rest.size() - 1));
    }
    auto unit = composed_unit(rest);
    if (!unit || !(unit->dimension == pressure) || unit->zero != Zero::Unsaid) continue;
    unit->zero = ending.zero;
    return unit;
  }
  return std::nullopt;
}

}  // namespace

std::string_view unit_trap(std::string_view text) {
  for (const Trap& trap : traps) {
    if (trap.text == text) return trap.instead;
  }
  return {};
}

std::optional<Unit> read_unit(std::string_view text) {
  constexpr std::size_t longest = 40;
  const std::string plain = plain_characters(text);
  std::string single;  // blanks made single
  for (const char c : trim(plain)) {
    if (c != ' ' || single.empty() || single.back() != ' ') single += c;
  }
  if (single.empty() || single.size() > longest) return std::nullopt;
  if (const auto unit = named_unit(single)) return unit;
  // Marks before products: "bar g" is a gauge pressure, no bar times gram.
  if (const auto unit = marked_unit(single)) return unit;
  return composed_unit(single);
}

std::string_view dimension_name(const Dimension& dimension) {
  struct Row {
    Dimension dimension;
    std::string_view name;
  };
  static constexpr std::array rows = {
      Row{none, "a plain number"},
      Row{length, "a length"},
      Row{area, "an area"},
      Row{volume, "a volume"},
      Row{mass, "a mass"},
      Row{time, "a time"},
      Row{temperature, "a temperature"},
      Row{force, "a force"},
      Row{pressure, "a pressure"},
      Row{energy, "an energy or torque"},
      Row{power, "a power"},
      Row{viscosity, "a viscosity"},
      Row{flow, "a flow"},
      Row{{1, -3, 0, 0}, "a density"},
      Row{{-1, 1, 2, 0}, "a compressibility"},
      Row{{0, 0, 0, -1}, "an expansivity"},
      Row{{0, 2, -2, -1}, "a specific heat"},
      Row{{0, 2, -2, 0}, "an energy per mass"},
      Row{{-1, 4, 2, 0}, "a volume per pressure"},
      Row{{0, 3, 0, -1}, "a volume per temperature"},
      Row{{1, -1, -2, -1}, "a pressure per temperature"},
      Row{{1, -1, -3, 0}, "a pressure rate"},
      Row{{0, 0, -1, 1}, "a temperature rate"},
  };
  for (const Row& row : rows) {
    if (row.dimension == dimension) return row.name;
  }
  return {};
}

}  // namespace steamworthy::units
