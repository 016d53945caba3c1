#include "cli/request.h"

#include <algorithm>

#include "base/error.h"

namespace steamworthy::cli {

service::Said said(const SheetOptions& options) {
  service::Said said = {{"rule", options.rule},
                        {"work", options.work},
                        {"authority", options.authority},
                        {"pick", options.pick},
                        {"own_pressure", options.own_pressure},
                        {"reason", options.reason},
                        {"ceiling", options.ceiling},
                        {"water", options.water},
                        {"metal", options.metal},
                        {"hold", options.hold},
                        {"heater", options.heater}};
  for (const std::string& trait : options.traits) said.emplace_back("trait", trait);
  return said;
}

sheet::Request read_request(const SheetOptions& options) {
  try {
    return service::request_of(said(options));
  } catch (const BadInput& error) {
    Problem problem = error.problems().front();
    std::replace(problem.field.begin(), problem.field.end(), '_', '-');
    problem.field = "--" + problem.field;
    throw Usage{sentence(problem)};
  }
}

}  // namespace steamworthy::cli
