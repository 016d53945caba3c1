// House: everything that handlers work with. Built once in serve.cc, or by a test.
#pragma once

#include <atomic>
#include <string>

#include "server/accounts.h"
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
  Hub& hub;
  Writer& writer;
  Writer::TakeIn take_in;  ///< what the writer takes facts in with
  const Pages& pages;
  std::string origin;  ///< "https://boiler-house:8443": what stands before a link
  record::PublicKey node_key;
  std::int64_t started_at_ms = 0;
  std::atomic<std::int64_t> newest = 0;  ///< intake number of the last fact stored
  std::atomic<bool> stopping = false;
};

}  // namespace steamworthy::server
