#include "server/request_log.h"

#include <fmt/chrono.h>
#include <fmt/format.h>

#include <ctime>

namespace steamworthy::server {
namespace {

std::string plain(std::string_view text, std::size_t longest) {
  std::string shown(text.substr(0, longest));
  for (char& c : shown) {
    if (c <= ' ' || c > '~') c = '?';
  }
  return text.size() > longest ? shown + "..." : shown;
}

}  // namespace

std::string log_line(const CallLog& call, std::int64_t now_ms, std::size_t bytes, std::int64_t ms) {
  const std::time_t time = static_cast<std::time_t>(now_ms / 1000);
  // The code alone for what the caller did wrong; for what went wrong here, why.
  std::string code = call.code.empty() ? "" : " " + call.code;
  for (char& c : code) {
    if (static_cast<unsigned char>(c) < ' ') c = ' ';
  }
  return fmt::format("{:%Y-%m-%dT%H:%M:%SZ} {}{} {} {} {} B {} ms {} {}", fmt::gmtime(time),
                     call.status, code, plain(call.method, 10), plain(call.path, 200), bytes, ms,
                     call.person.empty() ? "-" : plain(call.person, 40),
                     call.device.empty() ? "-" : call.device.substr(0, 8));
}

}  // namespace steamworthy::server
