# Compiler flags that every room shares.
#
# -ffp-contract=off and an unvectorised Eigen keep native figures equal, bit for
# bit, to those that the same source gives when compiled to WebAssembly.
add_library(steamworthy_options INTERFACE)
target_compile_features(steamworthy_options INTERFACE cxx_std_20)
target_compile_options(steamworthy_options INTERFACE
  # A member left out of an initialiser takes its default on purpose.
  -Wall -Wextra -Wpedantic -Wno-missing-field-initializers -Wconversion -Werror -ffp-contract=off
  $<IF:$<CXX_COMPILER_ID:GNU>,-Wshadow=local,-Wshadow>)
target_compile_definitions(steamworthy_options INTERFACE
  EIGEN_DONT_VECTORIZE STEAMWORTHY_VERSION="${PROJECT_VERSION}")
# g++ 12 sees these two in the standard library's own std::sort and std::regex, where they are not.
target_compile_options(steamworthy_options INTERFACE
  $<$<CXX_COMPILER_ID:GNU>:-Wno-array-bounds>
  $<$<CXX_COMPILER_ID:GNU>:-Wno-maybe-uninitialized>)
set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)

if(STEAMWORTHY_SANITIZE)
  add_compile_options(-fsanitize=${STEAMWORTHY_SANITIZE} -fno-sanitize-recover=all -fno-omit-frame-pointer)
  # Left out: what the address sanitizer stops at as well (null pointers, what lies outside an object)
  # or what an x86 machine allows. They are checked at every access to a member, and took half of the
  # time that a file takes to compile: 31 s of processor against 16 s for a test of the room wire.
  add_compile_options(-fno-sanitize=null,alignment,vptr,object-size,nonnull-attribute,returns-nonnull-attribute)
  add_link_options(-fsanitize=${STEAMWORTHY_SANITIZE})
endif()
