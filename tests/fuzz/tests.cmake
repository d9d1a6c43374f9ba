# Half a minute of each fuzzer, from the corpus on; skipped where there is no clang.
if(NOT "hours" IN_LIST rooms)
  return()
endif()

set(fuzz_folder ${PROJECT_BINARY_DIR}/fuzz)
add_test(NAME fuzz_build COMMAND ${CMAKE_CURRENT_LIST_DIR}/build ${fuzz_folder})
set_tests_properties(fuzz_build PROPERTIES FIXTURES_SETUP fuzzers)
foreach(parser IN ITEMS hours conditional)
  add_test(NAME fuzz_${parser} COMMAND ${CMAKE_CURRENT_LIST_DIR}/run ${fuzz_folder} ${parser} 30)
  set_tests_properties(fuzz_${parser} PROPERTIES FIXTURES_REQUIRED fuzzers)
endforeach()
set_tests_properties(fuzz_build fuzz_hours fuzz_conditional PROPERTIES
  LABELS fuzz SKIP_RETURN_CODE 77)
