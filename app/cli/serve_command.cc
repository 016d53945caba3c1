#include "cli/serve_command.h"

#include <fmt/format.h>
#include <unistd.h>

#include "cli/files.h"
#include "server/serve.h"
#include "store/store.h"
#include "store/surroundings.h"

namespace steamworthy::cli {

int serve_command(const ServeOptions& options) {
  if (options.make && ::access(options.store.c_str(), F_OK) != 0) {
    store::RealSurroundings world;
    store::create_store(options.store, world);
  }
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
