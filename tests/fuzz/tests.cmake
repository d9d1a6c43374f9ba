# Two tests of each fuzzer: what is kept in the corpus is tried by this build, whatever its compiler;
# and some seconds of it with clang and sanitizers, from the corpus on, skipped where there is no clang.
# The build with clang has the rooms that read files and maps alone: all of them would take ten minutes.
# Fuzzers that run commands are run by tools/long fuzz.
include(${CMAKE_CURRENT_LIST_DIR}/fuzzers.cmake)

foreach(name IN LISTS fuzzers)
  add_executable(replay_${name} ${CMAKE_CURRENT_LIST_DIR}/replay.cpp ${CMAKE_CURRENT_LIST_DIR}/fuzz_${name}.cpp
    ${fuzzer_sources_${name}})
  target_link_libraries(replay_${name} PRIVATE loopwright_lib test_options)
  add_test(NAME replay_${name} COMMAND replay_${name} ${CMAKE_CURRENT_LIST_DIR}/corpus/${name})
  set_tests_properties(replay_${name} PROPERTIES LABELS fuzz)
endforeach()
