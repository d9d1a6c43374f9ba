target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/test_build_area.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_memory.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_pieces.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_restrictions.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_scan_map.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_turns.cpp)
