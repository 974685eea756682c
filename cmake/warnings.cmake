# Warnings are errors in every target of ours; assertions stay on in release builds (a stop beats a silent wrong result).
add_compile_options(-Wall -Wextra -Wpedantic -Wconversion -Wshadow -Werror)
# Several sources are compiled as one, which takes less than a third of the time; each must still stand alone (clang-tidy reads
# them so). What a source hides of another's in the same lump is no fault of either.
option(CMAKE_UNITY_BUILD "Compile several sources as one" ON)
set(CMAKE_UNITY_BUILD_BATCH_SIZE 30 CACHE STRING "Sources compiled as one, at most")
if(CMAKE_UNITY_BUILD)
  set(CMAKE_DISABLE_PRECOMPILE_HEADERS ON)  # loading them costs a lump more than reading the headers once
  if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
    add_compile_options(-Wno-shadow -Wshadow=local)
  endif()
endif()
# GCC 12 reports impossible overlaps and sizes inside std::string itself (its bug 105651).
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU" AND CMAKE_CXX_COMPILER_VERSION VERSION_LESS 13)
  add_compile_options(-Wno-restrict -Wno-stringop-overflow -Wno-stringop-overread -Wno-array-bounds)
endif()
set(CMAKE_CXX_FLAGS_RELEASE "-O2")
# For what has no long loops of numbers: compiles in half to three quarters of the time. The linker keeps one of several
# instances of a template, and from here it would be a slow one: Eigen is empty to these sources, so that none can use it.
set(COILWRIGHT_LIGHT -DEIGEN_CORE_H)
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
  # At this level GCC 12 cannot see that an optional value that it copies is set.
  list(APPEND COILWRIGHT_LIGHT $<$<CONFIG:Release>:-O1> $<$<CONFIG:Release>:-Wno-maybe-uninitialized>)
endif()
string(REPLACE "-DNDEBUG" "" CMAKE_CXX_FLAGS_RELWITHDEBINFO "${CMAKE_CXX_FLAGS_RELWITHDEBINFO}")

set(COILWRIGHT_SANITIZE "" CACHE STRING "Sanitizers, as in address,undefined or thread")
if(COILWRIGHT_SANITIZE)
  add_compile_options(-fsanitize=${COILWRIGHT_SANITIZE} -fno-omit-frame-pointer)
  add_link_options(-fsanitize=${COILWRIGHT_SANITIZE})
  if(COILWRIGHT_SANITIZE MATCHES fuzzer)
    add_compile_options(-fno-sanitize-recover=all)  # undefined behaviour is a find like any other
  endif()
endif()

option(COILWRIGHT_COVERAGE "Instrument for coverage" OFF)
if(COILWRIGHT_COVERAGE)
  add_compile_options(--coverage)
  add_link_options(--coverage)
endif()

find_program(COILWRIGHT_CCACHE ccache)
if(COILWRIGHT_CCACHE)
  set(CMAKE_CXX_COMPILER_LAUNCHER ${CMAKE_COMMAND} -E env CCACHE_SLOPPINESS=pch_defines,time_macros
      ${COILWRIGHT_CCACHE})
  add_compile_options(-fpch-preprocess)
endif()
