// English: how a plate sits in its opening, from the room fitup.
#include <array>

#include "words/catalogue.h"

namespace steamworthy::words {
namespace {

constexpr std::array entries = {
    Entry{"fitup.clearance", "gap all round with the plate in the middle"},
    Entry{"fitup.give_or_take", "give or take {give_or_take}"},
    Entry{"fitup.good_as_it_stands",
          "good as it stands: no gap is above {most}, and {limit} is allowed"},
    Entry{
        "fitup.good_once_moved",
        "move it {move} toward the {towards}; then it has about {clearance} all round, at no place "
        "felt above {most}: good"},
    Entry{"fitup.limit", "greatest gap allowed"},
    Entry{"fitup.limit_is_practice",
          "1/16 in all round is common practice, no source; the maker's book goes before it"},
    Entry{
        "fitup.more_places",
        "cannot tell: between the places felt the gap could reach {most}, and {limit} is allowed; "
        "feel at more places"},
    Entry{"fitup.not_of_its_shape",
          "the gap at the {place} is {misfit} off what a plate of its opening's shape would leave: "
          "look for a plate turned or from another opening, a bent plate, a worn edge, a wrong "
          "reading"},
    Entry{"fitup.off_centre", "plate off the middle of its opening"},
    Entry{"fitup.place.bottom", "bottom"},
    Entry{"fitup.place.left", "left"},
    Entry{"fitup.place.lower_left", "lower left"},
    Entry{"fitup.place.lower_right", "lower right"},
    Entry{"fitup.place.right", "right"},
    Entry{"fitup.place.top", "top"},
    Entry{"fitup.place.top_left", "top left"},
    Entry{"fitup.place.top_right", "top right"},
    Entry{"fitup.places_do_not_reach_round",
          "cannot tell: more than a third of the way round was not felt; feel at a place in each "
          "quarter"},
    Entry{"fitup.read_again", "feel all round again once it is moved and nipped up"},
    Entry{
        "fitup.report_all_round",
        "even in the middle {least} is left, and {limit} is allowed: report it, do not accept it"},
    Entry{"fitup.report_at_place",
          "even in the middle {least} is left, most at the {place}, and {limit} is allowed: report "
          "it, do not accept it"},
    Entry{"fitup.sits_in_the_middle",
          "it sits in the middle of its opening, give or take "
          "{give_or_take}"},
    Entry{"fitup.sits_off_centre",
          "it sits {off_centre} off the middle, toward the {towards}, give or take {give_or_take}"},
    Entry{"fitup.smaller_by", "plate smaller than its opening across"},
    Entry{
        "fitup.within_the_step",
        "cannot tell: with the plate where it fits best the greatest gap lies between {least} and "
        "{most}, and {limit} is allowed; use a finer feeler"},
    Entry{"fitup.worst_now", "greatest gap as it stands, at most"},
    Entry{"fitup.worst_then", "greatest gap once moved, at most"},
    Entry{"input.feeler_step", "step from one feeler to the next, the coarsest used"},
    Entry{"input.gaps_felt", "gaps felt"},
    Entry{"input.makers_gap_limit", "greatest gap by the maker's book"},
};

}  // namespace

std::span<const Entry> english_fitup() { return entries; }

}  // namespace steamworthy::words
