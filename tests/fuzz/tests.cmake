# What is kept in each fuzzer's corpus is tried by this build, whatever its compiler. Fuzzers of room
# hours also run a quarter of a minute with clang and sanitizers, from the corpus on, and so do the unit tests of
# rooms base and hours; skipped where there is no clang. The others would need all rooms built with clang, half an
# hour: tools/long fuzz, tools/long sanitized.
include(${CMAKE_CURRENT_LIST_DIR}/fuzzers.cmake)

foreach(name IN LISTS fuzzers)
  add_executable(replay_${name} ${CMAKE_CURRENT_LIST_DIR}/replay.cpp ${CMAKE_CURRENT_LIST_DIR}/fuzz_${name}.cpp
    ${fuzzer_sources_${name}})
  target_link_libraries(replay_${name} PRIVATE loopwright_lib test_options)
  add_test(NAME replay_${name} COMMAND replay_${name} ${CMAKE_CURRENT_LIST_DIR}/corpus/${name})
  set_tests_properties(replay_${name} PROPERTIES LABELS fuzz)
endforeach()

if(NOT "hours" IN_LIST rooms)
  return()
endif()

set(fuzz_folder ${PROJECT_BINARY_DIR}/fuzz-hours)
add_test(NAME fuzz_build COMMAND ${CMAKE_CURRENT_LIST_DIR}/build ${fuzz_folder} hours fuzzers loopwright_test)
set_tests_properties(fuzz_build PROPERTIES FIXTURES_SETUP fuzzers)
foreach(name IN ITEMS hours conditional terms)
  add_test(NAME fuzz_${name} COMMAND ${CMAKE_CURRENT_LIST_DIR}/run ${fuzz_folder} ${name} 15)
  set_tests_properties(fuzz_${name} PROPERTIES FIXTURES_REQUIRED fuzzers)
endforeach()
add_test(NAME sanitized_unit COMMAND ${CMAKE_CURRENT_LIST_DIR}/sanitized ${fuzz_folder})
set_tests_properties(sanitized_unit PROPERTIES FIXTURES_REQUIRED fuzzers)
set_tests_properties(fuzz_build fuzz_hours fuzz_conditional fuzz_terms sanitized_unit PROPERTIES
  LABELS fuzz SKIP_RETURN_CODE 77)
