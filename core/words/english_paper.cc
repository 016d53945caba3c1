// English: what stands on papers beside the sheet's own words.
#include <array>

#include "words/catalogue.h"

namespace steamworthy::words {
namespace {

constexpr std::array entries = {
    Entry{"paper.details", "Each part with its closures and fittings"},
    Entry{"paper.details_note",
          "Closures stand at their true place and size, dashed where the description gives no "
          "place; of fittings only the level is described: along the part their place is assumed. "
          "Openings in the top or bottom of a part are seen from their edge."},
    Entry{"paper.foot_hash", "inputs {hash} (SHA-256, first 12 digits); date and name by hand"},
    Entry{"paper.foot_hash_date", "inputs {hash} (SHA-256, first 12 digits); {date}"},
    Entry{"paper.foot_made", "made by Steamworthy {version} from {files}"},
    Entry{"paper.foot_no_rule", "no rule is chosen"},
    Entry{"paper.foot_rule", "rule: {title} [{id}]"},
    Entry{"paper.foot_source", "source: {source}"},
    Entry{"paper.highest_water", "highest water"},
    Entry{"paper.kind_drawing", "Boiler to scale"},
    Entry{"paper.level", "level"},
    Entry{"paper.level_unit", "level, {unit}"},
    Entry{"paper.lowest_water", "lowest water"},
    Entry{"paper.no_drawing",
          "The description has no parts, only the maker's water content: there is nothing to draw "
          "to scale."},
    Entry{"paper.piece_of", "piece {piece} of {of}"},
    Entry{"paper.scale_bar", "{length}, scale {scale} where printed at full size"},
    Entry{"paper.tags_without_room", "no room for these tags: {tags}"},
    Entry{"paper.view_front", "from the front"},
    Entry{"paper.view_left", "from the left"},
    Entry{"paper.view_rear", "from the rear"},
    Entry{"paper.view_right", "from the right"},
    Entry{"paper.what", "what"},
};

}  // namespace

std::span<const Entry> english_paper() { return entries; }

}  // namespace steamworthy::words
