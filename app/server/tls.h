// TLS: the certificate with which the program shows itself, given or made on the first start.
#pragma once

#include <string>
#include <vector>

namespace steamworthy::server {

/// A certificate with its key, each a PEM file.
struct CertificateFiles {
  std::string certificate;
  std::string key;
};

/// Makes a key (EC P-256) and a certificate signed by itself, good for these names and addresses
/// and for ten years, if there is none at `files`; the key with mode 0600.
/// Throws   StoreError "server.no_certificate" if a file cannot be written or only one of them is
///          there.
void make_certificate_if_none(const CertificateFiles& files, const std::vector<std::string>& names);

/// SHA-256 of a certificate as people compare it: "4F:2A:..."; and its last day, "2036-11-23".
struct CertificateFacts {
  std::string fingerprint;
  std::string last_day;
  std::vector<std::string> names;
};
/// Throws   StoreError "server.no_certificate" if it cannot be read.
CertificateFacts certificate_facts(const std::string& certificate);

/// What this machine is called, and the addresses that it has: what the certificate is made for.
std::vector<std::string> own_names();

}  // namespace steamworthy::server
