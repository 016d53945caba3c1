// English: keys of the room record.
#include <array>

#include "words/catalogue.h"

namespace steamworthy::words {
namespace {

constexpr std::array<Entry, 18> entries = {{
    {"record.checkpoint", "countersigned what was known of every feed"},
    {"record.flaw.too_short", "the bytes end before the fact does"},
    {"record.flaw.too_long", "bytes follow after the end of the fact"},
    {"record.flaw.magic", "the bytes do not begin as a fact does"},
    {"record.flaw.format", "the envelope is of a format that this program does not know"},
    {"record.flaw.header_length", "the fields of the header do not fill it"},
    {"record.flaw.id", "the id is no UUID of version 7"},
    {"record.flaw.scope", "it belongs neither to a closing nor to a plant"},
    {"record.flaw.device_seq", "the numbers of a feed begin with 1"},
    {"record.flaw.prev_hash",
     "the first fact of a feed has no hash before it, and every other has one"},
    {"record.flaw.seen", "the heads that were seen do not stand in order, or are its own"},
    {"record.flaw.person", "the person is no UTF-8, has a control character, or is too long"},
    {"record.flaw.kind", "the kind is not made of words joined by dots, or is too long"},
    {"record.flaw.kind_version", "versions of a kind begin with 1"},
    {"record.flaw.time", "a time is outside the years 1 to 9999"},
    {"record.flaw.offset", "local time differs from UTC by more than 18 hours"},
    {"record.flaw.blobs", "the blobs do not stand in order, or one stands twice"},
    {"record.flaw.body", "the body is longer than 4 MiB"},
}};

}  // namespace

std::span<const Entry> english_record() { return entries; }

}  // namespace steamworthy::words
