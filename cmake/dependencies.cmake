# Third-party libraries, all from Debian 12.
find_package(Threads REQUIRED)
find_package(Eigen3 3.4 REQUIRED NO_MODULE)
find_package(fmt 9 REQUIRED)
find_package(nlohmann_json 3.11 REQUIRED)
find_package(tomlplusplus REQUIRED)
if(STEAMWORTHY_TESTS)
  find_package(GTest REQUIRED)
  find_package(rapidcheck REQUIRED)
endif()

# Libraries that any room of core may use. Compiled for WebAssembly, fmt is header-only; here its
# compiled library more than halves the time that most files take to compile. (JSON and TOML are for
# the room `wire` alone; tools/check_rooms.py sees to it.)
add_library(core_dependencies INTERFACE)
target_link_libraries(core_dependencies INTERFACE
  Eigen3::Eigen fmt::fmt nlohmann_json::nlohmann_json tomlplusplus::tomlplusplus)
