#include "server/pages.h"

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "record/sha256.h"
#include "server/uri.h"

namespace steamworthy::server {
namespace {

constexpr std::array<std::pair<std::string_view, std::string_view>, 18> types = {{
    {".html", "text/html; charset=utf-8"},
    {".js", "text/javascript; charset=utf-8"},
    {".mjs", "text/javascript; charset=utf-8"},
    {".css", "text/css; charset=utf-8"},
    {".json", "application/json"},
    {".webmanifest", "application/manifest+json"},
    {".wasm", "application/wasm"},
    {".svg", "image/svg+xml"},
    {".png", "image/png"},
    {".jpg", "image/jpeg"},
    {".ico", "image/x-icon"},
    {".webp", "image/webp"},
    {".woff2", "font/woff2"},
    {".woff", "font/woff"},
    {".ttf", "font/ttf"},
    {".txt", "text/plain; charset=utf-8"},
    {".map", "application/json"},
    {".pdf", "application/pdf"},
}};

/// "assets/index-4f2a9c1e.js": a build names such files by what is in them.
bool is_named_by_content(std::string_view name) {
  return name.substr(0, 7) == "assets/" && name.find('-') != std::string_view::npos;
}

bool names(std::string_view header, const std::string& tag) {
  return header == "*" || header.find(tag) != std::string_view::npos;
}

/// "gzip, deflate, br": a word of the list, unless it says that it does not want it.
bool takes_gzip(std::string_view accepted) {
  const std::size_t at = accepted.find("gzip");
  if (at == std::string_view::npos) return false;
  const std::string_view rest = accepted.substr(at + 4, accepted.find(',', at) - at - 4);
  return rest.find("q=0") == std::string_view::npos || rest.find("q=0.") != std::string_view::npos;
}

}  // namespace

std::string_view type_of_file(std::string_view name) {
  for (const auto& [end, type] : types) {
    if (name.size() > end.size() && name.substr(name.size() - end.size()) == end) return type;
  }
  return "application/octet-stream";
}

std::vector<std::pair<std::string, std::string>> guards(bool secure) {
  std::vector<std::pair<std::string, std::string>> headers{
      {"Content-Security-Policy",
       "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' "
       "blob: data:; connect-src 'self'; font-src 'self'; manifest-src 'self'; worker-src 'self'; "
       "base-uri 'none'; form-action 'none'; frame-ancestors 'none'"},
      {"X-Content-Type-Options", "nosniff"},
      {"Referrer-Policy", "no-referrer"},
      {"Cross-Origin-Opener-Policy", "same-origin"},
      {"Cross-Origin-Resource-Policy", "same-origin"},
      {"Permissions-Policy", "camera=(self), microphone=(), geolocation=()"}};
  if (secure) headers.emplace_back("Strict-Transport-Security", "max-age=31536000");
  return headers;
}

Pages::Pages(std::span<const assets::Asset> files, std::string_view prefix) {
  for (const assets::Asset& file : files) {
    if (file.name.substr(0, prefix.size()) == prefix) {
      add(std::string(file.name.substr(prefix.size())), std::string(file.bytes));
    }
  }
  pair_with_compressed();
}

Pages::Pages(const std::string& folder) {
  namespace fs = std::filesystem;
  std::error_code fault;
  for (fs::recursive_directory_iterator at(folder, fault), end; !fault && at != end;
       at.increment(fault)) {
    if (!at->is_regular_file()) continue;
    std::ifstream file(at->path(), std::ios::binary);
    std::string bytes{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
    add(at->path().lexically_relative(folder).generic_string(), std::move(bytes));
  }
  if (fault || files_.count("index.html") == 0) {
    throw NotFound("server.no_pages", folder + ": a folder of pages has a file index.html");
  }
  pair_with_compressed();
}

void Pages::pair_with_compressed() {
  constexpr std::string_view end = ".gz";
  for (auto at = files_.begin(); at != files_.end();) {
    const std::string& name = at->first;
    if (name.size() <= end.size() || name.substr(name.size() - end.size()) != end) {
      ++at;
      continue;
    }
    const auto plain = files_.find(name.substr(0, name.size() - end.size()));
    if (plain != files_.end()) plain->second.gzip = at->second.bytes;
    at = files_.erase(at);
  }
}

void Pages::add(std::string name, std::string bytes) {
  File file;
  file.type = type_of_file(name);
  file.tag = "\"" + hex(record::sha256(bytes)).substr(0, 32) + "\"";
  file.is_for_ever = is_named_by_content(name);
  file.bytes = std::make_shared<const std::string>(std::move(bytes));
  files_[std::move(name)] = std::move(file);
}

Response Pages::answer(const Request& request) const {
  if (request.method != Method::Get && request.method != Method::Head) {
    throw Refusal(405, "server.wrong_method", "a page can only be read: GET");
  }
  const auto parts = path_parts(request.path);
  std::string name;
  if (parts) {
    for (const std::string& part : *parts) name += (name.empty() ? "" : "/") + part;
  }
  auto file = files_.find(name);
  // Addresses of the page's own have no dot in their last part; the page itself tells them apart.
  if (file == files_.end() && parts && name.find('.') == std::string::npos) {
    file = files_.find("index.html");
  }
  if (file == files_.end()) throw Refusal(404, "server.no_page", "there is no such page");
  Response response;
  response.type = file->second.type;
  response.headers = {
      {"ETag", file->second.tag},
      {"Cache-Control",
       file->second.is_for_ever ? "public, max-age=31536000, immutable" : "no-cache"}};
  if (names(request.header("if-none-match"), file->second.tag)) {
    response.status = 304;
    return response;
  }
  response.body = file->second.bytes;
  if (file->second.gzip) {
    response.headers.emplace_back("Vary", "Accept-Encoding");
    if (takes_gzip(request.header("accept-encoding"))) {
      response.headers.emplace_back("Content-Encoding", "gzip");
      response.body = file->second.gzip;
    }
  }
  return response;
}

}  // namespace steamworthy::server
