// For tests: a disk in memory that can fail, fill up, and lose its power, under SQLite.
//
// What was written but not synced may be lost when the power goes: any part of it, by sectors, in
// any mixture, as on a real disk with a cache. What was synced stays. Files made or deleted and not
// synced may be there or not.
#pragma once

#include <sqlite3.h>

#include <cstdint>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

namespace steamworthy::store {

class FaultDisk {
 public:
  explicit FaultDisk(std::uint64_t seed);
  ~FaultDisk();
  FaultDisk(const FaultDisk&) = delete;
  FaultDisk& operator=(const FaultDisk&) = delete;

  /// The name under which SQLite knows it.
  const std::string& vfs() const { return name_; }

  /// Writes, syncs, cuts and deletions so far.
  std::int64_t changes() const { return changes_; }

  /// From the n-th further change on the power is off: nothing more is done.
  void cut_power_after(std::int64_t n) { power_off_at_ = changes_ + n; }
  bool has_power() const { return !power_off_at_ || changes_ < *power_off_at_; }
  /// The power comes back: what was not synced is lost, in part or wholly. All files must be
  /// closed.
  void restore_power();

  /// Everything is safe as it stands.
  void settle();

  /// The n-th further change fails once, a write after half of it was done.
  void fail_change(std::int64_t n) { fail_at_ = changes_ + n; }
  /// The n-th further read fails once.
  void fail_read(std::int64_t n) { fail_read_at_ = reads_ + n; }
  /// Takes back failures that have not come yet.
  void heal() { fail_at_.reset(), fail_read_at_.reset(); }
  /// All files together may not be larger.
  void limit(std::optional<std::size_t> bytes) { limit_ = bytes; }
  std::size_t size() const;

 private:
  struct Change {
    std::size_t at = 0;
    std::string bytes;                  // a write
    std::optional<std::size_t> cut_to;  // or a cut
  };
  struct Content {
    std::string now;
    std::string synced;
    std::vector<Change> unsynced;
    bool there = true;                                       // now
    bool there_synced = false;                               // after a crash
    std::vector<std::unique_ptr<std::vector<char>>> shared;  // for the index of the write-ahead log
  };
  struct Handle {
    sqlite3_file base;
    FaultDisk* disk;
    Content* content;
  };

  enum class Turn { Go, Fail, Dead };
  Turn next_change();
  std::uint64_t chance();

  static FaultDisk& disk_of(sqlite3_vfs* vfs) { return *static_cast<FaultDisk*>(vfs->pAppData); }
  static Handle& handle_of(sqlite3_file* file) { return *reinterpret_cast<Handle*>(file); }

  static int open(sqlite3_vfs*, const char*, sqlite3_file*, int, int*);
  static int remove(sqlite3_vfs*, const char*, int);
  static int access(sqlite3_vfs*, const char*, int, int*);
  static int full_name(sqlite3_vfs*, const char*, int, char*);
  static int close(sqlite3_file*);
  static int read(sqlite3_file*, void*, int, sqlite3_int64);
  static int write(sqlite3_file*, const void*, int, sqlite3_int64);
  static int truncate(sqlite3_file*, sqlite3_int64);
  static int sync(sqlite3_file*, int);
  static int file_size(sqlite3_file*, sqlite3_int64*);
  static int map_shared(sqlite3_file*, int, int, int, void volatile**);
  static int unmap_shared(sqlite3_file*, int);

  static const sqlite3_io_methods methods_;

  std::string name_;
  sqlite3_vfs vfs_{};
  std::uint64_t state_;
  std::map<std::string, std::unique_ptr<Content>> files_;
  std::int64_t changes_ = 0, reads_ = 0;
  std::optional<std::int64_t> power_off_at_, fail_at_, fail_read_at_;
  std::optional<std::size_t> limit_;
};

}  // namespace steamworthy::store
