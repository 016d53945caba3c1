#include "service/sheet_service.h"

#include "assets/assets.h"
#include "wire/description.h"
#include "wire/rule.h"

namespace steamworthy::service {

boiler::Boiler read_description(std::string_view bytes, const std::string& file) {
  const std::size_t first = bytes.find_first_not_of(" \t\r\n");
  const bool json = first != std::string_view::npos && bytes[first] == '{';
  wire::Description description =
      json ? wire::read_boiler_json(bytes, file) : wire::read_boiler_toml(bytes, file);
  if (!description.boiler) throw BadInput(std::move(description.problems));
  return std::move(*description.boiler);
}

std::vector<rules::Rule> shipped_rules() {
  std::vector<wire::RuleFile> files;
  for (const assets::Asset& asset : assets::rules()) files.push_back({asset.name, asset.bytes});
  return wire::read_rules(files);
}

sheet::Sheet make_sheet(std::string_view bytes, const std::string& file,
                        const sheet::Request& request) {
  return sheet::make_sheet(read_description(bytes, file), shipped_rules(), request);
}

}  // namespace steamworthy::service
