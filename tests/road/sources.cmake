target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/test_findings.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_grid.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_in_box.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_kind.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_kind_table.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_limit.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_note.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_report.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_roads.cpp)
