// English: keys of the room record.
#include <array>

#include "words/catalogue.h"

namespace steamworthy::words {
namespace {

constexpr std::array<Entry, 58> entries = {{
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
    {"record.fault.unreadable", "at {where}: the bytes are no fact: {flaw}"},
    {"record.fault.no_key", "{fact}: the key of the device that signed it is not there"},
    {"record.fault.bad_signature",
     "{fact}: its signature does not hold; its bytes, its signature or the key are not those of "
     "its device"},
    {"record.fault.broken_chain", "{fact} does not follow {other}: the hash before it is another"},
    {"record.fault.forked",
     "there are two of {fact}: the key of this device was used in two places"},
    {"record.fault.same_id", "{fact} and {other} have one id"},
    {"record.fault.seen_differs",
     "{fact} is another than the one that {other} has seen[, found {times} times]"},
    {"record.fault.seen_shrank",
     "{fact} has not seen {other}, which the fact before it in its feed had seen"},
    {"record.fault.hash_differs",
     "{fact}, at {where}: it is stored under a hash that its bytes do not have"},
    {"record.fault.place_differs", "{fact}, at {where}: it is stored as {other}"},
    {"record.fault.blob_damaged", "blob {blob}: its content has another hash than its name"},
    {"record.fault.key_damaged", "the key at {where} is not that of the device {text}"},
    {"record.fault.gap", "{fact}[ to number {until}] is not there, though {other} is"},
    {"record.fault.seen_missing",
     "{fact} is not there, though {other} has seen it[, found {times} times]"},
    {"record.fault.blob_missing", "blob {blob} of {fact} is not there"},
    {"record.fault.doubled", "{fact} is there twice, with the same bytes"},
    {"record.fault.blob_unused", "blob {blob}: no fact names it"},
    {"record.fault.clock_back",
     "{fact} was recorded before {other}, by the clock of the same device: {by}[; {times} such "
     "facts, this the first]"},
    {"record.fault.clock_behind_seen",
     "{fact} was recorded before {other}, which it had seen: one of the two clocks was wrong, by "
     "{by} at least[; {times} such facts, this the first]"},
    {"record.fault.quarantined", "at {where}: a fact was refused when it came, and kept ({text})"},
    {"record.fault.no_export", "the file is no export of a record"},
    {"record.fault.export_format", "the export is of a format that this program does not know"},
    {"record.fault.cut_short",
     "at {where}: the file ends before its end mark; something was cut off"},
    {"record.fault.file_hash", "the bytes of the file are not those that were written"},
    {"record.fault.file_counts", "the file does not hold as many things as its end says"},
    {"record.fault.section", "at {where}: a section that this program cannot read[ ({text})]"},
    {"record.proves.signed",
     "each of the facts ({facts}) has the very bytes that its device signed: not a letter was "
     "changed since"},
    {"record.proves.whole",
     "in each feed no fact is missing from the first to the last, none was put in, and their order "
     "is as it was"},
    {"record.proves.order",
     "of the facts that are there none was put in later, and their order within each feed is as it "
     "was"},
    {"record.proves.checkpoint",
     "{scope}: the feed of device {device} up to number {number} (of {last}) was countersigned by "
     "device {by}: whoever holds the first key cannot have changed it since by himself"},
    {"record.proves.vouched",
     "{scope}: the feed of device {device} up to number {number} (of {last}) had been seen by "
     "device {by} when that signed"},
    {"record.proves.known_key", "the key of device {device} is the one that you named"},
    {"record.not_proved.not_sound",
     "nothing: something is wrong with this record, as told above; what else is in it may still be "
     "right, but find out first"},
    {"record.not_proved.empty", "nothing: there is no fact"},
    {"record.not_proved.missing", "what the missing facts said"},
    {"record.not_proved.end_of_feed",
     "{scope}: that the feed of device {device} ends with number {last}: nobody else has seen more "
     "than its first {number}"},
    {"record.not_proved.whose_key",
     "whose the key of device {device} is: compare it with the device itself, and name it"},
    {"record.not_proved.truth", "that what was reported is true: only that it was reported so"},
    {"record.not_proved.times",
     "when anything happened: times are as people said and as the clocks of the devices stood"},
    {"record.not_proved.person",
     "that the person named in a fact held the device: whoever holds a device can report on it"},
}};

}  // namespace

std::span<const Entry> english_record() { return entries; }

}  // namespace steamworthy::words
