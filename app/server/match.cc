#include "server/routes.h"

namespace steamworthy::server {
namespace {

std::string_view next_part(std::string_view& pattern) {
  pattern.remove_prefix(1);
  const std::size_t slash = pattern.find('/');
  const std::string_view part = pattern.substr(0, slash);
  pattern = slash == std::string_view::npos ? std::string_view() : pattern.substr(slash);
  return part;
}

bool fits(std::string_view pattern, const std::vector<std::string>& path,
          std::map<std::string, std::string, std::less<>>& parts) {
  for (const std::string& part : path) {
    if (pattern.empty()) return false;
    const std::string_view want = next_part(pattern);
    if (want.front() == '{') {
      parts[std::string(want.substr(1, want.size() - 2))] = part;
    } else if (want != part) {
      return false;
    }
  }
  return pattern.empty();
}

}  // namespace

Match match(std::span<const Route> table, Method method, const std::vector<std::string>& path) {
  Match found;
  for (const Route& route : table) {
    std::map<std::string, std::string, std::less<>> parts;
    if (!fits(route.pattern, path, parts)) continue;
    if (route.method == method) {
      found.route = &route;
      found.parts = std::move(parts);
      found.others.clear();
      return found;
    }
    found.others.push_back(route.method);
  }
  return found;
}

}  // namespace steamworthy::server
