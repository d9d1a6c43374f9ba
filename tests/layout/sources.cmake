# The walls between the rooms, read from the sources themselves; built whatever rooms are.
target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/house.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_layout.cpp)
set_source_files_properties(${CMAKE_CURRENT_LIST_DIR}/test_layout.cpp PROPERTIES
  COMPILE_DEFINITIONS LOOPWRIGHT_SOURCES="${PROJECT_SOURCE_DIR}")
