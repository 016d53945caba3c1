// Checks record/chain.h: what is missing, changed or doubled is found, and the order is the one of
// the document, computed a second way.
#include "record/chain.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "record/making_test.h"

namespace steamworthy::record {
namespace {

/// A story of a few devices; `moves` says who reports and who hears whom.
std::vector<Made> story(const std::vector<std::uint8_t>& moves, int devices = 4) {
  Crew crew(devices);
  std::vector<Made> made;
  for (const std::uint8_t move : moves) {
    const int device = move % devices;
    const int other = (move / devices) % devices;
    if (other != device) crew.hears(device, other);
    if ((move & 0x40) == 0)
      made.push_back(crew.report(device, fmt::format("{{\"n\":{}}}", made.size())));
  }
  return made;
}

std::vector<Link> links_of(const std::vector<Made>& made) {
  std::vector<Link> links;
  for (const Made& one : made) links.push_back(one.link);
  return links;
}

std::size_t count(const ChainReport& report, Fault fault) {
  return static_cast<std::size_t>(
      std::count_if(report.findings.begin(), report.findings.end(),
                    [fault](const Finding& finding) { return finding.what == fault; }));
}

/// The document's words done slowly: again and again, of the facts of which all that must come
/// before have been taken, the one with the least device; within a scope.
std::vector<std::size_t> slow_order(const std::vector<Link>& links) {
  std::vector<bool> taken(links.size(), false);
  std::vector<std::size_t> order;
  auto must_wait = [&](std::size_t i) {
    for (std::size_t j = 0; j < links.size(); ++j) {
      if (taken[j] || j == i || !(links[j].feed.scope == links[i].feed.scope)) continue;
      if (links[j].feed == links[i].feed && links[j].device_seq < links[i].device_seq) return true;
      for (const Head& head : links[i].seen) {
        if (links[j].feed.device == head.device && links[j].device_seq <= head.device_seq)
          return true;
      }
    }
    return false;
  };
  while (order.size() < links.size()) {
    std::size_t best = links.size();
    for (std::size_t i = 0; i < links.size(); ++i) {
      if (taken[i] || must_wait(i)) continue;
      if (best == links.size() || links[i].feed < links[best].feed) best = i;
    }
    taken[best] = true;
    order.push_back(best);
  }
  return order;
}

std::vector<Hash> hashes(const std::vector<Link>& links, const std::vector<std::size_t>& order) {
  std::vector<Hash> out;
  for (const std::size_t i : order) out.push_back(links[i].hash);
  return out;
}

RC_GTEST_PROP(CausalOrder, IsTheOneOfTheDocument, (const std::vector<std::uint8_t>& moves)) {
  const auto links = links_of(story(moves));
  RC_ASSERT(hashes(links, causal_order(links)) == hashes(links, slow_order(links)));
}

RC_GTEST_PROP(CausalOrder, IsTheSameForEveryOrderOfArrival,
              (const std::vector<std::uint8_t>& moves, std::uint32_t seed)) {
  const auto links = links_of(story(moves));
  auto shuffled = links;
  std::uint64_t state = seed;
  for (std::size_t i = shuffled.size(); i > 1; --i) {
    state = state * 6364136223846793005u + 1442695040888963407u;
    std::swap(shuffled[i - 1], shuffled[(state >> 33) % i]);
  }
  RC_ASSERT(hashes(links, causal_order(links)) == hashes(shuffled, causal_order(shuffled)));
}

RC_GTEST_PROP(CausalOrder, GoesOnWhereFactsAreMissing,
              (const std::vector<std::uint8_t>& moves, std::uint32_t keep)) {
  std::vector<Link> some;
  for (const Link& link : links_of(story(moves))) {
    if ((keep >> (some.size() % 32) & 1) == 0 || link.device_seq % 3 != 0) some.push_back(link);
  }
  const auto order = causal_order(some);
  RC_ASSERT(hashes(some, order) == hashes(some, slow_order(some)));
}

TEST(CausalOrder, EndsEvenIfFactsSaySeenOfEachOther) {
  // No such bytes exist, since each would hold the other's hash; links can be made up.
  auto links = links_of(story({0, 1}, 2));
  ASSERT_EQ(links.size(), 2u);
  links[0].seen = {{links[1].feed.device, 1, links[1].hash}};
  links[1].seen = {{links[0].feed.device, 1, links[0].hash}};
  EXPECT_EQ(causal_order(links).size(), 2u);
}

RC_GTEST_PROP(Chain, OfAnHonestStoryIsWhole, (const std::vector<std::uint8_t>& moves)) {
  const auto links = links_of(story(moves));
  const ChainReport report = check_chain(links);
  RC_ASSERT(report.findings.empty());
  std::uint64_t facts = 0;
  for (const FeedReport& feed : report.feeds) {
    RC_ASSERT(feed.first == 1u);
    RC_ASSERT(feed.last == feed.facts);
    RC_ASSERT(feed.vouched <= feed.last);
    facts += feed.facts;
  }
  RC_ASSERT(facts == links.size());
}

RC_GTEST_PROP(Chain, TellsAFactTakenOutUnlessNobodyKnewIt,
              (const std::vector<std::uint8_t>& moves, std::uint8_t which)) {
  auto links = links_of(story(moves));
  RC_PRE(!links.empty());
  const std::size_t at = which % links.size();
  const Link taken = links[at];
  links.erase(links.begin() + static_cast<long>(at));
  const bool known = std::any_of(links.begin(), links.end(), [&](const Link& link) {
    if (link.feed == taken.feed) return link.device_seq > taken.device_seq;
    return std::any_of(link.seen.begin(), link.seen.end(), [&](const Head& head) {
      return head.device == taken.feed.device && head.device_seq == taken.device_seq;
    });
  });
  const ChainReport report = check_chain(links);
  RC_ASSERT(known == (count(report, Fault::Gap) + count(report, Fault::SeenMissing) > 0));
}

TEST(Chain, TellsAChangedHashBefore) {
  auto links = links_of(story({0, 0, 0}));
  links[1].prev_hash.bytes[5] ^= 1;
  const ChainReport report = check_chain(links);
  ASSERT_EQ(report.findings.size(), 1u);
  EXPECT_EQ(report.findings[0].what, Fault::BrokenChain);
  EXPECT_EQ(report.findings[0].fact.device_seq, 2u);
}

TEST(Chain, TellsTwoFactsOfOneNumber) {
  Crew crew(1);
  const Made first = crew.report(0);
  Crew twin = crew;  // the same key in a second place
  const Made here = crew.report(0, "{\"here\":1}");
  const Made there = twin.report(0, "{\"there\":1}");
  const std::vector<Link> links = {first.link, here.link, there.link};
  const ChainReport report = check_chain(links);
  EXPECT_EQ(count(report, Fault::Forked), 1u);
  EXPECT_EQ(count(report, Fault::BrokenChain), 0u);
  const std::vector<Link> again = {first.link, here.link, here.link};
  EXPECT_EQ(count(check_chain(again), Fault::Doubled), 1u);
  EXPECT_EQ(count(check_chain(again), Fault::Forked), 0u);
}

TEST(Chain, TellsWhenAnotherWasSeen) {
  Crew crew(2);
  const Made mine = crew.report(0);
  crew.hears(1, 0);
  const Made other = crew.report(1);
  Made forged = mine;
  forged.link.hash.bytes[0] ^= 1;
  const std::vector<Link> links = {forged.link, other.link};
  EXPECT_EQ(count(check_chain(links), Fault::SeenDiffers), 1u);
}

TEST(Chain, TellsADeviceThatForgets) {
  Crew crew(2);
  const Made mine = crew.report(0);
  crew.hears(1, 0);
  const Made knows = crew.report(1);
  Made forgot = crew.report(1);
  forgot.link.seen.clear();
  const std::vector<Link> links = {mine.link, knows.link, forgot.link};
  EXPECT_EQ(count(check_chain(links), Fault::SeenShrank), 1u);
}

TEST(Chain, TellsOneIdGivenTwice) {
  auto links = links_of(story({0, 1}));
  links[1].id = links[0].id;
  EXPECT_EQ(count(check_chain(links), Fault::SameId), 1u);
}

TEST(Chain, RemarksOnClocksThatGoBackOnceAFeed) {
  Crew crew(2);
  std::vector<Link> links = {crew.report(0).link, crew.report(0).link};
  crew.set_clock(crew.clock() - 3600'000);
  links.push_back(crew.report(0).link);
  crew.hears(1, 0);
  crew.set_clock(crew.clock() - 7200'000);
  links.push_back(crew.report(1).link);
  links.push_back(crew.report(1).link);
  const ChainReport report = check_chain(links);
  ASSERT_EQ(count(report, Fault::ClockBack), 1u);
  ASSERT_EQ(count(report, Fault::ClockBehindSeen), 1u);
  for (const Finding& finding : report.findings) {
    EXPECT_EQ(weight_of(finding.what), Weight::Remark);
    if (finding.what == Fault::ClockBehindSeen) {
      EXPECT_EQ(finding.times, 2u);
    }
    if (finding.what == Fault::ClockBack) {
      EXPECT_EQ(finding.by_ms, 3599'000);
    }
  }
}

TEST(Chain, SaysHowFarEachFeedIsVouchedFor) {
  Crew crew(3);
  std::vector<Link> links = {crew.report(0).link, crew.report(0).link};
  crew.hears(1, 0);
  links.push_back(crew.report(1).link);
  links.push_back(crew.report(0).link);
  crew.hears(2, 0);
  links.push_back(crew.report(2, "{}", checkpoint_kind).link);
  links.push_back(crew.report(0).link);
  const ChainReport report = check_chain(links);
  EXPECT_TRUE(report.findings.empty());
  for (const FeedReport& feed : report.feeds) {
    if (!(feed.feed.device == device_of(crew.key(0)))) continue;
    EXPECT_EQ(feed.last, 4u);
    EXPECT_EQ(feed.vouched, 3u);
    EXPECT_EQ(feed.checkpoint, 3u);
    EXPECT_EQ(feed.checkpoint_by, device_of(crew.key(2)));
  }
}

}  // namespace
}  // namespace steamworthy::record
