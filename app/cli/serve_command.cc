#include "cli/serve_command.h"

#include <fmt/format.h>
#include <unistd.h>

#include "cli/files.h"
#include "server/serve.h"
#include "service/demo_plant.h"
#include "store/account_book.h"
#include "store/store.h"
#include "store/surroundings.h"

namespace steamworthy::cli {

namespace {

void make_store(const ServeOptions& options) {
  store::RealSurroundings world;
  store::create_store(options.store, world);
  if (!options.demo) return;
  store::Store store(options.store, world);
  store::AccountBook accounts(store::accounts_path(options.store));
  service::make_demo_plant(store.log(), accounts, world);
}

}  // namespace

int serve_command(const ServeOptions& options) {
  const bool is_new = ::access(options.store.c_str(), F_OK) != 0;
  if (is_new && (options.make || options.demo)) make_store(options);
  server::ServeOptions serve;
  serve.store = options.store;
  serve.listen.address = options.address;
  serve.listen.port = static_cast<std::uint16_t>(options.port);
  serve.listen.most_connections = options.connections;
  serve.listen.most_from_one_address = options.connections_per_address;
  serve.tls = options.tls;
  serve.given = {options.certificate, options.certificate_key};
  serve.host = options.host;
  serve.pages = options.pages;
  if (options.demo) {
    for (const assets::Asset& boiler : service::demo_boilers()) {
      serve.boilers.push_back({base_name(std::string(boiler.name)), std::string(boiler.bytes)});
    }
    fmt::print("The demo plant: nothing in it is real, and everybody's PIN is {}.\n",
               service::demo_pin);
  }
  for (const std::string& file : options.boilers) {
    serve.boilers.push_back({base_name(file), read_file(file)});
  }
  const auto to = [](std::FILE* file) {
    return [file](const std::string& line) {
      fmt::print(file, "{}\n", line);
      std::fflush(file);
    };
  };
  server::serve(std::move(serve), to(stdout), to(stderr));
  return 0;
}

}  // namespace steamworthy::cli
