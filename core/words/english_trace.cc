// English: keys of the room trace.
#include <array>

#include "words/catalogue.h"

namespace steamworthy::words {
namespace {

constexpr std::array entries = {
    Entry{"trace.bad_lines",
          "{lines} {lines|line was|lines were} put aside, as {lines|it|they} cannot be read"},
    Entry{"trace.column_is",
          "column {column}[ ({header})] is {meaning}[ in {unit}][, {zero}][; {assumed}][; "
          "{overruled}]"},
    Entry{"trace.column_not_read", "column {column}[ ({header})] is not read"},
    Entry{"trace.column_not_understood",
          "column {column}[ ({header})] is not understood and not read"},
    Entry{"trace.highest",
          "column {column} is highest at {pressure}, {at} after the first reading"},
    Entry{"trace.hold_begins",
          "the hold begins {at} after the first reading[, at {pressure} on the main gauge]"},
    Entry{
        "trace.hold_not_placed",
        "the test file tells the hold's beginning by a clock and the log has none: give clock_zero "
        "or began_after"},
    Entry{"trace.hold_not_stated", "the test file does not say when the hold began"},
    Entry{"trace.hold_outside",
          "the hold would begin {at} after the first reading, and the log ends {last} after it"},
    Entry{"trace.layout",
          "cells are parted by {separator}, decimals by {decimal}[ ({assumed})][; the heads stand "
          "in line {line}]"},
    Entry{"trace.named_column_missing",
          "the test file names the column {name}, which the log does not have"},
    Entry{"trace.no_gaps", "there are no gaps"},
    Entry{"trace.note_comments",
          "{lines} {lines|line|lines} of comment {lines|was|were} passed over"},
    Entry{"trace.note_doubled",
          "{rows} {rows|row stands|rows stand} twice and {rows|is|are} counted once"},
    Entry{"trace.note_gaps",
          "{gaps} {gaps|gap|gaps} of more than three times the usual step, the longest {longest}"},
    Entry{"trace.note_lost_remarks",
          "{remarks} {remarks|remark was|remarks were} left out: there are too many"},
    Entry{"trace.note_midnight", "the clock passes midnight[ {times} {times|time|times}]"},
    Entry{"trace.note_newest_first", "the log was written newest first and is turned round"},
    Entry{"trace.note_perhaps_absolute",
          "column {column} begins at {pressure} and is taken as gauge pressure: if it is absolute, "
          "say so"},
    Entry{"trace.note_preamble",
          "{lines} {lines|line|lines} above the heads {lines|was|were} passed over"},
    Entry{"trace.note_repeated_heads",
          "the heads stand {lines} {lines|time|times} more within the log"},
    Entry{"trace.note_same_time",
          "{rows} {rows|row has|rows have} the same time as the row before; their order is kept"},
    Entry{"trace.note_utf16", "the log is written in UTF-16"},
    Entry{"trace.note_volume_falls",
          "column {column} falls at {at}: it may not count from the start"},
    Entry{"trace.note_windows_1252", "letters outside ASCII are read as Windows-1252"},
    Entry{"trace.pumped", "{volume} pumped in all"},
    Entry{"trace.pumped_by_strokes", "{strokes} strokes of {stroke}: {volume} pumped in all"},
    Entry{"trace.readings",
          "{readings} {readings|reading|readings} over {span}, usually {step} apart"},
    Entry{"trace.stroke_not_stated",
          "{strokes} strokes, and the test file does not say what one stroke pumps"},
    Entry{"trace.test_key_unread", "the test file's key {name} is not known and passed over"},

    Entry{"trace_assumed.both", "nobody wrote the unit or gauge: both are assumed"},
    Entry{"trace_assumed.decimal", "assumed: it may part thousands"},
    Entry{"trace_assumed.overruled", "so you or the test file say"},
    Entry{"trace_assumed.unit", "nobody wrote the unit: it is assumed"},
    Entry{"trace_assumed.zero", "nobody wrote gauge or absolute: gauge is assumed"},

    Entry{"trace_meaning.ambient", "air temperature"},
    Entry{"trace_meaning.clock", "time of day"},
    Entry{"trace_meaning.date", "date"},
    Entry{"trace_meaning.date_time", "date and time of day"},
    Entry{"trace_meaning.elapsed", "elapsed time"},
    Entry{"trace_meaning.ignored", "not read"},
    Entry{"trace_meaning.metal", "metal temperature"},
    Entry{"trace_meaning.other_temperature", "a temperature, of what is not said"},
    Entry{"trace_meaning.pressure", "pressure"},
    Entry{"trace_meaning.pumped", "volume pumped so far"},
    Entry{"trace_meaning.remarks", "remarks"},
    Entry{"trace_meaning.strokes", "strokes of the pump so far"},
    Entry{"trace_meaning.supply", "temperature of the supply water"},
    Entry{"trace_meaning.unknown", "not understood"},
    Entry{"trace_meaning.water", "water temperature"},

    Entry{"trace_separator.bar", "vertical bars"},
    Entry{"trace_separator.blank", "blanks"},
    Entry{"trace_separator.comma", "commas"},
    Entry{"trace_separator.point", "points"},
    Entry{"trace_separator.semicolon", "semicolons"},
    Entry{"trace_separator.tab", "tabs"},

    Entry{"trace_zero.absolute", "absolute"},
    Entry{"trace_zero.gauge", "gauge"},
};

}  // namespace

std::span<const Entry> english_trace() { return entries; }

}  // namespace steamworthy::words
