#include "cli/commands.h"

namespace steamworthy::cli {

void Commands::add_serve() {
  serve = app.add_subcommand("serve", "serves the crew's pages and the API from a store");
  ServeOptions& options = serve_options;
  serve->add_option("store", options.store, "the store's file")->required();
  serve->add_flag("--new", options.make, "makes the store if there is none of this name");
  serve->add_flag("--demo", options.demo,
                  "the same with the demo plant in it, and serves its boilers");
  serve->add_option("--boiler", options.boilers, "a boiler's description (repeatable)");
  serve->add_option("--address", options.address,
                    "address to listen on; 0.0.0.0 for all of this machine's");
  serve->add_option("--port", options.port, "port to listen on; 0 for any that is free")
      ->check(CLI::Range(0, 65535));
  serve->add_option("--certificate", options.certificate,
                    "certificate chain, PEM; without one it is made beside the store");
  serve->add_option("--key", options.certificate_key, "private key of the certificate, PEM");
  serve->add_flag("--tls", options.tls, "TLS on loopback too, where plain HTTP would do");
  serve->add_option("--host", options.host, "name that stands in links and in the certificate");
  serve->add_option("--pages", options.pages,
                    "folder of the page's files, instead of those compiled in");
  serve->add_option("--connections", options.connections, "connections at once, at most")
      ->check(CLI::Range(1, 100000));
  serve
      ->add_option("--connections-per-address", options.connections_per_address,
                   "the same for one address")
      ->check(CLI::Range(1, 100000));
  serve->footer(
      "Plain HTTP is spoken on loopback only; on any other address it is HTTPS.\n"
      "Examples:\n"
      "  steamworthy serve plant.steamworthy --new --boiler examples/watertube.toml\n"
      "  steamworthy serve demo.steamworthy --demo\n"
      "  steamworthy serve plant.steamworthy --address 0.0.0.0 --port 8443 --host "
      "boiler-house.local");
}

}  // namespace steamworthy::cli
