// uri_test.cc: what addresses, queries and cookies say, and which are refused.
#include "server/uri.h"

#include <gtest/gtest.h>

namespace steamworthy::server {
namespace {

using Parts = std::vector<std::string>;
using Items = std::vector<std::pair<std::string, std::string>>;

TEST(PathParts, AreDecoded) {
  EXPECT_EQ(path_parts("/"), Parts{});
  EXPECT_EQ(path_parts("/api/closings"), (Parts{"api", "closings"}));
  EXPECT_EQ(path_parts("/a/b%20c/%C3%A9"), (Parts{"a", "b c", "é"}));
}

TEST(PathParts, RefuseWhatLeadsElsewhereOrCannotBeRead) {
  for (const char* path : {"", "a", "//", "/a//b", "/a/", "/.", "/../x", "/a/%2e%2e/b", "/a%2fb",
                           "/a%5cb", "/a\\b", "/%", "/%4", "/%zz", "/%00", "/%1f", "/%ff"}) {
    EXPECT_EQ(path_parts(path), std::nullopt) << path;
  }
}

TEST(Query, IsReadItemByItem) {
  EXPECT_EQ(query_items(""), Items{});
  EXPECT_EQ(query_items("units=us&after=7&x"), (Items{{"units", "us"}, {"after", "7"}, {"x", ""}}));
  EXPECT_EQ(query_items("a=b+c%2B&&b=%3D="), (Items{{"a", "b c+"}, {"b", "=="}}));
}

TEST(Query, RefusesWhatCannotBeRead) {
  for (const char* query : {"a=1&a=2", "=1", "a=%", "a=%f", "a=%ff", "a=%0a", "%00=1"}) {
    EXPECT_EQ(query_items(query), std::nullopt) << query;
  }
}

TEST(Cookie, IsFoundAmongOthersAndOnlyOnce) {
  EXPECT_EQ(cookie("a=1; b=2", "a"), "1");
  EXPECT_EQ(cookie("a=1; b=2", "b"), "2");
  EXPECT_EQ(cookie("aa=1;a=2", "a"), "2");
  EXPECT_EQ(cookie("a=1; a=2", "a"), "");
  EXPECT_EQ(cookie("", "a"), "");
  EXPECT_EQ(cookie("a", "a"), "");
}

TEST(Base64, IsReadAsRfc4648Writes) {
  // RFC 4648, section 10 (from memory).
  EXPECT_EQ(base64_decoded(""), "");
  EXPECT_EQ(base64_decoded("Zg=="), "f");
  EXPECT_EQ(base64_decoded("Zm8="), "fo");
  EXPECT_EQ(base64_decoded("Zm9v"), "foo");
  EXPECT_EQ(base64_decoded("Zm9vYmFy"), "foobar");
  EXPECT_EQ(base64_decoded("+/8="), "\xfb\xff");
}

TEST(Base64, RefusesEveryOtherWayToWriteIt) {
  for (const char* text :
       {"Z", "Zg", "Zg=", "Zg= =", "Zh==", "Zm9=", "====", "Zm9v\n", "Zm-_", "=Zg="}) {
    EXPECT_EQ(base64_decoded(text), std::nullopt) << text;
  }
}

}  // namespace
}  // namespace steamworthy::server
