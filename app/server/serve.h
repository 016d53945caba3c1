// Serve: the whole program behind one function. Builds the house, opens the door, waits for its
// end.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "server/listener.h"

namespace steamworthy::server {

/// A boiler's description, as the bytes of its file.
struct Description {
  std::string name;
  std::string bytes;
};

struct ServeOptions {
  std::string store;
  ListenOptions listen;
  bool tls = false;        ///< on loopback, where it is not needed; elsewhere always
  CertificateFiles given;  ///< both empty: STORE.cert and STORE.cert.key, made if need be
  std::string host;        ///< what stands in links; empty: the machine's name or the address
  std::string pages;       ///< folder of the page's files; empty: those compiled in
  std::vector<Description> boilers;
};

/// Serves until SIGTERM or SIGINT. `say` gets what a person starting it reads, `log` a line for
/// each request. Throws   StoreError as the store, the accounts and Listener do; BadInput for a
/// description with
///          faults.
void serve(ServeOptions options, const std::function<void(const std::string&)>& say,
           const std::function<void(const std::string&)>& log);

}  // namespace steamworthy::server
