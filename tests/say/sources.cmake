target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/blind_driver.cpp
  ${CMAKE_CURRENT_LIST_DIR}/eyes.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_any_drive.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_blind_driver.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_briefing.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_directions.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_distance.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_places.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_words.cpp)
set_source_files_properties(${CMAKE_CURRENT_LIST_DIR}/test_blind_driver.cpp PROPERTIES
  COMPILE_DEFINITIONS LOOPWRIGHT_ROOT="${PROJECT_SOURCE_DIR}")
add_test(NAME say-real COMMAND loopwright_test "[say][real]")
set_tests_properties(say-real PROPERTIES LABELS real)
