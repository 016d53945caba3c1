#include "trace/reader.h"

#include <algorithm>

#include "trace/builder.h"
#include "trace/cells.h"
#include "trace/layout.h"
#include "trace/plan.h"
#include "trace/row.h"
#include "trace/text_lines.h"
#include "units/number_text.h"

namespace steamworthy::trace {
namespace {

constexpr std::size_t sample_lines = 200;
constexpr std::size_t longest_preamble = 2000;  ///< lines after which no reading is looked for
constexpr std::size_t kept_bad_lines = 1000;

}  // namespace

class TraceReader::Body {
 public:
  Body(std::string file, Overrules overrules)
      : file_(std::move(file)), overrules_(std::move(overrules)) {}

  void expect(std::size_t bytes) { expected_bytes_ = bytes; }

  void feed(std::string_view bytes) {
    decoder_.feed(bytes, [this](const LineDecoder::Line& line) { take(line); });
  }

  Reading finish() {
    decoder_.finish([this](const LineDecoder::Line& line) { take(line); });
    if (!is_planned_) plan();
    Reading& reading = reading_;
    reading.understanding = plan_.understanding;
    reading.problems = plan_.problems;
    if (!layout_.is_found) {
      reading.problems = {{"trace.no_readings", file_, 0, "", "",
                           "lines of a time and a pressure, parted by , ; tab or blanks",
                           "the log has no line of readings"}};
    }
    if (builder_) {
      if (builder_->rows() == 0 && reading.problems.empty()) {
        reading.problems.push_back({"trace.no_rows", file_, 0, "", "", "at least one good line",
                                    "no line of the log could be read"});
      }
      Counts counts = counts_;
      counts.preamble = layout_.preamble;
      counts.was_utf16 = decoder_.was_utf16();
      counts.was_windows_1252 = decoder_.was_windows_1252();
      builder_->finish(reading, counts);
    }
    return std::move(reading_);
  }

 private:
  void take(const LineDecoder::Line& line) {
    if (line.is_cut) {
      bad({"trace.too_long", file_, static_cast<int>(line.number), "",
           units::quotable(line.text.substr(0, 40)), "lines of at most 64 kB",
           "the line is too long"});
      return;
    }
    if (is_planned_) {
      read(line.text, line.number);
      return;
    }
    sample_bytes_ += line.text.size() + 1;
    sample_.push_back({std::string(line.text), line.number});
    const std::size_t lines = sample_.size();
    if (lines == sample_lines || (lines == longest_preamble && !layout_.is_found)) {
      layout_ = find_layout(sample_, overrules_);
      if (layout_.is_found || lines == longest_preamble) plan();
    }
  }

  /// The layout is known, or all that will come has come.
  void plan() {
    is_planned_ = true;
    if (!layout_.is_found) layout_ = find_layout(sample_, overrules_);
    if (layout_.is_found) {
      plan_ = make_plan(layout_, overrules_, file_);
      if (plan_.problems.empty()) {
        rows_.emplace(plan_, layout_, file_);
        builder_.emplace(plan_, rows_->measured_columns());
        if (expected_bytes_ > 0 && sample_bytes_ > 0) {
          builder_->reserve(expected_bytes_ / sample_bytes_ * sample_.size() + sample_.size());
        }
      }
    }
    for (const SampleLine& line : sample_) read(line.text, line.number);
    std::vector<SampleLine>().swap(sample_);
    for (auto& cells : layout_.cells) std::vector<std::string>().swap(cells);
  }

  void read(std::string_view line, std::size_t number) {
    if (!rows_ || number == layout_.header_line || number < layout_.first_reading) {
      if (is_comment(line) && number != layout_.header_line) ++counts_.comments;
      return;
    }
    if (trimmed(line).empty()) return;
    if (is_comment(line)) {
      ++counts_.comments;
      return;
    }
    if (line == layout_.header_text) {
      ++counts_.repeated_heads;
      return;
    }
    if (!rows_->read(line, number)) {
      bad(rows_->problem());
      return;
    }
    builder_->add(*rows_, number, [this](Problem problem) { bad(std::move(problem)); });
  }

  void bad(Problem problem) {
    ++reading_.bad_line_count;
    if (reading_.bad_lines.size() < kept_bad_lines)
      reading_.bad_lines.push_back(std::move(problem));
  }

  std::string file_;
  Overrules overrules_;
  LineDecoder decoder_;
  std::vector<SampleLine> sample_;
  std::size_t sample_bytes_ = 0;
  std::size_t expected_bytes_ = 0;
  bool is_planned_ = false;
  Layout layout_;
  Plan plan_;
  std::optional<RowReader> rows_;
  std::optional<TraceBuilder> builder_;
  Counts counts_;
  Reading reading_;
};

TraceReader::TraceReader(std::string file, Overrules overrules)
    : body_(std::make_unique<Body>(std::move(file), std::move(overrules))) {}
TraceReader::~TraceReader() = default;
TraceReader::TraceReader(TraceReader&&) noexcept = default;
TraceReader& TraceReader::operator=(TraceReader&&) noexcept = default;

void TraceReader::expect(std::size_t bytes) { body_->expect(bytes); }
void TraceReader::feed(std::string_view bytes) { body_->feed(bytes); }
Reading TraceReader::finish() { return body_->finish(); }

Reading read_trace(std::string_view text, const std::string& file, const Overrules& overrules) {
  TraceReader reader(file, overrules);
  reader.expect(text.size());
  reader.feed(text);
  return reader.finish();
}

}  // namespace steamworthy::trace
