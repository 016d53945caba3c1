#include "server/serve.h"

#include <fmt/format.h>

#include "server/account_calls.h"
#include "store/store.h"

namespace steamworthy::server {
namespace {

/// What a host name looks like between the slashes of an address.
std::string bracketed(const std::string& host) {
  return host.find(':') == std::string::npos ? host : "[" + host + "]";
}

std::string trust_text(const CertificateFiles& files, bool made) {
  const CertificateFacts facts = certificate_facts(files.certificate);
  std::string names;
  for (const std::string& name : facts.names) names += (names.empty() ? "" : ", ") + name;
  std::string text =
      fmt::format("Certificate {}, good until {} for {}.\nFingerprint (SHA-256) {}\n",
                  files.certificate, facts.last_day, names, facts.fingerprint);
  if (made) {
    text +=
        "A tablet trusts it once that file is installed there as an authority (Android: Settings, "
        "Security, Install a certificate, CA certificate; iPadOS: open the file, then Settings, "
        "General, VPN & Device Management, and About, Certificate Trust Settings). Compare the "
        "fingerprint on the tablet with the one above before trusting it.\n";
  }
  return text;
}

/// The listener with its certificate, and what stands before links.
struct Address {
  std::string host;
  std::string scheme = "http";
  std::string trust;
};

Address settle_address(ServeOptions& options) {
  Address address;
  const bool loopback = is_loopback(options.listen.address);
  const bool given = !options.given.certificate.empty() || !options.given.key.empty();
  if (options.tls || given || !loopback) {
    CertificateFiles files = options.given;
    if (!given) {
      files = {options.store + ".cert", options.store + ".cert.key"};
      std::vector<std::string> names = own_names();
      if (!options.host.empty()) names.push_back(options.host);
      make_certificate_if_none(files, names);
    }
    options.listen.certificate = files;
    address.scheme = "https";
    address.trust = trust_text(files, !given);
  }
  address.host = options.host;
  if (address.host.empty()) {
    const bool any = options.listen.address == "0.0.0.0" || options.listen.address == "::";
    address.host = any ? own_names().back() : options.listen.address;
  }
  return address;
}

}  // namespace

void serve(ServeOptions options, const std::function<void(const std::string&)>& say,
           const std::function<void(const std::string&)>& log) {
  const Address address = settle_address(options);
  const Pages pages =
      options.pages.empty() ? Pages(assets::pages(), "web/dist/") : Pages(options.pages);
  store::RealSurroundings world;
  store::Store store(options.store, world);
  store::AccountBook book(store::accounts_path(options.store));
  store::FactLog& facts = store.log();
  Hub hub;
  constexpr std::size_t most_waiting = 1000;
  Closings closings(facts, hub, world);
  for (const Description& boiler : options.boilers) closings.add_boiler(boiler.name, boiler.bytes);
  closings.caught_up();
  Writer writer([&closings](const auto& sealed) { return closings.take_in(sealed); }, most_waiting);
  Accounts accounts(
      facts, book, world,
      [&](const std::vector<store::Draft>& drafts) {
        std::vector<store::Receipt> receipts;
        writer.run([&] {
          receipts = facts.append(drafts);
          closings.caught_up();
        });
        return receipts;
      },
      [&] { return closings.plant(); });
  House house{facts, world, accounts, closings, hub, writer, pages, options.store};
  house.started_at_ms = world.now_ms();
  for (const record::PublicKey& key : facts.keys()) {
    if (record::device_of(key) == facts.device()) house.node_key = key;
  }
  constexpr int heavy_threads = 2;  // Argon2 takes 64 MiB each
  constexpr std::size_t most_heavy = 64;
  Bench reader(1, most_waiting);
  Bench heavy(heavy_threads, most_heavy);
  Door door(house, reader, heavy);
  Listener listener(door, options.listen, log);
  house.origin =
      fmt::format("{}://{}:{}", address.scheme, bracketed(address.host), listener.port());
  say(fmt::format("Steamworthy {} serves {} at {}/", STEAMWORTHY_VERSION, options.store,
                  house.origin));
  if (pages.count() == 0) {
    say("The page was not built into this program; its API is there all the same.");
  }
  if (!address.trust.empty()) say(address.trust);
  say(fmt::format("This link lets one device in, once, within the hour:\n  {}",
                  enrolment_link(house.origin, accounts.make_code("", hour_ms))));
  listener.run();
  heavy.stop();
  reader.stop();
  writer.stop();
  say("Stopped; everything that was acknowledged is stored.");
}

}  // namespace steamworthy::server
