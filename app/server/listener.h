// Listener: sockets, HTTP and TLS, on one thread. The only file that knows the network library is
// listener.cc; behind it everything is Request and Response.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>

#include "server/door.h"
#include "server/tls.h"

namespace steamworthy::server {

struct ListenOptions {
  std::string address = "127.0.0.1";
  std::uint16_t port = 8080;                    ///< 0: any that is free
  std::optional<CertificateFiles> certificate;  ///< nothing: plain HTTP
  int most_connections = 1024;
  int most_from_one_address = 512;
  int head_s = 10;     ///< to send a request's head
  int body_s = 60;     ///< to send its body
  int idle_s = 60;     ///< between two requests
  int write_s = 15;    ///< to take an answer, or an event
  int answer_s = 120;  ///< to make an answer
  int ping_s = 15;     ///< between two signs of life to a follower
  int join_ms = 50;    ///< events to one follower are at least so far apart
  int stop_s = 5;      ///< to end what is under way when told to stop
};

/// What of the head is read; the rest of HTTP's limits stand beside.
inline constexpr std::size_t largest_head = 16 * kib;
/// Bodies above the usual size that may be under way at once.
inline constexpr std::size_t most_large_bodies = 256 * mib;

/// Whether plain HTTP may be spoken on an address: only where nobody else can listen.
bool is_loopback(const std::string& address);

class Listener {
 public:
  using Log = std::function<void(const std::string& line)>;

  /// Binds. Throws   OutOfRange "server.plain_http" for plain HTTP on an address that is not
  ///                 loopback; StoreError "server.cannot_listen".
  Listener(Door& door, const ListenOptions& options, Log log);
  ~Listener();

  std::uint16_t port() const;
  /// Serves until SIGTERM or SIGINT, then until what is under way is done.
  void run();
  /// As a signal does; from any thread.
  void stop();

 private:
  struct Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace steamworthy::server
