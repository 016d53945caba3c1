# embed_files(OUT.cc FUNCTION FILE...): writes a C++ file that holds the bytes
# of each FILE and defines `std::span<const Asset> FUNCTION()` (app/assets/assets.h).
function(embed_files output function)
  add_custom_command(
    OUTPUT ${output}
    COMMAND ${CMAKE_COMMAND} -DOUTPUT=${output} -DFUNCTION=${function} "-DFILES=${ARGN}"
            -DROOT=${CMAKE_SOURCE_DIR} -P ${CMAKE_SOURCE_DIR}/cmake/embed_script.cmake
    DEPENDS ${ARGN} ${CMAKE_SOURCE_DIR}/cmake/embed_script.cmake
    VERBATIM)
endfunction()
