// English: tokens of the description and marks, as papers say them.
#include <array>

#include "words/catalogue.h"

namespace steamworthy::words {
namespace {

constexpr std::array entries = {
    Entry{"kind.air", "air"},
    Entry{"kind.before_filling", "before filling"},
    Entry{"kind.before_raising_pressure", "before raising pressure"},
    Entry{"kind.before_steam", "before steam"},
    Entry{"kind.bend", "bend"},
    Entry{"kind.blank", "blank"},
    Entry{"kind.bottom", "bottom"},
    Entry{"kind.cap", "cap"},
    Entry{"kind.circle", "round"},
    Entry{"kind.closure", "closure"},
    Entry{"kind.compressed_fibre", "compressed fibre"},
    Entry{"kind.far_end", "far end of the pipe"},
    Entry{"kind.flange", "flange"},
    Entry{"kind.flexible_graphite", "flexible graphite"},
    Entry{"kind.front", "front"},
    Entry{"kind.gag", "gag"},
    Entry{"kind.gland", "gland"},
    Entry{"kind.handhole", "handhole"},
    Entry{"kind.left", "left"},
    Entry{"kind.manhole", "manhole"},
    Entry{"kind.metal", "metal"},
    Entry{"kind.metal_to_metal", "metal to metal, no gasket"},
    Entry{"kind.nozzle", "nozzle"},
    Entry{"kind.oblong", "oblong"},
    Entry{"kind.other", "other"},
    Entry{"kind.oval", "oval"},
    Entry{"kind.plug", "plug"},
    Entry{"kind.plugged_tube", "plugged tube"},
    Entry{"kind.rear", "rear"},
    Entry{"kind.right", "right"},
    Entry{"kind.rubber", "rubber"},
    Entry{"kind.seam", "seam"},
    Entry{"kind.soft_metal", "soft metal"},
    Entry{"kind.spiral_wound", "spiral wound"},
    Entry{"kind.test_gear", "test gear"},
    Entry{"kind.top", "top"},
    Entry{"kind.tube_ends", "tube ends"},
    Entry{"kind.two_valves_and_tell_tale", "two valves and tell-tale"},
    Entry{"kind.water", "water"},
    Entry{"kind.woven_tape", "woven tape"},

    Entry{"mark.cleaned", "seat and plate cleaned and looked at"},
    Entry{"mark.decide", "somebody must decide"},
    Entry{"mark.gap_measured", "gap measured, within limit"},
    Entry{"mark.hardened_up", "hardened up, done"},
    Entry{"mark.leaking", "leaking, with the number of the leak"},
    Entry{"mark.nipped_up", "nipped up on its gasket"},
    Entry{"mark.not_opened", "not opened this time"},
    Entry{"mark.open", "open"},
    Entry{"mark.seen_dry", "seen dry"},
    Entry{"mark.touched", "touched since it was seen dry"},
    Entry{"mark.unsent", "not yet known to be sent"},
};

}  // namespace

std::span<const Entry> english_paper_kinds() { return entries; }

}  // namespace steamworthy::words
