target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/test_any_town.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_core_graph.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_slow_ways.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_snap.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_sweep.cpp)
