target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/test_conditional.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_intervals.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_read_hours.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_setting.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_terms.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_zone.cpp)
