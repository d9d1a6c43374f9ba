# Made-up drives over whole maps, beside the truth: a sample here, all of it in tools/long.
add_executable(loopwright_traces
  ${CMAKE_CURRENT_LIST_DIR}/drive_traces.cpp
  ${CMAKE_CURRENT_LIST_DIR}/simulated.cpp)
target_link_libraries(loopwright_traces PRIVATE loopwright_lib test_options)
