// Routes: every call of the API, in one table. docs/formats/openapi.json is held to it.
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "server/call.h"
#include "server/house.h"

namespace steamworthy::server {

/// Where a handler runs.
enum class Where {
  Loop,    ///< at once: reads memory only
  Reader,  ///< renders from snapshots, parses
  Heavy,   ///< secrets, what is stored by the program itself, papers, the analysis of a hold
};

/// Who may call at all.
enum class Who { Anybody, Device, Person, Lead };

/// The words for it in the description of the API: "engineer or lead_hand".
std::string_view words_of(Who who);

struct Route {
  Method method = Method::Get;
  std::string_view pattern;    ///< "/api/closings/{closing}"
  std::string_view operation;  ///< its name in the description
  Where where = Where::Loop;
  Who who = Who::Person;
  std::string_view query;        ///< names that may stand in it, with blanks between
  std::string_view content;      ///< types of body that it takes, with blanks between; empty: none
  std::size_t largest_body = 0;  ///< where that is more than usual
  Outcome (*handle)(House&, const Call&) = nullptr;
};

inline constexpr std::size_t kib = 1024;
inline constexpr std::size_t mib = kib * kib;
/// Of a body, where the route does not take more.
inline constexpr std::size_t usual_body = mib;

std::span<const Route> routes();

/// A pattern laid on a path.
struct Match {
  const Route* route = nullptr;
  std::map<std::string, std::string, std::less<>> parts;
  std::vector<Method> others;  ///< methods that the path has, where this one is not among them
};

/// `route` is null where there is no such path or not this method.
Match match(std::span<const Route> table, Method method, const std::vector<std::string>& path);

}  // namespace steamworthy::server
