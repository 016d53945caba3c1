// Pages: the files of the web page, compiled in or read from a folder.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "assets/assets.h"
#include "server/http.h"

namespace steamworthy::server {

class Pages {
 public:
  /// The files that are compiled in, by their path below `prefix` ("web/dist/").
  Pages(std::span<const assets::Asset> files, std::string_view prefix);
  /// Every file of a folder, read now.
  /// Throws   NotFound "server.no_pages" if it cannot be read or has no index.html.
  explicit Pages(const std::string& folder);

  /// The file of a path, or index.html for an address of the page's own; with its entity tag, so
  /// that a browser that has it gets 304.
  /// Throws   Refusal 404 server.no_page, 405 server.wrong_method.
  Response answer(const Request& request) const;

  std::size_t count() const { return files_.size(); }

 private:
  struct File {
    std::string type;
    std::string tag;
    bool is_for_ever;  ///< its name has its content's hash
    std::shared_ptr<const std::string> bytes;
    std::shared_ptr<const std::string> gzip;  ///< the same compressed; null if there is none
  };
  void pair_with_compressed();
  void add(std::string name, std::string bytes);

  std::map<std::string, File, std::less<>> files_;
};

/// By the end of a file's name; "application/octet-stream" for any other.
std::string_view type_of_file(std::string_view name);

/// What every answer carries so that no page can be made to do what it should not.
std::vector<std::pair<std::string, std::string>> guards(bool secure);

}  // namespace steamworthy::server
