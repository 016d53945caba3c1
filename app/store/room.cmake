find_package(SQLite3 REQUIRED)
find_package(PkgConfig REQUIRED)
pkg_check_modules(SODIUM REQUIRED IMPORTED_TARGET libsodium)
target_link_libraries(room_store PUBLIC SQLite::SQLite3 PkgConfig::SODIUM Threads::Threads)
