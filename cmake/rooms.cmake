# One library a room, one test program a room, both made from ROOMS: the arrows
# of the targets are the arrows of that file and cannot drift from it.
#
# A room's sources are its *.cc files; *_test.cc are its tests. A room that
# needs a library of its own names it in <room>/room.cmake.
set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/ROOMS)
file(STRINGS ${CMAKE_SOURCE_DIR}/ROOMS room_lines REGEX "^(core|app)/")

foreach(line ${room_lines})
  separate_arguments(words UNIX_COMMAND "${line}")
  list(POP_FRONT words path)
  get_filename_component(room ${path} NAME)
  get_filename_component(side ${path} DIRECTORY)
  set(directory ${CMAKE_SOURCE_DIR}/${path})

  file(GLOB sources CONFIGURE_DEPENDS ${directory}/*.cc)
  set(tests ${sources})
  list(FILTER sources EXCLUDE REGEX "_test\\.cc$")
  list(FILTER tests INCLUDE REGEX "_test\\.cc$")

  set(target room_${room})
  if(sources)
    add_library(${target} STATIC ${sources})
    set(scope PUBLIC)
  else()
    add_library(${target} INTERFACE)
    set(scope INTERFACE)
  endif()
  target_include_directories(${target} ${scope} ${CMAKE_SOURCE_DIR}/${side})
  target_link_libraries(${target} ${scope} steamworthy_options core_dependencies)
  foreach(other ${words})
    target_link_libraries(${target} ${scope} room_${other})
  endforeach()
  include(${directory}/room.cmake OPTIONAL)

  if(STEAMWORTHY_TESTS AND tests)
    add_executable(${room}_test ${tests})
    target_link_libraries(${room}_test PRIVATE ${target} GTest::gtest_main rapidcheck)
    target_compile_definitions(${room}_test PRIVATE
      STEAMWORTHY_SOURCE_DIR="${CMAKE_SOURCE_DIR}")
    if(EXISTS ${CMAKE_SOURCE_DIR}/core/testing AND NOT room STREQUAL "testing")
      target_link_libraries(${room}_test PRIVATE room_testing)
    endif()
    set_property(GLOBAL APPEND PROPERTY STEAMWORTHY_TEST_PROGRAMS ${room}_test)
  endif()
endforeach()
