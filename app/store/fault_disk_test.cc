#include "store/fault_disk_test.h"

#include <algorithm>
#include <cstring>

namespace steamworthy::store {
namespace {

constexpr std::size_t sector = 512;

void put(std::string& content, std::size_t at, std::string_view bytes) {
  if (content.size() < at + bytes.size()) content.resize(at + bytes.size(), '\0');
  content.replace(at, bytes.size(), bytes);
}

}  // namespace

const sqlite3_io_methods FaultDisk::methods_ = {
    2,
    close,
    read,
    write,
    truncate,
    sync,
    file_size,
    [](sqlite3_file*, int) { return SQLITE_OK; },  // one process: locks do nothing
    [](sqlite3_file*, int) { return SQLITE_OK; },
    [](sqlite3_file*, int* held) {
      *held = 0;
      return SQLITE_OK;
    },
    [](sqlite3_file*, int, void*) { return SQLITE_NOTFOUND; },
    [](sqlite3_file*) { return static_cast<int>(sector); },
    [](sqlite3_file*) { return 0; },
    map_shared,
    [](sqlite3_file*, int, int, int) { return SQLITE_OK; },
    [](sqlite3_file*) {},
    unmap_shared,
    nullptr,
    nullptr};

FaultDisk::FaultDisk(std::uint64_t seed) : state_(seed * 2 + 1) {
  static int count = 0;
  name_ = "fault-disk-" + std::to_string(++count);
  sqlite3_vfs* real = sqlite3_vfs_find(nullptr);
  vfs_.iVersion = 1;
  vfs_.szOsFile = sizeof(Handle);
  vfs_.mxPathname = 256;
  vfs_.zName = name_.c_str();
  vfs_.pAppData = this;
  vfs_.xOpen = open;
  vfs_.xDelete = remove;
  vfs_.xAccess = access;
  vfs_.xFullPathname = full_name;
  vfs_.xRandomness = real->xRandomness;
  vfs_.xSleep = real->xSleep;
  vfs_.xCurrentTime = real->xCurrentTime;
  vfs_.xGetLastError = [](sqlite3_vfs*, int, char*) { return 0; };
  sqlite3_vfs_register(&vfs_, 0);
}

FaultDisk::~FaultDisk() { sqlite3_vfs_unregister(&vfs_); }

std::uint64_t FaultDisk::chance() {
  state_ = state_ * 6364136223846793005u + 1442695040888963407u;
  return state_ >> 33;
}

std::size_t FaultDisk::size() const {
  std::size_t sum = 0;
  for (const auto& [name, content] : files_) sum += content->there ? content->now.size() : 0;
  return sum;
}

FaultDisk::Turn FaultDisk::next_change() {
  if (!has_power()) return Turn::Dead;
  ++changes_;
  if (!has_power()) return Turn::Dead;
  if (fail_at_ && changes_ >= *fail_at_) {
    fail_at_.reset();
    return Turn::Fail;
  }
  return Turn::Go;
}

void FaultDisk::settle() {
  for (auto it = files_.begin(); it != files_.end();) {
    Content& content = *it->second;
    content.synced = content.now;
    content.unsynced.clear();
    content.there_synced = content.there;
    it = content.there ? std::next(it) : files_.erase(it);
  }
}

void FaultDisk::restore_power() {
  // 0: all that was not synced is lost; 1: all of it was done after all; else a mixture by sectors.
  const std::uint64_t manner = chance() % 4;
  auto happens = [&] { return manner == 1 || (manner > 1 && chance() % 2 == 0); };
  for (auto it = files_.begin(); it != files_.end();) {
    Content& content = *it->second;
    std::string after = content.synced;
    for (const Change& change : content.unsynced) {
      if (change.cut_to) {
        if (happens()) after.resize(*change.cut_to, '\0');
        continue;
      }
      for (std::size_t from = 0; from < change.bytes.size();) {
        const std::size_t to = std::min(change.bytes.size(),
                                        (change.at + from) / sector * sector + sector - change.at);
        if (happens()) put(after, change.at + from, change.bytes.substr(from, to - from));
        from = to;
      }
    }
    const bool there = content.there == content.there_synced ? content.there
                       : happens()                           ? content.there
                                                             : content.there_synced;
    content.now = content.synced = after;
    content.unsynced.clear();
    content.shared.clear();
    content.there = content.there_synced = there;
    it = there ? std::next(it) : files_.erase(it);
  }
  power_off_at_.reset();
}

int FaultDisk::open(sqlite3_vfs* vfs, const char* name, sqlite3_file* file, int flags, int* out) {
  FaultDisk& disk = disk_of(vfs);
  Handle& handle = handle_of(file);
  handle.base.pMethods = nullptr;
  if (!disk.has_power()) return SQLITE_IOERR;
  const std::string key = name == nullptr ? "nameless " + std::to_string(disk.chance()) : name;
  auto& content = disk.files_[key];
  if (!content || !content->there) {
    if ((flags & SQLITE_OPEN_CREATE) == 0) {
      if (!content) disk.files_.erase(key);
      return SQLITE_CANTOPEN;
    }
    if (!content) content = std::make_unique<Content>();
    content->there = true;
    content->now.clear();
    content->unsynced.push_back({0, {}, 0});
  }
  handle.disk = &disk;
  handle.content = content.get();
  handle.base.pMethods = &methods_;
  if (out != nullptr) *out = flags;
  return SQLITE_OK;
}

int FaultDisk::remove(sqlite3_vfs* vfs, const char* name, int sync_folder) {
  FaultDisk& disk = disk_of(vfs);
  const auto it = disk.files_.find(name);
  if (it == disk.files_.end() || !it->second->there) return SQLITE_IOERR_DELETE_NOENT;
  switch (disk.next_change()) {
    case Turn::Dead:
    case Turn::Fail:
      return SQLITE_IOERR_DELETE;
    case Turn::Go:
      break;
  }
  it->second->there = false;
  if (sync_folder != 0) {
    it->second->there_synced = false;
    it->second->synced.clear();
    it->second->unsynced.clear();
  }
  return SQLITE_OK;
}

int FaultDisk::access(sqlite3_vfs* vfs, const char* name, int, int* out) {
  const auto& files = disk_of(vfs).files_;
  const auto it = files.find(name);
  *out = it != files.end() && it->second->there ? 1 : 0;
  return SQLITE_OK;
}

int FaultDisk::full_name(sqlite3_vfs*, const char* name, int size, char* out) {
  sqlite3_snprintf(size, out, "%s", name);
  return SQLITE_OK;
}

int FaultDisk::close(sqlite3_file*) { return SQLITE_OK; }

int FaultDisk::read(sqlite3_file* file, void* into, int size, sqlite3_int64 at) {
  Handle& handle = handle_of(file);
  FaultDisk& disk = *handle.disk;
  ++disk.reads_;
  if (!disk.has_power()) return SQLITE_IOERR_READ;
  if (disk.fail_read_at_ && disk.reads_ >= *disk.fail_read_at_) {
    disk.fail_read_at_.reset();
    return SQLITE_IOERR_READ;
  }
  const std::string& bytes = handle.content->now;
  const auto from = static_cast<std::size_t>(at);
  const auto wanted = static_cast<std::size_t>(size);
  const std::size_t there = from >= bytes.size() ? 0 : std::min(wanted, bytes.size() - from);
  std::memcpy(into, bytes.data() + (there == 0 ? 0 : from), there);
  if (there == wanted) return SQLITE_OK;
  std::memset(static_cast<char*>(into) + there, 0, wanted - there);
  return SQLITE_IOERR_SHORT_READ;
}

int FaultDisk::write(sqlite3_file* file, const void* data, int size, sqlite3_int64 at) {
  Handle& handle = handle_of(file);
  FaultDisk& disk = *handle.disk;
  Content& content = *handle.content;
  std::string bytes(static_cast<const char*>(data), static_cast<std::size_t>(size));
  const auto from = static_cast<std::size_t>(at);
  const std::size_t grown = std::max(content.now.size(), from + bytes.size()) - content.now.size();
  if (disk.has_power() && disk.limit_ && grown > 0 && disk.size() + grown > *disk.limit_) {
    return SQLITE_FULL;
  }
  const Turn turn = disk.next_change();
  if (turn == Turn::Dead) return SQLITE_IOERR_WRITE;
  if (turn == Turn::Fail) bytes.resize(bytes.size() / 2);
  put(content.now, from, bytes);
  content.unsynced.push_back({from, std::move(bytes), {}});
  return turn == Turn::Fail ? SQLITE_IOERR_WRITE : SQLITE_OK;
}

int FaultDisk::truncate(sqlite3_file* file, sqlite3_int64 size) {
  Handle& handle = handle_of(file);
  if (handle.disk->next_change() != Turn::Go) return SQLITE_IOERR_TRUNCATE;
  const auto to = static_cast<std::size_t>(size);
  handle.content->now.resize(to, '\0');
  handle.content->unsynced.push_back({0, {}, to});
  return SQLITE_OK;
}

int FaultDisk::sync(sqlite3_file* file, int) {
  Handle& handle = handle_of(file);
  // A sync that failed has synced nothing, and what it was to sync may be lost.
  if (handle.disk->next_change() != Turn::Go) return SQLITE_IOERR_FSYNC;
  Content& content = *handle.content;
  content.synced = content.now;
  content.unsynced.clear();
  content.there_synced = content.there;
  return SQLITE_OK;
}

int FaultDisk::file_size(sqlite3_file* file, sqlite3_int64* size) {
  *size = static_cast<sqlite3_int64>(handle_of(file).content->now.size());
  return SQLITE_OK;
}

int FaultDisk::map_shared(sqlite3_file* file, int region, int size, int extend,
                          void volatile** out) {
  auto& shared = handle_of(file).content->shared;
  const auto index = static_cast<std::size_t>(region);
  while (extend != 0 && shared.size() <= index) {
    shared.push_back(std::make_unique<std::vector<char>>(static_cast<std::size_t>(size)));
  }
  *out = index < shared.size() ? shared[index]->data() : nullptr;
  return SQLITE_OK;
}

int FaultDisk::unmap_shared(sqlite3_file* file, int erase) {
  if (erase != 0) handle_of(file).content->shared.clear();
  return SQLITE_OK;
}

}  // namespace steamworthy::store
