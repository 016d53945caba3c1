// Fuzzes trace/reader.h: any bytes as a log, in one piece and in two. Either there are reasons why
// nothing was read, or every row is sound: time never falls, each cell is a finite number.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "trace/reader.h"
#include "trace/summary.h"

namespace {

using namespace steamworthy;

void demand(bool holds) {
  if (!holds) std::abort();
}

void inspect(const trace::Channel& channel, std::size_t rows) {
  demand(channel.values.size() == rows);
  for (std::size_t i = 0; i < rows; ++i) {
    demand(!channel.values.has(i) || std::isfinite(channel.values.si(i)));
  }
}

void inspect(const trace::Reading& reading) {
  for (const auto& list : {reading.problems, reading.bad_lines}) {
    for (const Problem& problem : list) demand(!problem.code.empty() && !problem.message.empty());
  }
  demand(reading.bad_lines.size() <= reading.bad_line_count);
  const trace::Trace& trace = reading.trace;
  demand(reading.is_usable() || !reading.problems.empty());
  for (std::size_t i = 0; i < trace.rows(); ++i) {
    demand(std::isfinite(trace.seconds[i]));
    demand(i == 0 || trace.seconds[i] >= trace.seconds[i - 1]);
  }
  for (const auto* list : {&trace.pressures, &trace.water, &trace.metal, &trace.ambient,
                           &trace.supply, &trace.other_temperatures}) {
    for (const trace::Channel& channel : *list) inspect(channel, trace.rows());
  }
  if (trace.pumped) inspect(*trace.pumped, trace.rows());
  if (trace.strokes) inspect(*trace.strokes, trace.rows());
  for (const trace::Remark& remark : trace.remarks) demand(remark.row < trace.rows());
  for (const trace::Gap& gap : trace.gaps) demand(gap.row < trace.rows() && gap.seconds > 0.0);
  const trace::Summary summary = trace::summarise(reading);
  demand(summary.rows == trace.rows() && std::isfinite(summary.span_s));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const trace::Reading whole = trace::read_trace(text, "fuzz");
  inspect(whole);
  trace::TraceReader reader("fuzz");
  const std::size_t cut = size == 0 ? 0 : data[0] % size;
  reader.feed(text.substr(0, cut));
  reader.feed(text.substr(cut));
  const trace::Reading parts = reader.finish();
  demand(parts.trace.seconds == whole.trace.seconds);
  demand(parts.bad_lines == whole.bad_lines);
  demand(parts.problems == whole.problems);
  return 0;
}
