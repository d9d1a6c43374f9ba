target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/test_any_drive.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_directions.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_distance.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_places.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_words.cpp)
