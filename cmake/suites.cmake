# Read by ctest beside each test program: every suite that the program lists is one ctest, so that what a suite
# computes once is computed once, and programs are started some hundreds of times instead of thousands.
#   program: its path; set by tests/CMakeLists.txt
get_filename_component(stem ${program} NAME)
if(NOT EXISTS ${program})
  add_test(${stem}.is_not_built ${program})
  return()
endif()
execute_process(COMMAND ${program} --gtest_list_tests OUTPUT_VARIABLE listed ERROR_QUIET RESULT_VARIABLE failed)
string(REGEX MATCHALL "(^|\n)[^ \n]+\\.[^\n]*" lines "${listed}")
if(failed OR NOT lines)
  add_test(${stem}.lists_no_tests false)
  return()
endif()
foreach(line IN LISTS lines)
  string(REGEX REPLACE "^\n?([^ \n]+)\\..*$" "\\1" suite "${line}")
  add_test(${stem}.${suite} ${program} --gtest_filter=${suite}.*)
endforeach()
