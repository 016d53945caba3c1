#include "server/listener.h"

#include <utility>  // before Asio of Boost 1.74, which uses std::exchange without it

#include <boost/asio/awaitable.hpp>
#include <boost/asio/co_spawn.hpp>
#include <boost/asio/detached.hpp>
#include <boost/asio/io_context.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/post.hpp>
#include <boost/asio/redirect_error.hpp>
#include <boost/asio/signal_set.hpp>
#include <boost/asio/steady_timer.hpp>
#include <boost/asio/use_awaitable.hpp>
#include <boost/asio/write.hpp>
#include <boost/beast/core.hpp>
#include <boost/beast/http.hpp>
#include <boost/beast/ssl.hpp>

#include <chrono>
#include <map>
#include <set>

#include "base/error.h"
#include "server/beast_messages.h"
#include "server/request_log.h"

namespace steamworthy::server {
namespace {

namespace net = boost::asio;
namespace beast = boost::beast;
namespace http = beast::http;
namespace ssl = net::ssl;
using net::ip::tcp;
using std::chrono::milliseconds;
using std::chrono::seconds;
using Plain = beast::tcp_stream;
using Secure = beast::ssl_stream<beast::tcp_stream>;
using Fault = boost::system::error_code;

template <class Stream>
constexpr bool is_secure = std::is_same_v<Stream, Secure>;

auto into(Fault& fault) { return net::redirect_error(net::use_awaitable, fault); }

}  // namespace

/// A connection, for those that count and stop them.
struct Connection {
  beast::tcp_stream* stream = nullptr;
  bool is_idle = false;                       ///< between two requests
  std::shared_ptr<net::steady_timer> asleep;  ///< of a follower
};

struct Listener::Parts {
  Parts(Door& the_door, const ListenOptions& given, Log to)
      : door(the_door), options(given), log(std::move(to)) {}

  Door& door;
  ListenOptions options;
  Log log;
  net::io_context loop{1};
  tcp::acceptor acceptor{loop};
  net::signal_set signals{loop};
  net::steady_timer stop_timer{loop};
  std::optional<ssl::context> tls;
  std::set<Connection*> connections;
  std::map<std::string, int> by_address;
  std::size_t large_bodies = 0;
  bool stopping = false;

  void open();
  net::awaitable<void> accept();
  void begin(tcp::socket socket);
  void begin_stop();
  template <class Stream>
  net::awaitable<void> serve(Stream stream, std::string address);
  template <class Stream>
  net::awaitable<bool> serve_one(Stream& stream, beast::flat_buffer& buffer, Connection& connection,
                                 const std::string& address, bool is_first);
  net::awaitable<Response> answer(Request request, CallLog& log);
  template <class Stream>
  net::awaitable<bool> say(Stream& stream, const Response& response, bool is_head, bool keep);
  template <class Stream>
  net::awaitable<void> follow(Stream& stream, Connection& connection, const Follow& follow);
};

namespace {

/// Room for a body above the usual size, while it is under way.
struct LargeBody {
  std::size_t& taken;
  std::size_t size = 0;
  explicit LargeBody(std::size_t& of) : taken(of) {}
  ~LargeBody() { taken -= size; }
  LargeBody(const LargeBody&) = delete;
  LargeBody& operator=(const LargeBody&) = delete;
  bool take(std::size_t wanted) {
    if (wanted <= usual_body) return true;
    if (taken + wanted > most_large_bodies) return false;
    size = wanted;
    taken += wanted;
    return true;
  }
};

net::awaitable<void> end(Plain& stream) {
  Fault ignored;
  stream.socket().shutdown(tcp::socket::shutdown_send, ignored);
  co_return;
}

net::awaitable<void> end(Secure& stream) {
  Fault ignored;
  stream.next_layer().expires_after(seconds(2));
  co_await stream.async_shutdown(into(ignored));
}

}  // namespace

void Listener::Parts::open() {
  Fault fault;
  const auto address = net::ip::make_address(options.address, fault);
  if (fault) {
    throw StoreError("server.cannot_listen", options.address + " is no address of this machine");
  }
  if (options.certificate) {
    tls.emplace(ssl::context::tls_server);
    tls->set_options(ssl::context::default_workarounds | ssl::context::no_sslv2 |
                     ssl::context::no_sslv3 | ssl::context::no_tlsv1 | ssl::context::no_tlsv1_1);
    tls->use_certificate_chain_file(options.certificate->certificate, fault);
    if (!fault) {
      tls->use_private_key_file(options.certificate->key, ssl::context::pem, fault);
    }
    if (fault) {
      throw StoreError("server.no_certificate",
                       options.certificate->certificate + ": " + fault.message());
    }
  } else if (!is_loopback(options.address)) {
    throw OutOfRange("server.plain_http", "plain HTTP is spoken on loopback only, not on " +
                                              options.address +
                                              ": secrets would be readable on the way");
  }
  const tcp::endpoint endpoint(address, options.port);
  acceptor.open(endpoint.protocol(), fault);
  if (!fault) acceptor.set_option(net::socket_base::reuse_address(true), fault);
  if (!fault) acceptor.bind(endpoint, fault);
  if (!fault) acceptor.listen(net::socket_base::max_listen_connections, fault);
  if (fault) {
    throw StoreError("server.cannot_listen",
                     options.address + ":" + std::to_string(options.port) + ": " + fault.message());
  }
}

net::awaitable<void> Listener::Parts::accept() {
  while (!stopping) {
    Fault fault;
    tcp::socket socket = co_await acceptor.async_accept(into(fault));
    if (!fault) {
      begin(std::move(socket));
    } else if (!stopping) {
      // Out of file numbers, perhaps: what is there goes on, and the next try is a little later.
      net::steady_timer pause(loop, milliseconds(100));
      co_await pause.async_wait(into(fault));
    }
  }
}

void Listener::Parts::begin(tcp::socket socket) {
  Fault fault;
  const std::string address = socket.remote_endpoint(fault).address().to_string();
  socket.set_option(tcp::no_delay(true), fault);
  const bool too_many = static_cast<int>(connections.size()) >= options.most_connections ||
                        by_address[address] >= options.most_from_one_address;
  if (too_many) {
    constexpr std::string_view busy =
        "HTTP/1.1 503 Service Unavailable\r\nConnection: close\r\nContent-Length: 0\r\n\r\n";
    socket.non_blocking(true, fault);
    if (!tls) socket.write_some(net::buffer(busy.data(), busy.size()), fault);
    return;
  }
  if (tls) {
    net::co_spawn(loop, serve(Secure(std::move(socket), *tls), address), net::detached);
  } else {
    net::co_spawn(loop, serve(Plain(std::move(socket)), address), net::detached);
  }
}

template <class Stream>
net::awaitable<void> Listener::Parts::serve(Stream stream, std::string address) {
  Connection connection;
  connection.stream = &beast::get_lowest_layer(stream);
  connections.insert(&connection);
  ++by_address[address];
  Fault fault;
  if constexpr (is_secure<Stream>) {
    connection.stream->expires_after(seconds(options.head_s));
    co_await stream.async_handshake(ssl::stream_base::server, into(fault));
  }
  if (!fault) {
    // What one read may bring is bounded beside what the parser bounds.
    beast::flat_buffer buffer(largest_head + 64 * kib);
    bool is_first = true;
    bool goes_on = true;
    while (goes_on) {
      goes_on = co_await serve_one(stream, buffer, connection, address, is_first);
      is_first = false;
    }
    co_await end(stream);
  }
  connections.erase(&connection);
  if (--by_address[address] == 0) by_address.erase(address);
  if (stopping && connections.empty()) stop_timer.cancel();
}

template <class Stream>
net::awaitable<bool> Listener::Parts::serve_one(Stream& stream, beast::flat_buffer& buffer,
                                                Connection& connection, const std::string& address,
                                                bool is_first) {
  beast::tcp_stream& lowest = *connection.stream;
  Fault fault;
  if (buffer.size() == 0 && !is_first) {
    if (stopping) co_return false;
    connection.is_idle = true;
    lowest.expires_after(seconds(options.idle_s));
    const std::size_t size = co_await stream.async_read_some(buffer.prepare(4 * kib), into(fault));
    connection.is_idle = false;
    if (fault) co_return false;
    buffer.commit(size);
  }
  http::request_parser<http::string_body> parser;
  parser.header_limit(static_cast<std::uint32_t>(largest_head));
  parser.body_limit(most_large_bodies);  // until the call is known; none at all refuses every body
  lowest.expires_after(seconds(options.head_s));
  co_await http::async_read_header(stream, buffer, parser, into(fault));
  if (fault) {
    if (const auto response = answer_of_fault(fault)) co_await say(stream, *response, false, false);
    co_return false;
  }
  const auto began = std::chrono::steady_clock::now();
  Request request = head_of(parser.get(), address, is_secure<Stream>);
  const std::size_t limit = door.largest_body(request);
  LargeBody large(large_bodies);
  std::optional<Response> refused;
  if (parser.content_length() && *parser.content_length() > limit) {
    refused = error_answer(413, "server.body_too_large", "the body is larger than this call takes");
  } else if (!large.take(parser.content_length() ? *parser.content_length()
                         : parser.chunked()      ? limit
                                                 : 0)) {
    refused = error_answer(429, "server.too_many", "too many large bodies at once; try again");
  }
  CallLog call{std::string(token(request.method)), request.path, 0, "", "", ""};
  bool keep = parser.get().keep_alive() && !stopping && !refused;
  if (!refused && !parser.is_done()) {
    parser.body_limit(limit);
    if (beast::iequals(parser.get()[http::field::expect], "100-continue")) {
      constexpr std::string_view go_on = "HTTP/1.1 100 Continue\r\n\r\n";
      lowest.expires_after(seconds(options.write_s));
      co_await net::async_write(stream, net::buffer(go_on.data(), go_on.size()), into(fault));
    }
    lowest.expires_after(seconds(options.body_s));
    if (!fault) co_await http::async_read(stream, buffer, parser, into(fault));
    if (fault) {
      refused = answer_of_fault(fault);
      if (!refused) co_return false;
      keep = false;
    }
  }
  Response response;
  const bool is_head = request.method == Method::Head;
  if (refused) {
    response = std::move(*refused);
    call.status = response.status;
  } else {
    request.body = std::move(parser.get().body());
    lowest.expires_never();
    response = co_await answer(std::move(request), call);
  }
  log(log_line(
      call, door.house().world.now_ms(), response.body->size(),
      std::chrono::duration_cast<milliseconds>(std::chrono::steady_clock::now() - began).count()));
  if (response.follow) {
    co_await follow(stream, connection, *response.follow);
    co_return false;
  }
  keep = keep && !stopping;
  co_return co_await say(stream, response, is_head, keep) && keep;
}

net::awaitable<Response> Listener::Parts::answer(Request request, CallLog& call) {
  struct Waiting {
    explicit Waiting(net::io_context& loop) : timer(loop) {}
    net::steady_timer timer;
    std::optional<Response> response;
    CallLog log;
  };
  auto waiting = std::make_shared<Waiting>(loop);
  waiting->timer.expires_after(seconds(options.answer_s));
  door.handle(std::move(request), [waiting, this](Response response, const CallLog& said) mutable {
    net::post(loop, [waiting, response = std::move(response), said]() mutable {
      waiting->response = std::move(response);
      waiting->log = said;
      waiting->timer.cancel();
    });
  });
  Fault fault;
  co_await waiting->timer.async_wait(into(fault));
  if (!waiting->response) {
    call.status = 503;
    co_return error_answer(503, "server.too_slow", "the answer took too long; try again");
  }
  call = waiting->log;
  co_return std::move(*waiting->response);
}

template <class Stream>
net::awaitable<bool> Listener::Parts::say(Stream& stream, const Response& response, bool is_head,
                                          bool keep) {
  http::response<http::span_body<const char>> message;
  message.version(11);
  message.result(static_cast<unsigned>(response.status));
  put_head(message, response, is_secure<Stream>, keep);
  if (response.status != 204 && response.status != 304) {
    message.content_length(response.body->size());
  }
  if (!is_head) message.body() = {response.body->data(), response.body->size()};
  http::response_serializer<http::span_body<const char>> serializer(message);
  beast::tcp_stream& lowest = beast::get_lowest_layer(stream);
  Fault fault;
  // The deadline starts anew with each piece that went: slow is not the same as gone.
  while (!serializer.is_done() && !fault) {
    lowest.expires_after(seconds(options.write_s));
    co_await http::async_write_some(stream, serializer, into(fault));
  }
  co_return !fault;
}

template <class Stream>
net::awaitable<void> Listener::Parts::follow(Stream& stream, Connection& connection,
                                             const Follow& what) {
  struct State {
    explicit State(net::io_context& loop) : timer(std::make_shared<net::steady_timer>(loop)) {}
    std::shared_ptr<net::steady_timer> timer;
    bool is_gone = false;
  };
  auto state = std::make_shared<State>(loop);
  connection.asleep = state->timer;
  const auto following = door.house().hub.follow(
      what.closing, what.after, what.newest, what.us_units,
      [this, state] { net::post(loop, [state] { state->timer->cancel(); }); });
  // Nothing more is expected from the other end: whatever comes means that it is gone.
  connection.stream->socket().async_wait(tcp::socket::wait_read, [state](const Fault&) {
    state->is_gone = true;
    state->timer->cancel();
  });
  Response head;
  head.type = "text/event-stream";
  http::response<http::empty_body> message;
  message.version(11);
  message.result(200u);
  put_head(message, head, is_secure<Stream>, false);
  http::response_serializer<http::empty_body> serializer(message);
  beast::tcp_stream& lowest = *connection.stream;
  Fault fault;
  lowest.expires_after(seconds(options.write_s));
  co_await http::async_write_header(stream, serializer, into(fault));
  std::string text = "retry: 2000\n\n";
  while (!fault && !state->is_gone && !stopping) {
    if (!text.empty()) {
      lowest.expires_after(seconds(options.write_s));
      co_await net::async_write(stream, net::buffer(text), into(fault));
      lowest.expires_never();
      if (fault || state->is_gone || stopping) break;
      // Events that come meanwhile are told in one.
      state->timer->expires_after(milliseconds(options.join_ms));
      Fault woken;
      co_await state->timer->async_wait(into(woken));
      if (state->is_gone || stopping) break;
    }
    text = following->take().value_or("");
    if (!text.empty()) continue;
    state->timer->expires_after(seconds(options.ping_s));
    Fault woken;
    co_await state->timer->async_wait(into(woken));
    text = following->take().value_or(woken ? "" : ": ping\n\n");
  }
  connection.asleep.reset();
}

void Listener::Parts::begin_stop() {
  if (stopping) {
    loop.stop();
    return;
  }
  stopping = true;
  door.house().stopping = true;
  Fault ignored;
  acceptor.close(ignored);
  signals.async_wait([this](const Fault& fault, int) {
    if (!fault) loop.stop();
  });
  for (Connection* connection : connections) {
    if (connection->is_idle) connection->stream->socket().cancel(ignored);
    if (connection->asleep) connection->asleep->cancel();
  }
  if (connections.empty()) {
    signals.cancel(ignored);
    return;
  }
  stop_timer.expires_after(seconds(options.stop_s));
  stop_timer.async_wait([this](const Fault& fault) {
    Fault quiet;
    signals.cancel(quiet);
    if (!fault) loop.stop();
  });
}

bool is_loopback(const std::string& address) {
  Fault fault;
  const auto read = net::ip::make_address(address, fault);
  return !fault && read.is_loopback();
}

Listener::Listener(Door& door, const ListenOptions& options, Log log)
    : parts_(std::make_unique<Parts>(door, options, std::move(log))) {
  parts_->open();
}

Listener::~Listener() = default;

std::uint16_t Listener::port() const { return parts_->acceptor.local_endpoint().port(); }

void Listener::run() {
  parts_->signals.add(SIGTERM);
  parts_->signals.add(SIGINT);
  parts_->signals.async_wait([this](const Fault& fault, int) {
    if (!fault) parts_->begin_stop();
  });
  net::co_spawn(parts_->loop, parts_->accept(), net::detached);
  parts_->loop.run();
}

void Listener::stop() {
  net::post(parts_->loop, [this] { parts_->begin_stop(); });
}

}  // namespace steamworthy::server
