#include "trace/builder.h"

#include <algorithm>

#include "trace/summary.h"
#include "units/number_text.h"

namespace steamworthy::trace {
namespace {

using working::Message;

constexpr double day_s = 86400.0;
constexpr std::size_t most_remarks = 10000;
constexpr std::size_t most_of_group = 64;

units::Measure count(std::size_t n) { return units::measure_count(static_cast<double>(n)); }

}  // namespace

TraceBuilder::TraceBuilder(const Plan& plan, const std::vector<int>& columns)
    : plan_(plan), columns_(columns) {
  for (const int column : columns_) {
    const units::Unit& unit = plan_.columns[static_cast<std::size_t>(column)].unit;
    series_.emplace_back(unit.factor, unit.offset);
  }
}

void TraceBuilder::reserve(std::size_t rows) {
  seconds_.reserve(rows);
  for (Series& series : series_) series.reserve(rows);
}

/// Seconds on one scale for the whole log; midnights are counted for a clock without a date.
double TraceBuilder::placed(const RowTime& time) {
  if (time.elapsed_s) return *time.elapsed_s;
  if (time.day) return static_cast<double>(*time.day) * day_s + time.seconds;
  if (last_clock_) {
    const double step = time.seconds - *last_clock_;
    const bool backward = direction_ == Direction::Backward;
    if (!backward && step < -day_s / 2.0) {
      ++days_passed_;
      ++midnights_;
    }
    if (backward && step > day_s / 2.0) {
      --days_passed_;
      ++midnights_;
    }
  }
  return static_cast<double>(days_passed_) * day_s + time.seconds;
}

/// Whether a row with the same time and the same cells stands there already.
bool TraceBuilder::is_doubled(const RowReader& row) {
  const auto end = group_.begin() + static_cast<std::ptrdiff_t>(group_size_);
  return std::find(group_.begin(), end, row.measured()) != end;
}

/// Whether the last row is a stray one: it stands far ahead of both its neighbours.
bool TraceBuilder::last_ran_ahead(double t) const {
  constexpr double far = 10.0;
  const std::size_t n = seconds_.size();
  if (direction_ != Direction::Forward || n < 3) return false;
  const double before = seconds_[n - 2];
  const double usual = std::max(t - before, before - seconds_[n - 3]);
  return t >= before && usual > 0.0 && seconds_[n - 1] - before > far * usual;
}

void TraceBuilder::add(const RowReader& row, std::size_t line,
                       const std::function<void(Problem)>& aside) {
  const RowTime& time = row.time();
  const long days_before = days_passed_;
  const std::size_t midnights_before = midnights_;
  double t = placed(time);
  if (!seconds_.empty()) {
    const double last = seconds_.back();
    if (t == last) {
      if (is_doubled(row)) {
        ++doubled_;
        return;
      }
      ++same_time_;
    }
    if (direction_ == Direction::Unknown && t != last) {
      // Newest first is a usual way to write a log: then every step goes back.
      direction_ = t > last ? Direction::Forward : Direction::Backward;
    }
    if (t < last && direction_ == Direction::Forward && last_ran_ahead(t)) {
      aside(row.time_problem("trace.time_runs_ahead", last_line_, last_time_text_,
                             "a time before that of the next line",
                             "the time runs far ahead of the lines around it"));
      pop();
    } else if ((t < last && direction_ == Direction::Forward) ||
               (t > last && direction_ == Direction::Backward)) {
      days_passed_ = days_before;
      midnights_ = midnights_before;
      aside(row.time_problem("trace.time_runs_back", line, row.time_text(),
                             "a time after that of the line before", "the time runs back"));
      return;
    }
  }
  push(row, t, line);
}

void TraceBuilder::push(const RowReader& row, double t, std::size_t line) {
  const RowTime& time = row.time();
  if (seconds_.empty()) first_ = time;
  if (seconds_.empty() || t != seconds_.back()) group_size_ = 0;
  if (group_size_ < most_of_group) {
    if (group_size_ == group_.size()) group_.emplace_back();
    group_[group_size_++] = row.measured();
  }
  last_clock_ = time.seconds;
  last_line_ = line;
  last_time_text_ = row.time_text();
  seconds_.push_back(t);
  for (std::size_t i = 0; i < series_.size(); ++i) {
    const Measured& cell = row.measured()[i];
    if (!cell.has) {
      series_[i].push_missing();
    } else if (cell.is_si) {
      series_[i].push_si(cell.number.value);
    } else {
      series_[i].push(cell.number);
    }
  }
  const std::string_view remark = row.remark();
  if (!remark.empty() && remark != last_remark_) {
    if (remarks_.size() < most_remarks) {
      remarks_.push_back({seconds_.size() - 1, std::string(remark)});
    } else {
      ++lost_remarks_;
    }
  }
  last_remark_ = remark;
}

void TraceBuilder::pop() {
  seconds_.pop_back();
  for (Series& series : series_) series.pop();
  if (!remarks_.empty() && remarks_.back().row >= seconds_.size()) remarks_.pop_back();
  group_size_ = 0;
}

/// A log that was written newest first, oldest first.
void TraceBuilder::turn_round() {
  std::reverse(seconds_.begin(), seconds_.end());
  for (Series& series : series_) series.reverse();
  std::reverse(remarks_.begin(), remarks_.end());
  for (Remark& remark : remarks_) remark.row = seconds_.size() - 1 - remark.row;
}

void TraceBuilder::finish(Reading& reading, const Counts& counts) {
  Trace& trace = reading.trace;
  if (seconds_.empty()) return;
  RowTime first = first_;
  if (direction_ == Direction::Backward) {
    turn_round();
    // The last line's own time is not kept: it follows from how far back it stands.
    const double back = seconds_.back() - seconds_.front();
    if (first.elapsed_s) first.elapsed_s = *first.elapsed_s - back;
    if (first.clock_s) {
      double clock = *first.clock_s - back;
      long days = 0;
      while (clock < 0.0) {
        clock += day_s;
        ++days;
      }
      first.clock_s = clock;
      if (first.day) first.day = *first.day - days;
    }
  }
  trace.first_elapsed_s = first.elapsed_s;
  trace.first_clock_s = first.clock_s;
  trace.first_day = first.day;
  const double zero = seconds_.front();
  for (double& t : seconds_) t -= zero;
  trace.seconds = std::move(seconds_);
  trace.remarks = std::move(remarks_);
  for (std::size_t i = 0; i < series_.size(); ++i) {
    const auto c = static_cast<std::size_t>(columns_[i]);
    const ColumnPlan& plan = plan_.columns[c];
    const Column& column = plan_.understanding.columns[c];
    Channel channel{column.number, plan.name,           column.header,       plan.meaning,
                    plan.absolute, column.zero_assumed, column.unit_assumed, std::move(series_[i])};
    switch (plan.meaning) {
      case Meaning::Pressure:
        // A gauge on the pump's side does not read the boiler while the test valve is shut.
        if (plan.of_pump) {
          trace.pressures.push_back(std::move(channel));
        } else {
          const auto at = std::find_if(
              trace.pressures.begin(), trace.pressures.end(), [this](const Channel& other) {
                return plan_.columns[static_cast<std::size_t>(other.column) - 1].of_pump;
              });
          trace.pressures.insert(at, std::move(channel));
        }
        break;
      case Meaning::Water:
        trace.water.push_back(std::move(channel));
        break;
      case Meaning::Metal:
        trace.metal.push_back(std::move(channel));
        break;
      case Meaning::Ambient:
        trace.ambient.push_back(std::move(channel));
        break;
      case Meaning::Supply:
        trace.supply.push_back(std::move(channel));
        break;
      case Meaning::OtherTemperature:
        trace.other_temperatures.push_back(std::move(channel));
        break;
      case Meaning::Pumped:
        trace.pumped = std::move(channel);
        break;
      case Meaning::Strokes:
        trace.strokes = std::move(channel);
        break;
      default:
        break;
    }
  }
  trace.gaps = find_gaps(trace.seconds);
  add_notes(reading, counts);
}

void TraceBuilder::add_notes(Reading& reading, const Counts& counts) const {
  std::vector<Message>& notes = reading.notes;
  const Trace& trace = reading.trace;
  if (counts.was_utf16) notes.push_back(Message{"trace.note_utf16", {}});
  if (counts.was_windows_1252) notes.push_back(Message{"trace.note_windows_1252", {}});
  if (counts.preamble > 0)
    notes.push_back(Message{"trace.note_preamble", {{"lines", count(counts.preamble)}}});
  if (counts.comments > 0)
    notes.push_back(Message{"trace.note_comments", {{"lines", count(counts.comments)}}});
  if (counts.repeated_heads > 0) {
    notes.push_back(
        Message{"trace.note_repeated_heads", {{"lines", count(counts.repeated_heads)}}});
  }
  if (direction_ == Direction::Backward) notes.push_back(Message{"trace.note_newest_first", {}});
  if (midnights_ > 0)
    notes.push_back(Message{"trace.note_midnight", {{"times", count(midnights_)}}});
  if (doubled_ > 0) notes.push_back(Message{"trace.note_doubled", {{"rows", count(doubled_)}}});
  if (same_time_ > 0)
    notes.push_back(Message{"trace.note_same_time", {{"rows", count(same_time_)}}});
  if (lost_remarks_ > 0)
    notes.push_back(Message{"trace.note_lost_remarks", {{"remarks", count(lost_remarks_)}}});
  if (!trace.gaps.empty()) {
    const auto longest =
        std::max_element(trace.gaps.begin(), trace.gaps.end(),
                         [](const Gap& a, const Gap& b) { return a.seconds < b.seconds; });
    notes.push_back(
        Message{"trace.note_gaps",
                {{"gaps", count(trace.gaps.size())},
                 {"longest", units::Measure{units::Kind::Duration, longest->seconds}}}});
  }
  for (const auto* channel :
       {trace.pumped ? &*trace.pumped : nullptr, trace.strokes ? &*trace.strokes : nullptr}) {
    if (channel == nullptr) continue;
    if (const auto row = first_fall(channel->values)) {
      notes.push_back(
          Message{"trace.note_volume_falls",
                  {{"column", count(static_cast<std::size_t>(channel->column))},
                   {"at", units::Measure{units::Kind::Duration, trace.seconds[*row]}}}});
    }
  }
  for (const Channel& gauge : trace.pressures) {
    // One atmosphere before anything was pumped looks like an absolute pressure.
    constexpr double low = 0.9e5;
    constexpr double high = 1.1e5;
    if (!gauge.zero_assumed || gauge.values.empty() || !gauge.values.has(0)) continue;
    const double first = gauge.values.si(0);
    if (first > low && first < high) {
      notes.push_back(
          Message{"trace.note_perhaps_absolute",
                  {{"column", count(static_cast<std::size_t>(gauge.column))},
                   {"pressure", units::Measure{units::Kind::PressureDifference, first}}}});
    }
  }
}

}  // namespace steamworthy::trace
