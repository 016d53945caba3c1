// A small wrapper round sqlite3: what this room needs of it, with errors as StoreError.
//
// Not safe to use from two threads at once; SqliteFactLog sees to it.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

struct sqlite3;
struct sqlite3_stmt;

namespace steamworthy::store {

class Database;

/// A prepared statement. Texts and blobs bound to it are not copied and must outlive step().
class Statement {
 public:
  Statement(Database& database, std::string_view sql);

  Statement& bind(int place, std::int64_t value);
  Statement& bind_blob(int place, std::string_view bytes);
  Statement& bind_text(int place, std::string_view text);

  /// True while there is a row.
  bool step();
  /// Runs a statement that gives no rows, and makes it ready to run again.
  void run();
  void reset();

  std::int64_t whole(int column) const;
  /// Valid until the next step(). The bytes of a blob or a text; a number as text.
  std::string_view blob(int column) const;

 private:
  struct Finalizer {
    void operator()(sqlite3_stmt* statement) const;
  };
  Database* database_;
  std::unique_ptr<sqlite3_stmt, Finalizer> statement_;
};

enum class OpenMode { Read, Write, Create };

class Database {
 public:
  /// `vfs` names a file system of SQLite's; empty for the usual one.
  Database(const std::string& path, OpenMode mode, const std::string& vfs = {});

  const std::string& path() const { return path_; }
  sqlite3* handle() const { return handle_.get(); }

  /// Runs statements that give no rows.
  void run(const std::string& sql);
  /// The first column of the first row.
  std::int64_t whole(const std::string& sql);
  std::string text(const std::string& sql);

  /// Throws the StoreError of a result code of SQLite. Codes: store.full, store.io, store.damaged,
  /// store.in_use, store.read_only, store.cannot_open, store.database.
  [[noreturn]] void fail(int code, std::string_view doing) const;

 private:
  struct Closer {
    void operator()(sqlite3* handle) const;
  };
  std::string path_;
  std::unique_ptr<sqlite3, Closer> handle_;
};

/// A transaction that writes: rolled back unless committed.
class WriteTransaction {
 public:
  explicit WriteTransaction(Database& database);
  ~WriteTransaction();
  WriteTransaction(const WriteTransaction&) = delete;
  WriteTransaction& operator=(const WriteTransaction&) = delete;
  /// Returns once the disk has it.
  void commit();

 private:
  Database& database_;
  bool open_ = true;
};

}  // namespace steamworthy::store
