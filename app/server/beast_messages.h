// For listener.cc alone: between the network library's messages and ours.
#pragma once

#include <boost/beast/http.hpp>

#include <optional>
#include <string>
#include <string_view>

#include "server/http.h"
#include "server/pages.h"

namespace steamworthy::server {

inline Method method_of(boost::beast::http::verb verb) {
  switch (verb) {
    case boost::beast::http::verb::get:
      return Method::Get;
    case boost::beast::http::verb::head:
      return Method::Head;
    case boost::beast::http::verb::post:
      return Method::Post;
    case boost::beast::http::verb::put:
      return Method::Put;
    case boost::beast::http::verb::delete_:
      return Method::Delete;
    default:
      return Method::Other;
  }
}

inline Request head_of(const boost::beast::http::request_header<>& header,
                       const std::string& address, bool secure) {
  Request request;
  request.method = method_of(header.method());
  const std::string_view target(header.target().data(), header.target().size());
  const std::size_t mark = target.find('?');
  request.path = target.substr(0, mark);
  if (mark != std::string_view::npos) request.query = target.substr(mark + 1);
  for (const auto& field : header) {
    std::string name(field.name_string().data(), field.name_string().size());
    for (char& c : name) {
      if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    }
    request.headers.emplace_back(std::move(name),
                                 std::string(field.value().data(), field.value().size()));
  }
  request.address = address;
  request.secure = secure;
  return request;
}

/// The answer to a head that could not be read; nothing where there is nobody to answer.
inline std::optional<Response> answer_of_fault(const boost::system::error_code& fault) {
  if (fault == boost::beast::http::error::header_limit) {
    return error_answer(431, "server.head_too_large", "the head of a request may have 16 KiB");
  }
  if (fault == boost::beast::http::error::body_limit) {
    return error_answer(413, "server.body_too_large", "the body is larger than this call takes");
  }
  if (fault == boost::beast::http::error::end_of_stream ||
      fault == boost::beast::http::error::partial_message)
    return {};
  if (fault.category() ==
      boost::beast::http::make_error_code(boost::beast::http::error::bad_method).category()) {
    return error_answer(400, "server.not_http", "this is no request of HTTP/1.1");
  }
  return {};
}

template <class Fields>
void put_head(Fields& fields, const Response& response, bool secure, bool keep) {
  fields.set(boost::beast::http::field::server, "steamworthy");
  if (!response.type.empty()) fields.set(boost::beast::http::field::content_type, response.type);
  bool has_cache_rule = false;
  for (const auto& [name, value] : response.headers) {
    fields.insert(name, value);
    has_cache_rule = has_cache_rule || name == "Cache-Control";
  }
  if (!has_cache_rule) fields.set(boost::beast::http::field::cache_control, "no-store");
  for (const auto& [name, value] : guards(secure)) fields.set(name, value);
  fields.keep_alive(keep);
}

}  // namespace steamworthy::server
