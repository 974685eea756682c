# One function makes a room: a static library with an include root of its own, a folder in the build tree that
# holds a link to this room alone. A header of a room that is not linked is therefore not found.
#
#   coilwright_room(coil SOURCES fill.cpp … SEES coilwright::design USES …)
#
# SEES: rooms that the room's headers need (passed on).  USES: rooms needed inside only.
# LIGHT: sources without long loops of numbers, optimised less (warnings.cmake); they cannot use Eigen.
function(coilwright_room name)
  cmake_parse_arguments(ROOM "" "" "SOURCES;LIGHT;SEES;USES;PCH" ${ARGN})
  if(ROOM_LIGHT AND ROOM_SOURCES)
    add_library(${name}_light OBJECT ${ROOM_LIGHT})
    target_include_directories(${name}_light PRIVATE $<TARGET_PROPERTY:${name},INCLUDE_DIRECTORIES>)
    target_compile_options(${name}_light PRIVATE ${COILWRIGHT_LIGHT})
    add_library(${name} STATIC ${ROOM_SOURCES} $<TARGET_OBJECTS:${name}_light>)
  else()
    add_library(${name} STATIC ${ROOM_SOURCES} ${ROOM_LIGHT})
    if(ROOM_LIGHT)
      target_compile_options(${name} PRIVATE ${COILWRIGHT_LIGHT})
    endif()
  endif()
  add_library(coilwright::${name} ALIAS ${name})
  set(root ${PROJECT_BINARY_DIR}/rooms/${name})
  file(MAKE_DIRECTORY ${root})
  file(CREATE_LINK ${CMAKE_CURRENT_SOURCE_DIR} ${root}/${name} SYMBOLIC)
  target_include_directories(${name} PUBLIC ${root})
  target_link_libraries(${name} PUBLIC ${ROOM_SEES} PRIVATE ${ROOM_USES})
  if(ROOM_PCH)
    target_precompile_headers(${name} PRIVATE ${ROOM_PCH})
  endif()
endfunction()
