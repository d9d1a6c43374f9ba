target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/test_hex.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_in_parts.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_instant.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_nesting.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_point.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_printable.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_region.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_table.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_text.cpp)
