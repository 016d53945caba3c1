#include "cli/files.h"

#include <fmt/format.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <memory>

#include "base/error.h"

namespace steamworthy::cli {
namespace {

constexpr std::size_t largest_file = std::size_t{256} << 20;

struct Closer {
  void operator()(std::FILE* file) const {
    if (file != stdin && file != stdout) std::fclose(file);
  }
};

[[noreturn]] void fail(const std::string& name) {
  throw NotFound("cli.cannot_read", fmt::format("cannot read {}: {}", name, std::strerror(errno)));
}

}  // namespace

std::string read_file(const std::string& name) {
  const std::unique_ptr<std::FILE, Closer> file(name == "-" ? stdin
                                                            : std::fopen(name.c_str(), "rb"));
  if (!file) fail(name);
  std::string bytes;
  char block[1 << 16];
  while (const std::size_t count = std::fread(block, 1, sizeof block, file.get())) {
    bytes.append(block, count);
    if (bytes.size() > largest_file) {
      throw BadInput({{"cli.too_large", name, 0, "", "", "a file of at most 256 MiB",
                       "the file is larger than this program reads"}});
    }
  }
  if (std::ferror(file.get())) fail(name);
  return bytes;
}

void read_pieces(const std::string& name, const std::function<void(std::size_t)>& size,
                 const std::function<void(std::string_view)>& take) {
  const std::unique_ptr<std::FILE, Closer> file(name == "-" ? stdin
                                                            : std::fopen(name.c_str(), "rb"));
  if (!file) fail(name);
  if (name != "-" && std::fseek(file.get(), 0, SEEK_END) == 0) {
    const long length = std::ftell(file.get());
    if (length > 0) size(static_cast<std::size_t>(length));
    std::rewind(file.get());
  }
  std::string block(std::size_t{1} << 20, '\0');
  while (const std::size_t count = std::fread(block.data(), 1, block.size(), file.get())) {
    take(std::string_view(block).substr(0, count));
  }
  if (std::ferror(file.get())) fail(name);
}

void write_file(const std::string& name, const std::string& bytes) {
  std::unique_ptr<std::FILE, Closer> file(name == "-" ? stdout : std::fopen(name.c_str(), "wb"));
  const bool written =
      file && std::fwrite(bytes.data(), 1, bytes.size(), file.get()) == bytes.size();
  // What is still in the buffer can fail too: on a full disk only here.
  if (!written || std::fflush(file.get()) != 0) {
    throw NotFound("cli.cannot_write",
                   fmt::format("cannot write {}: {}", name, std::strerror(errno)));
  }
}

std::string base_name(const std::string& path) {
  const std::size_t slash = path.find_last_of('/');
  return slash == std::string::npos ? path : path.substr(slash + 1);
}

std::string beside(const std::string& file, const std::string& name) {
  const std::filesystem::path path(name);
  return path.is_absolute() ? name : (std::filesystem::path(file).parent_path() / path).string();
}

}  // namespace steamworthy::cli
