#include "hold/pump_answer.h"

#include <algorithm>
#include <cmath>

namespace steamworthy::hold {

namespace {

constexpr double five_percent = 1.6449;

// Known: the half width of the interval is a quarter of the air, or half a millilitre a
// litre of boiler, whichever is more.
bool known(const PumpFit& fit, const Lump& lump) {
  const double half_width = five_percent * fit.air_sd_m3;
  return half_width <= std::max(0.25 * std::fabs(fit.air_m3), 5e-4 * lump.volume_m3);
}

// The record cut short at rising pressures, until the air is known.
std::optional<units::AbsolutePressure> known_at(const HoldInput& input, const PumpRows& rows,
                                                const InstrumentsUsed& used, const Lump& lump,
                                                const LossPrior& loss) {
  constexpr std::size_t tries = 12;
  const std::size_t last = rows.seconds.size() - 1;
  std::size_t before = 0;
  for (std::size_t k = 1; k <= tries; ++k) {
    const std::size_t row = last * k / tries;
    if (row < 3 || row == before) continue;
    before = row;
    const auto fit = fit_pump_up(input, first_rows(rows, row), used, lump, loss);
    if (fit && known(*fit, lump)) {
      const auto end = rows.pressure_pa.begin() + static_cast<std::ptrdiff_t>(row) + 1;
      return units::AbsolutePressure::from_si(*std::max_element(rows.pressure_pa.begin(), end));
    }
  }
  return std::nullopt;
}

// Litres per second while the pump ran: spans of the record without a stroke are no pumping.
std::optional<double> running_rate(const PumpRows& rows) {
  double litres = 0.0;
  double seconds = 0.0;
  for (std::size_t i = 1; i < rows.seconds.size(); ++i) {
    const double pumped = rows.pumped_m3[i] - rows.pumped_m3[i - 1];
    if (pumped <= 0.0) continue;
    litres += pumped;
    seconds += rows.seconds[i] - rows.seconds[i - 1];
  }
  if (!(seconds > 0.0) || !(litres > 0.0)) return std::nullopt;
  return litres / seconds;
}

}  // namespace

PumpUpAnswer pump_up_answer(const HoldInput& input, const PumpRows& rows,
                            const InstrumentsUsed& used, const Lump& lump, const PumpFit& fit,
                            const LossPrior& loss) {
  PumpUpAnswer answer;
  const double half_width = five_percent * fit.air_sd_m3;
  const auto litres = [](double m3) { return units::Volume::from_si(std::max(m3, 0.0)); };
  answer.trapped_air = {litres(fit.air_m3), litres(fit.air_m3 - half_width),
                        litres(fit.air_m3 + half_width)};
  answer.scale = fit.scale;
  answer.scale_sd = fit.scale_sd;
  answer.from_vented = rows.from_vented;
  for (std::size_t i = 0; i < rows.seconds.size(); ++i) {
    answer.points.push_back({rows.seconds[i], units::AbsolutePressure::from_si(rows.pressure_pa[i]),
                             units::Volume::from_si(rows.pumped_m3[i]),
                             units::Volume::from_si(fit.airless_m3[i])});
  }
  answer.known_at = known_at(input, rows, used, lump, loss);
  if (const auto rate = running_rate(rows)) {
    answer.pump_rate = units::VolumeFlow::from_si(*rate);
    const double again = fit.airless_m3.back() / *rate;
    const double down = rows.pumped_m3.back() / *rate;
    answer.venting_costs = units::Duration::from_si(again + down);
  }
  return answer;
}

}  // namespace steamworthy::hold
