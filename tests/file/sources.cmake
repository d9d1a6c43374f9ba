target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/test_geojson.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_read_answer.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_report.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_write_answer.cpp)
