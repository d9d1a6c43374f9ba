target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/test_bad_area.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_bytes.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_cut_while_mapped.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_forged_area.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_forged_values.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_round_trip.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_whole_file.cpp)
