#include "store/key_file.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <chrono>
#include <cstring>
#include <thread>

#include "base/error.h"

namespace steamworthy::store {
namespace {

std::string text_of(const Seed& seed) {
  const Ed25519Signer signer(seed);
  return fmt::format("steamworthy key 1\nseed {}\npublic {}\n", record::hex(seed),
                     record::hex(signer.public_key()));
}

[[noreturn]] void refuse(const char* code, const std::string& path, const std::string& why) {
  throw StoreError(code, path + ": " + why);
}

std::string system_reason() { return std::strerror(errno); }

/// Closes a file when it goes.
struct File {
  explicit File(int number) : number(number) {}
  ~File() {
    if (number >= 0) ::close(number);
  }
  File(const File&) = delete;
  File& operator=(const File&) = delete;
  int release() {
    const int kept = number;
    number = -1;
    return kept;
  }
  int number;
};

void check_mode(int file, const std::string& path) {
  struct stat status {};
  if (::fstat(file, &status) != 0) refuse("store.cannot_open", path, system_reason());
  if (!S_ISREG(status.st_mode)) refuse("store.key_unsafe", path, "the key is no plain file");
  if (status.st_uid != ::geteuid()) {
    refuse("store.key_unsafe", path, "the key belongs to another user");
  }
  if ((status.st_mode & 077) != 0) {
    refuse(
        "store.key_unsafe", path,
        fmt::format("others may read or change the key (mode {:04o}); it must be 0600, and a key "
                    "that others have seen should be given up",
                    status.st_mode & 07777));
  }
}

void lock(int file, const std::string& path, int patience_ms) {
  using namespace std::chrono;
  const auto until = steady_clock::now() + milliseconds(patience_ms);
  while (::flock(file, LOCK_EX | LOCK_NB) != 0) {
    if (errno != EWOULDBLOCK && errno != EINTR) refuse("store.cannot_open", path, system_reason());
    if (steady_clock::now() >= until) {
      refuse("store.in_use", path, "another process has this store open for writing");
    }
    std::this_thread::sleep_for(milliseconds(10));
  }
}

}  // namespace

void sync_folder_of(const std::string& path) {
  const std::size_t slash = path.find_last_of('/');
  const std::string folder = slash == std::string::npos ? "." : path.substr(0, slash + 1);
  const File opened(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (opened.number < 0 || ::fsync(opened.number) != 0) {
    refuse("store.io", folder, system_reason());
  }
}

void KeyFile::create(const std::string& path, const Seed& seed) {
  const File file(::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0600));
  if (file.number < 0) {
    if (errno == EEXIST) refuse("store.key_exists", path, "there is a key of this name already");
    refuse("store.cannot_open", path, system_reason());
  }
  const std::string text = text_of(seed);
  if (::fchmod(file.number, 0600) != 0 ||
      ::write(file.number, text.data(), text.size()) != static_cast<ssize_t>(text.size()) ||
      ::fsync(file.number) != 0) {
    refuse("store.io", path, system_reason());
  }
  sync_folder_of(path);
}

KeyFile::KeyFile(const std::string& path, int patience_ms) {
  File file(::open(path.c_str(), O_RDONLY | O_NOFOLLOW | O_CLOEXEC));
  if (file.number < 0) {
    if (errno == ENOENT) {
      refuse("store.key_missing", path,
             "the private key of this store is gone; a backup restored under another name gets a "
             "new one");
    }
    if (errno == ELOOP) refuse("store.key_unsafe", path, "the key is a link");
    refuse("store.cannot_open", path, system_reason());
  }
  check_mode(file.number, path);
  char buffer[512];
  const ssize_t size = ::read(file.number, buffer, sizeof buffer);
  const std::string_view text(buffer, size > 0 ? static_cast<std::size_t>(size) : 0);
  constexpr std::size_t seed_at = sizeof "steamworthy key 1\nseed " - 1;
  const auto seed =
      text.size() < seed_at + 64 ? std::nullopt : record::from_hex<Seed>(text.substr(seed_at, 64));
  if (!seed || text != text_of(*seed)) {
    refuse("store.key_damaged", path, "the private key was changed or is cut short");
  }
  lock(file.number, path, patience_ms);
  seed_ = *seed;
  file_ = file.release();
}

KeyFile::~KeyFile() { ::close(file_); }

}  // namespace steamworthy::store
