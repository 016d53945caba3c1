// House: everything that handlers work with. Built once in serve.cc, or by a test.
#pragma once

#include <atomic>
#include <string>

#include "server/accounts.h"
#include "server/closings.h"
#include "server/crew.h"
#include "server/hub.h"
#include "server/pages.h"
#include "store/fact_log.h"
#include "store/surroundings.h"

namespace steamworthy::server {

struct House {
  store::FactLog& log;
  store::Surroundings& world;
  Accounts& accounts;
  Closings& closings;
  Hub& hub;
  Writer& writer;
  const Pages& pages;
  std::string store_path;
  std::string origin;  ///< "https://boiler-house:8443": what stands before a link
  record::PublicKey node_key;
  std::int64_t started_at_ms = 0;
  std::atomic<bool> stopping = false;
};

}  // namespace steamworthy::server
