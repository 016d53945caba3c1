// Feeds any bytes to what reads addresses, queries, cookies and base64, and holds the answers to
// what they promise. The first byte says how much of the rest is path, the second how much is
// query.
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "base/utf8.h"
#include "server/routes.h"
#include "server/uri.h"

namespace {

using namespace steamworthy;
using namespace steamworthy::server;

void expect(bool holds) {
  if (!holds) std::abort();
}

constexpr Route table[] = {
    {Method::Get, "/api/health", "health"},
    {Method::Get, "/api/closings/{closing}", "closing"},
    {Method::Post, "/api/closings/{closing}/facts", "facts"},
    {Method::Get, "/api/closings/{closing}/papers/{kind}", "paper"},
};

void check_path(std::string_view path) {
  const auto parts = path_parts(path);
  if (!parts) return;
  for (const std::string& part : *parts) {
    expect(!part.empty() && part != "." && part != "..");
    expect(part.find('/') == std::string::npos && part.find('\0') == std::string::npos);
    expect(!line_of_bad_utf8(part));
  }
  for (const Method method : {Method::Get, Method::Post, Method::Other}) {
    const Match found = match(table, method, *parts);
    if (found.route == nullptr) continue;
    expect(found.route->method == method && found.others.empty());
    for (const auto& [name, value] : found.parts) expect(!value.empty());
  }
}

void check_query(std::string_view query) {
  const auto items = query_items(query);
  if (!items) return;
  for (std::size_t i = 0; i < items->size(); ++i) {
    expect(!(*items)[i].first.empty() && !line_of_bad_utf8((*items)[i].second));
    for (std::size_t j = 0; j < i; ++j) expect((*items)[i].first != (*items)[j].first);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size < 2) return 0;
  std::string_view rest(reinterpret_cast<const char*>(data) + 2, size - 2);
  const std::string_view path = rest.substr(0, data[0]);
  rest.remove_prefix(path.size());
  const std::string_view query = rest.substr(0, data[1]);
  rest.remove_prefix(query.size());
  check_path(path);
  check_query(query);
  const std::string_view value = cookie(rest, "steamworthy_session");
  expect(value.empty() || rest.find(value) != std::string_view::npos);
  const auto bytes = base64_decoded(rest);
  if (bytes) expect(bytes->size() <= rest.size() / 4 * 3);
  return 0;
}
