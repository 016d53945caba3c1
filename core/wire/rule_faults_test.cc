// rule_faults_test.cc — wrong rule files, each with the exact sentences it gets.
#include <gtest/gtest.h>

#include "base/error.h"
#include "wire/rule.h"

namespace steamworthy::wire {
namespace {

/// A sound rule; a row of the table replaces `from` in it by `to`.
constexpr const char* sound = R"(id = "site-tight"
title = "Tightness after small work"
jurisdiction = "site"
edition = "first"
purpose = "tightness"
works = ["gaskets"]

[source]
key = "SITE-7"
kind = "site-rule"
seen = "site"

[pressure]
sense = "at-most"
factor = 1
of = "working pressure"

[[windows]]
stage = "filling"
medium = "water"
from = "20 °C"
to = "50 °C"

[drop]
share = "2 %"
within = "30 min"
)";

struct Row {
  const char* from;
  const char* to;
  std::vector<std::string> sentences;
};

std::string changed(const Row& row) {
  std::string text = sound;
  const auto at = text.find(row.from);
  EXPECT_NE(at, std::string::npos) << row.from;
  return text.replace(at, std::string(row.from).size(), row.to);
}

std::vector<std::string> sentences_for(std::string_view text) {
  try {
    read_rule({"wrong.toml", text});
  } catch (const BadInput& error) {
    std::vector<std::string> result;
    for (const Problem& problem : error.problems()) result.push_back(sentence(problem));
    return result;
  }
  return {};
}

const Row rows[] = {
    {"id = \"site-tight\"",
     "id = \"Site Tight\"",
     {"wrong.toml:1: id: this cannot be the name of a rule (found \"Site Tight\"; accepted: "
      "lower-case letters, digits and hyphens, 64 at most)"}},
    {"title = \"Tightness after small work\"\n",
     "",
     {"wrong.toml: title: the rule must say this (accepted: some words)"}},
    {"purpose = \"tightness\"",
     "purpose = \"tightnes\"",
     {"wrong.toml:5: purpose: there is no such word here; did you mean \"tightness\"? (found "
      "\"tightnes\"; accepted: tightness, strength, working, limit, interval, history)"}},
    {"purpose = \"tightness\"\n",
     "",
     {"wrong.toml: purpose: the rule must say this (accepted: one of tightness, strength, working, "
      "limit, interval, history)"}},
    {"works = [\"gaskets\"]",
     "works = [\"gasket\"]",
     {"wrong.toml:6: works[1]: there is no such word here; did you mean \"gaskets\"? (found "
      "\"gasket\"; accepted: gaskets, tubes-rolled, tubes-renewed, drum-repaired, "
      "strength-doubted, new-installation, periodic)"}},
    {"works = [\"gaskets\"]",
     "works = \"gaskets\"",
     {"wrong.toml:6: works: this must be a list (found \"gaskets\"; accepted: a list of words such "
      "as [\"gaskets\"])"}},
    {"works = [\"gaskets\"]",
     "works = [3]",
     {"wrong.toml:6: works[1]: this must be a word (found \"3\"; accepted: gaskets, tubes-rolled, "
      "tubes-renewed, drum-repaired, strength-doubted, new-installation, periodic)"}},
    {"works = [\"gaskets\"]",
     "subject = [\"boiler\"]",
     {"wrong.toml:6: subject: there is no such field here; did you mean \"subjects\"? (found "
      "\"subject\"; accepted: id, title, jurisdiction, edition, date, purpose, subjects, boilers, "
      "works, witness, months_between, stress_cap, preparations, notes, source, applies, unless, "
      "pressure, windows, holds, drop, gauges, ceiling, examination, safety_valves, rise)"}},
    {"works = [\"gaskets\"]",
     "subjects = []",
     {"wrong.toml:6: subjects: the rule must say what it is about (accepted: at least one, such as "
      "\"boiler\")"}},
    {"works = [\"gaskets\"]",
     "stress_cap = \"0.9\"",
     {"wrong.toml:6: stress_cap: has no unit (found \"0.9\"; accepted: a percentage such as \"0.5 "
      "%\")"}},
    {"works = [\"gaskets\"]",
     "months_between = 2.5",
     {"wrong.toml:6: months_between: this must be a whole number (found \"2.5\"; accepted: a whole "
      "number such as 2)"}},
    {"works = [\"gaskets\"]",
     "notes = [true]",
     {"wrong.toml:6: notes[1]: this must be text (found \"true\"; accepted: text in quotes)"}},
    {"edition = \"first\"",
     "edition = 1",
     {"wrong.toml:4: edition: this must be text (found \"1\"; accepted: text in quotes)"}},
    {"seen = \"site\"",
     "seen = \"seen\"",
     {"wrong.toml:11: source.seen: kind and seen must agree on whether this is the site's own rule "
      "(found \"seen\"; accepted: \"site\" together with kind \"site-rule\", and only then)"}},
    {"key = \"SITE-7\"",
     "key = \"see the binder\"",
     {"wrong.toml:9: source.key: a rule must name its source (found \"see the binder\"; accepted: "
      "a key of the bibliography such as \"CFR-46-61.05-10\")"}},
    {"factor = 1\n",
     "factor = 125\n",
     {"wrong.toml:15: pressure.factor: this cannot be the factor of a test pressure (found "
      "\"125\"; accepted: above 0 and not above 5)"}},
    {"factor = 1\n",
     "factor = \"1\"\n",
     {"wrong.toml:15: pressure.factor: this must be a plain number (found \"1\"; accepted: a "
      "number such as 1.5)"}},
    {"factor = 1\n",
     "factor = nan\n",
     {"wrong.toml:15: pressure.factor: this must be a plain number (found \"nan\"; accepted: a "
      "number such as 1.5)"}},
    {"factor = 1\n",
     "faktor = 1\n",
     {"wrong.toml:13: pressure.factor: the rule must say this (accepted: a number such as 1.5)",
      "wrong.toml:15: pressure.faktor: there is no such field here; did you mean \"factor\"? "
      "(found \"faktor\"; accepted: sense, branches, greatest_of, factor, of, times_stress_ratio, "
      "least_stress_ratio, plus, least, cap, above)"}},
    {"of = \"working pressure\"",
     "of = \"MAWP\"",
     {"wrong.toml:16: pressure.of: there is no such word here (found \"MAWP\"; accepted: working "
      "pressure, operating pressure, lowest safety valve, highest safety valve, lesser of working "
      "pressure and highest safety valve, design pressure, service loading, boiler test pressure, "
      "retest pressure, original test pressure)"}},
    {"of = \"working pressure\"",
     "of = \"working presure\"",
     {"wrong.toml:16: pressure.of: there is no such word here; did you mean \"working pressure\"? "
      "(found \"working presure\"; accepted: working pressure, operating pressure, lowest safety "
      "valve, highest safety valve, lesser of working pressure and highest safety valve, design "
      "pressure, service loading, boiler test pressure, retest pressure, original test pressure)"}},
    {"sense = \"at-most\"",
     "sense = \"between\"",
     {"wrong.toml:13: pressure.above: an interval needs both its ends, and nothing else has two "
      "(accepted: what must be passed, with sense = \"between\" and only then)"}},
    {"sense = \"at-most\"",
     "sense = \"named-by-authority\"",
     {"wrong.toml: witness: the rule must say this (accepted: who names the pressure)",
      "wrong.toml:15: pressure.factor: where an authority names the pressure, the rule states none "
      "(accepted: nothing)"}},
    {"of = \"working pressure\"",
     "of = \"working pressure\"\ncap = \"40 bar abs\"",
     {"wrong.toml:17: pressure.cap: is an absolute pressure where a gauge pressure is wanted "
      "(found \"40 bar abs\"; accepted: a gauge pressure such as \"45 bar\" or \"650 psig\")"}},
    {"of = \"working pressure\"",
     "of = \"working pressure\"\ncap = 40",
     {"wrong.toml:17: pressure.cap: a quantity is text with its unit (found \"40\"; accepted: a "
      "gauge pressure such as \"45 bar\" or \"650 psig\")"}},
    {"of = \"working pressure\"",
     "of = \"working pressure\"\nleast = \"5 bar\"\ncap = \"4 bar\"",
     {"wrong.toml:18: pressure.cap: the least is above the cap (found \"4 bar\"; accepted: a "
      "pressure not below least)"}},
    {"of = \"working pressure\"",
     "of = \"working pressure\"\nplus = \"2 kg\"",
     {"wrong.toml:17: pressure.plus: is a mass, not a pressure difference (found \"2 kg\"; "
      "accepted: a pressure difference such as \"0.5 bar\" or \"10 psi\")"}},
    {"factor = 1\nof = \"working pressure\"\n",
     "[[pressure.greatest_of]]\nfactor = 1\nof = \"working pressure\"\n",
     {"wrong.toml:15: pressure.greatest_of: the greatest of one is that one (found \"one\"; "
      "accepted: two or more, or factor and of by themselves)"}},
    {"factor = 1\nof = \"working pressure\"\n",
     "[[pressure.branches]]\nup_to = \"7 bar\"\nfactor = 2\nof = \"working "
     "pressure\"\n[[pressure.branches]]\nup_to = \"9 bar\"\nfactor = 1\nof = \"working "
     "pressure\"\n",
     {"wrong.toml:20: pressure.branches[2].up_to: the last branch must hold for every higher "
      "pressure (found \"9 bar\"; accepted: nothing)"}},
    {"from = \"20 °C\"",
     "from = \"20\"",
     {"wrong.toml:21: windows[1].from: has no unit (found \"20\"; accepted: a temperature such as "
      "\"21 °C\", \"70 °F\" or \"294 K\")"}},
    {"from = \"20 °C\"",
     "from = \"60 °C\"",
     {"wrong.toml:22: windows[1].to: nothing can lie within this window (found \"50 °C\"; "
      "accepted: a temperature above from)"}},
    {"to = \"50 °C\"",
     "to = \"500 °C\"",
     {"wrong.toml:22: windows[1].to: water for a test is liquid and open to the air while it is "
      "filled (found \"500 °C\"; accepted: 0 °C to 100 °C)"}},
    {"stage = \"filling\"",
     "stage = \"fill\"",
     {"wrong.toml:19: windows[1].stage: there is no such word here; did you mean \"filling\"? "
      "(found \"fill\"; accepted: filling, under-test, examination)"}},
    {"share = \"2 %\"",
     "share = \"100 %\"",
     {"wrong.toml:25: drop.share: this cannot be a share (found \"100 %\"; accepted: above 0 % and "
      "below 100 %)"}},
    {"within = \"30 min\"",
     "within = \"0 min\"",
     {"wrong.toml:26: drop.within: a drop is allowed within a time (found \"0 min\"; accepted: a "
      "time above 0)"}},
    {"within = \"30 min\"",
     "within = \"30 bar\"",
     {"wrong.toml:26: drop.within: is a pressure, not a time (found \"30 bar\"; accepted: a time "
      "such as \"90 min\" or \"1 h 30 min\")"}},
    {"within = \"30 min\"\n",
     "",
     {"wrong.toml:24: drop.within: the rule must say this (accepted: a time such as \"15 min\")"}},
    {"[drop]",
     "[ceiling]\nfactor = 1.06\n\n[drop]",
     {"wrong.toml:24: ceiling: an overshoot belongs to strength tests: of any other test the rule "
      "itself, the gags and the pump's relief are the ceiling (found \"1.06\"; accepted: no "
      "ceiling here, or purpose = \"strength\")"}},
    {"[drop]",
     "[gauges]\nnumber = 0\nrange_from = 4\nrange_to = 2\n\n[drop]",
     {"wrong.toml:25: gauges.number: a test needs a gauge (found \"0\"; accepted: 1 or more)",
      "wrong.toml:27: gauges.range_to: no gauge can have this range (found \"2\"; accepted: not "
      "below range_from)"}},
    {"[drop]",
     "[rise]\nfirst_step = \"50 %\"\n\n[drop]",
     {"wrong.toml:24: rise.next_steps: a stepped rise needs both (accepted: both first_step and "
      "next_steps, or neither)"}},
    {"[drop]",
     "[examination]\nfactor = 1\nof = \"working pressure\"\nplus = \"1 bar\"\n\n[drop]",
     {"wrong.toml:24: examination: an examination pressure is a factor of another pressure "
      "(accepted: factor and of, nothing else)"}},
    {"[drop]",
     "[[applies]]\nlap_seam = \"no\"\n\n[drop]",
     {"wrong.toml:25: applies[1].lap_seam: this must be true or false (found \"no\"; accepted: "
      "true or false)"}},
    {"[drop]",
     "[[applies]]\nlapseam = false\n\n[drop]",
     {"wrong.toml:25: applies[1].lapseam: there is no such field here; did you mean \"lap_seam\"? "
      "(found \"lapseam\"; accepted: boilers, works, lap_seam, can_be_entered, extensive_repair, "
      "all_parts_shop_tested, locomotive, can_be_blanked, stop_valve_between, working_above, "
      "working_not_above)"}},
    {"[drop]",
     "[[unless]]\n\n[drop]",
     {"wrong.toml:24: unless[1]: this case asks nothing (accepted: at least one condition)"}},
    {"[drop]",
     "[safety_valves]\ntreatment = \"gagged\"\n\n[drop]",
     {"wrong.toml:25: safety_valves.treatment: there is no such word here (found \"gagged\"; "
      "accepted: not-stated, must-be-gagged, removed-or-clamped, may-be-gagged)"}},
    {"[drop]",
     "drop = [1]\n[drop]",
     {"wrong.toml:24: windows[1].drop: there is no such field here (found \"drop\"; accepted: "
      "stage, medium, boilers, from, to, source)"}},
    {"[source]",
     "[source",
     {"wrong.toml:8: Error while parsing table header: expected ']', saw '\\n' (accepted: a TOML "
      "file)"}},
    {"id = \"site-tight\"",
     "id = site-tight",
     {"wrong.toml:1: Error while parsing value: could not determine value type (accepted: a TOML "
      "file)"}},
};

TEST(RuleFaults, TheSoundRuleIsSound) { EXPECT_TRUE(sentences_for(sound).empty()); }

TEST(RuleFaults, EachWrongFileGetsItsSentences) {
  for (const Row& row : rows) {
    EXPECT_EQ(sentences_for(changed(row)), row.sentences) << row.from << " -> " << row.to;
  }
}

TEST(RuleFaults, AnEmptyFileSaysEverythingThatIsMissing) {
  const auto sentences = sentences_for("");
  EXPECT_GE(sentences.size(), 6u);
}

TEST(RuleFaults, TwoRulesOfOneIdAreRefused) {
  try {
    read_rules({{"one.toml", sound}, {"two.toml", sound}});
    FAIL() << "two rules of one id were taken";
  } catch (const BadInput& error) {
    ASSERT_EQ(error.problems().size(), 1u);
    EXPECT_EQ(sentence(error.problems()[0]),
              "two.toml: id: one.toml has this id too (found \"site-tight\"; accepted: an id that "
              "no other rule has)");
  }
}

TEST(RuleFaults, FaultsOfAllFilesComeTogether) {
  try {
    read_rules({{"one.toml", "id = 1"}, {"two.toml", "= ?"}, {"three.toml", sound}});
    FAIL() << "wrong files were taken";
  } catch (const BadInput& error) {
    EXPECT_EQ(error.problems().front().file, "one.toml");
    EXPECT_EQ(error.problems().back().file, "two.toml");
    EXPECT_EQ(error.problems().back().code, "rules.not_toml");
  }
}

TEST(RuleFaults, AFileOfAMegabyteIsNoRule) {
  const auto sentences = sentences_for(std::string(1 << 20, '#'));
  ASSERT_EQ(sentences.size(), 1u);
  EXPECT_EQ(sentences[0],
            "wrong.toml: this is too long for a rule (found \"1048576 bytes\"; accepted: 65536 "
            "bytes at most)");
}

}  // namespace
}  // namespace steamworthy::wire
