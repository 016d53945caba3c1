#include "server/tls.h"

#include <arpa/inet.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <ifaddrs.h>
#include <net/if.h>
#include <netinet/in.h>
#include <openssl/evp.h>
#include <openssl/pem.h>
#include <openssl/rand.h>
#include <openssl/x509v3.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <ctime>
#include <memory>

#include "base/error.h"
#include "store/key_file.h"

namespace steamworthy::server {
namespace {

template <auto free>
struct Free {
  template <class T>
  void operator()(T* thing) const {
    free(thing);
  }
};
using Key = std::unique_ptr<EVP_PKEY, Free<EVP_PKEY_free>>;
using Certificate = std::unique_ptr<X509, Free<X509_free>>;
using File = std::unique_ptr<std::FILE, Free<std::fclose>>;

[[noreturn]] void refuse(const std::string& file, const std::string& why) {
  throw StoreError("server.no_certificate", file + ": " + why);
}

bool is_there(const std::string& path) { return ::access(path.c_str(), F_OK) == 0; }

bool is_address(const std::string& name) {
  std::array<unsigned char, sizeof(in6_addr)> bytes{};
  return ::inet_pton(AF_INET, name.c_str(), bytes.data()) == 1 ||
         ::inet_pton(AF_INET6, name.c_str(), bytes.data()) == 1;
}

void add_extension(X509* certificate, int what, const std::string& value) {
  X509V3_CTX context;
  X509V3_set_ctx_nodb(&context);
  X509V3_set_ctx(&context, certificate, certificate, nullptr, nullptr, 0);
  const std::unique_ptr<X509_EXTENSION, Free<X509_EXTENSION_free>> extension(
      X509V3_EXT_conf_nid(nullptr, &context, what, value.c_str()));
  if (!extension || X509_add_ext(certificate, extension.get(), -1) != 1) {
    refuse(value, "cannot stand in a certificate");
  }
}

Certificate certificate_of(EVP_PKEY* key, const std::vector<std::string>& names) {
  Certificate certificate(X509_new());
  std::array<unsigned char, 16> serial{};
  RAND_bytes(serial.data(), static_cast<int>(serial.size()));
  serial[0] &= 0x7f;
  const std::unique_ptr<BIGNUM, Free<BN_free>> number(
      BN_bin2bn(serial.data(), static_cast<int>(serial.size()), nullptr));
  X509_set_version(certificate.get(), 2);
  BN_to_ASN1_INTEGER(number.get(), X509_get_serialNumber(certificate.get()));
  constexpr long day_s = 24 * 3600;
  X509_gmtime_adj(X509_getm_notBefore(certificate.get()), -day_s);
  X509_gmtime_adj(X509_getm_notAfter(certificate.get()), 3650 * day_s);
  X509_set_pubkey(certificate.get(), key);
  X509_NAME* subject = X509_get_subject_name(certificate.get());
  const auto* common = reinterpret_cast<const unsigned char*>("Steamworthy");
  X509_NAME_add_entry_by_txt(subject, "CN", MBSTRING_UTF8, common, -1, -1, 0);
  X509_set_issuer_name(certificate.get(), subject);
  std::string alternatives;
  for (const std::string& name : names) {
    alternatives +=
        (alternatives.empty() ? "" : ",") + std::string(is_address(name) ? "IP:" : "DNS:") + name;
  }
  // An authority of its own that vouches for itself alone: what a tablet can be told to trust.
  add_extension(certificate.get(), NID_basic_constraints, "critical,CA:TRUE,pathlen:0");
  add_extension(certificate.get(), NID_key_usage, "critical,digitalSignature,keyCertSign");
  add_extension(certificate.get(), NID_ext_key_usage, "serverAuth");
  add_extension(certificate.get(), NID_subject_key_identifier, "hash");
  add_extension(certificate.get(), NID_subject_alt_name, alternatives);
  if (X509_sign(certificate.get(), key, EVP_sha256()) == 0) refuse("certificate", "not signed");
  return certificate;
}

File new_file(const std::string& path, mode_t mode) {
  const int number = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode);
  File file(number < 0 ? nullptr : ::fdopen(number, "w"));
  if (!file) refuse(path, "cannot be written");
  return file;
}

void flush(std::FILE* file, const std::string& path) {
  if (std::fflush(file) != 0 || ::fsync(::fileno(file)) != 0) refuse(path, "cannot be written");
}

}  // namespace

void make_certificate_if_none(const CertificateFiles& files,
                              const std::vector<std::string>& names) {
  const bool has_certificate = is_there(files.certificate);
  if (has_certificate != is_there(files.key)) {
    refuse(has_certificate ? files.key : files.certificate,
           "is not there, though the other of the two is");
  }
  if (has_certificate) return;
  const Key key(EVP_EC_gen("P-256"));
  if (!key) refuse(files.key, "no key could be made");
  const Certificate certificate = certificate_of(key.get(), names);
  const File key_file = new_file(files.key, 0600);
  PEM_write_PrivateKey(key_file.get(), key.get(), nullptr, nullptr, 0, nullptr, nullptr);
  flush(key_file.get(), files.key);
  const File file = new_file(files.certificate, 0644);
  PEM_write_X509(file.get(), certificate.get());
  flush(file.get(), files.certificate);
  store::sync_folder_of(files.certificate);
}

CertificateFacts certificate_facts(const std::string& path) {
  const File file(std::fopen(path.c_str(), "re"));
  if (!file) refuse(path, "cannot be read");
  const Certificate certificate(PEM_read_X509(file.get(), nullptr, nullptr, nullptr));
  if (!certificate) refuse(path, "holds no certificate");
  CertificateFacts facts;
  std::array<unsigned char, EVP_MAX_MD_SIZE> digest{};
  unsigned size = 0;
  X509_digest(certificate.get(), EVP_sha256(), digest.data(), &size);
  for (unsigned i = 0; i < size; ++i) {
    facts.fingerprint += fmt::format("{}{:02X}", i == 0 ? "" : ":", digest[i]);
  }
  std::tm last{};
  if (ASN1_TIME_to_tm(X509_get0_notAfter(certificate.get()), &last) == 1) {
    facts.last_day =
        fmt::format("{:04}-{:02}-{:02}", last.tm_year + 1900, last.tm_mon + 1, last.tm_mday);
  }
  const std::unique_ptr<GENERAL_NAMES, Free<GENERAL_NAMES_free>> names(static_cast<GENERAL_NAMES*>(
      X509_get_ext_d2i(certificate.get(), NID_subject_alt_name, nullptr, nullptr)));
  for (int i = 0; names && i < sk_GENERAL_NAME_num(names.get()); ++i) {
    const GENERAL_NAME* name = sk_GENERAL_NAME_value(names.get(), i);
    if (name->type == GEN_DNS) {
      const ASN1_IA5STRING* text = name->d.dNSName;
      facts.names.emplace_back(reinterpret_cast<const char*>(ASN1_STRING_get0_data(text)),
                               static_cast<std::size_t>(ASN1_STRING_length(text)));
    } else if (name->type == GEN_IPADD) {
      std::array<char, INET6_ADDRSTRLEN> text{};
      const int family = ASN1_STRING_length(name->d.iPAddress) == 4 ? AF_INET : AF_INET6;
      ::inet_ntop(family, ASN1_STRING_get0_data(name->d.iPAddress), text.data(), text.size());
      facts.names.emplace_back(text.data());
    }
  }
  return facts;
}

std::vector<std::string> own_names() {
  std::vector<std::string> names{"localhost"};
  std::array<char, 256> host{};
  if (::gethostname(host.data(), host.size() - 1) == 0 && host[0] != '\0') {
    names.emplace_back(host.data());
    names.push_back(names.back() + ".local");
  }
  ifaddrs* first = nullptr;
  if (::getifaddrs(&first) != 0) return names;
  const std::unique_ptr<ifaddrs, Free<freeifaddrs>> all(first);
  for (const ifaddrs* at = first; at != nullptr; at = at->ifa_next) {
    if (at->ifa_addr == nullptr || (at->ifa_flags & IFF_UP) == 0) continue;
    if (at->ifa_addr->sa_family != AF_INET) continue;
    std::array<char, INET_ADDRSTRLEN> text{};
    const auto* address = reinterpret_cast<const sockaddr_in*>(at->ifa_addr);
    if (::inet_ntop(AF_INET, &address->sin_addr, text.data(), text.size()) != nullptr) {
      names.emplace_back(text.data());
    }
  }
  std::vector<std::string> once;
  for (const std::string& name : names) {
    if (std::find(once.begin(), once.end(), name) == once.end()) once.push_back(name);
  }
  return once;
}

}  // namespace steamworthy::server
