# Only listener.cc knows Boost, only tls.cc and listener.cc OpenSSL. Boost 1.74's coroutines need
# g++: with any other compiler, which is there to fuzz what is behind the door, the room has none.
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
  find_package(Boost 1.74 REQUIRED)
  find_package(OpenSSL REQUIRED)
  target_link_libraries(room_server PRIVATE Boost::headers OpenSSL::SSL OpenSSL::Crypto)
else()
  get_target_property(server_sources room_server SOURCES)
  list(FILTER server_sources EXCLUDE REGEX "/(listener|serve|tls)\\.cc$")
  set_target_properties(room_server PROPERTIES SOURCES "${server_sources}")
endif()
target_link_libraries(room_server PUBLIC Threads::Threads)
