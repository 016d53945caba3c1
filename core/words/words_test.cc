// Checks words/words.h: how templates are filled, and what stands where words are missing.
#include "words/words.h"

#include <gtest/gtest.h>

#include "units/makers.h"

namespace steamworthy::words {
namespace {

using working::Message;
using working::Origin;
using working::Term;

Style with(std::string key, std::string text) {
  Style style;
  style.print.gap = " ";
  style.overrides[std::move(key)] = std::move(text);
  return style;
}

Style plain() { return with("none.none", ""); }

TEST(Sentence, FillsTextsTermsAndMeasures) {
  const Message message{"rules.authority_not_named",
                        {{"pressure", units::measure(units::bars_gauge(54))},
                         {"working_pressure", units::measure(units::bars_gauge(36))},
                         {"witness", "the inspector"}}};
  EXPECT_EQ(sentence(message, plain()),
            "54.00 bar gauge is above the working pressure of 36.00 bar gauge; name who ordered or "
            "agreed to it (the inspector).");
  const Message term{"rules.missing_input", {{"input", Term{"input.working_pressure"}}}};
  EXPECT_EQ(sentence(term, plain()), "The rule needs to know: working pressure.");
}

TEST(Sentence, SpeaksInTheUnitsThatAreAskedFor) {
  Style us = plain();
  us.print.system = units::System::Us;
  const Message message{"rules.too_cold",
                        {{"found", units::measure(units::celsius(5))},
                         {"limit", units::measure(units::celsius(21))}}};
  EXPECT_EQ(sentence(message, us), "41.0 °F is colder than the 69.8 °F that the rule asks for.");
}

TEST(Sentence, LeavesOutBracketsWhoseValueWasNotGiven) {
  const Message message{"rules.pick_within", {{"most", units::measure(units::bars_gauge(54))}}};
  EXPECT_EQ(sentence(message, plain()),
            "The rule leaves the pressure to you, not above 54.00 bar gauge.");
}

TEST(Sentence, JoinsAListOfValues) {
  const Message message{
      "rules.excluded_by",
      {{"condition_1", Term{"work.gaskets"}}, {"condition_2", Term{"trait.lap_seam"}}}};
  EXPECT_EQ(sentence(message, plain()),
            "The rule excludes this case: gaskets only, a longitudinal joint is lapped.");
}

TEST(Sentence, ChoosesBetweenOneAndMany) {
  const Style style = with("a.b", "{n} {n|gauge|gauges}");
  EXPECT_EQ(phrase({"a.b", {{"n", units::measure_count(1)}}}, style), "1 gauge");
  EXPECT_EQ(phrase({"a.b", {{"n", units::measure_count(2)}}}, style), "2 gauges");
}

TEST(Sentence, ShowsAMissingKeyAndAMissingValueInsteadOfFailing) {
  EXPECT_EQ(sentence({"nobody.wrote_this", {}}, plain()), "<nobody.wrote_this>.");
  EXPECT_EQ(sentence({"rules.too_cold", {}}, plain()),
            "<found> is colder than the <limit> that the rule asks for.");
  EXPECT_EQ(label("nobody.wrote_this"), "<nobody.wrote_this>");
}

TEST(Sentence, SurvivesBracesThatDoNotClose) {
  for (const char* text :
       {"{", "}", "[", "]", "{a", "[{a]", "a]b[c}", "{|", "{*}", "{}", "[[{a}]]"}) {
    const Style style = with("a.b", text);
    EXPECT_NO_THROW(sentence({"a.b", {{"a", "x"}}}, style)) << text;
  }
}

TEST(Sentence, EndsThoughWordsNameEachOtherInACircle) {
  EXPECT_EQ(phrase({"a.b", {{"x", Term{"a.b"}}}}, with("a.b", "{x}")), "<a.b>");
}

TEST(Sentence, FillsTheWordsOfATermWithTheMessagesOwnValues) {
  const Message late{"alarm.clearance_wrong",
                     {{"step", Term{"clearance.fill"}},
                      {"check", Term{"outstanding.s4_closure"}},
                      {"subject", "FW-A07"}}};
  EXPECT_EQ(sentence(late, plain()),
            "What is known now speaks against \"clear to fill\": closure FW-A07 is open, or nobody "
            "said whether it was opened.");
}

TEST(Override, ASitesOwnWordStandsInPlaceOfOurs) {
  EXPECT_EQ(label("trade.yoke"), "yoke");
  EXPECT_EQ(label("trade.yoke", with("trade.yoke", "crab")), "crab");
}

TEST(RenderFigure, IsOneLineWithItsUnit) {
  const auto figure =
      working::known("rules.test_pressure", "us-marine", units::measure(units::bars_gauge(54)), {});
  EXPECT_EQ(render_figure(figure, plain()),
            "Test pressure of the rule (us-marine): 54.00 bar gauge");
}

TEST(RenderFigure, SaysWhyItCannotTell) {
  const auto figure = working::unknown("rules.test_pressure", "", {"rules.not_stated", {}});
  EXPECT_EQ(render_figure(figure, plain()),
            "Test pressure of the rule: cannot tell. The rule does not say.");
}

TEST(RenderWorking, UnfoldsFormulaInputsSourcesAndRemarks) {
  working::Working working;
  working.formula = "p = k p_w";
  working.inputs = {{"k", "input.factor", units::measure_fraction(1.5), Origin::Rule, "CFR-61"},
                    {"p_w", "input.working_pressure", units::measure(units::bars_gauge(36)),
                     Origin::Described, ""}};
  working.sources = {"CFR-61"};
  working.method = "rules";
  working.remarks = {{"rules.met_is_not_tight", {}}};
  const auto figure =
      working::known("rules.test_pressure", "", units::measure(units::bars_gauge(54)), working);
  EXPECT_EQ(render_working(figure, plain()),
            "Test pressure of the rule: 54.00 bar gauge\n"
            "    p = k p_w\n"
            "    k    1.5              the rule's factor (the rule says so, [CFR-61])\n"
            "    p_w  36.00 bar gauge  working pressure (from the boiler's description)\n"
            "    sources: [CFR-61]\n"
            "    method: docs/methods/rules.md\n"
            "    - Keeping within the allowed fall meets the rule; it does not show that nothing "
            "leaks.\n");
}

}  // namespace
}  // namespace steamworthy::words
