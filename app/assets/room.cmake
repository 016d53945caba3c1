file(GLOB rule_files CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/rules/*.toml)
# The page is built by npm; without it the program has its API and a notice in its place.
file(GLOB_RECURSE page_files CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/web/dist/*)
embed_files(${CMAKE_BINARY_DIR}/embedded/rules.cc rules ${rule_files})
set(demo_files watertube.toml firetube.toml demo-plant.jsonl demo-closing.jsonl demo-mid-work.jsonl)
list(TRANSFORM demo_files PREPEND ${CMAKE_SOURCE_DIR}/examples/)
embed_files(${CMAKE_BINARY_DIR}/embedded/demo.cc demo ${demo_files})
embed_files(${CMAKE_BINARY_DIR}/embedded/openapi.cc openapi ${CMAKE_SOURCE_DIR}/docs/formats/openapi.json)
embed_files(${CMAKE_BINARY_DIR}/embedded/pages.cc pages ${page_files})
add_library(embedded_assets STATIC
  ${CMAKE_BINARY_DIR}/embedded/rules.cc ${CMAKE_BINARY_DIR}/embedded/demo.cc ${CMAKE_BINARY_DIR}/embedded/openapi.cc ${CMAKE_BINARY_DIR}/embedded/pages.cc)
target_include_directories(embedded_assets PRIVATE ${CMAKE_SOURCE_DIR}/app)
target_link_libraries(embedded_assets PRIVATE steamworthy_options)
target_link_libraries(room_assets INTERFACE embedded_assets)
