# A course of lessons by proposals alone, planned on the county's map: three pupils and a few lessons here, the whole by
# tools/long course. It uses what the commands are made of, so it needs the inside of the library.
add_executable(loopwright_course
  ${CMAKE_CURRENT_LIST_DIR}/course.cpp
  ${CMAKE_CURRENT_LIST_DIR}/learner.cpp
  ${CMAKE_CURRENT_LIST_DIR}/lesson_checks.cpp
  ${CMAKE_CURRENT_LIST_DIR}/pupils.cpp
  ${CMAKE_CURRENT_LIST_DIR}/streets.cpp
  ${CMAKE_CURRENT_LIST_DIR}/tally.cpp)
target_include_directories(loopwright_course PRIVATE ${PROJECT_SOURCE_DIR}/src)
target_link_libraries(loopwright_course PRIVATE loopwright_lib test_options)
add_test(NAME course COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_course $<TARGET_FILE:loopwright>
  $<TARGET_FILE:loopwright_course> 3 12 --quick)
set_tests_properties(course PROPERTIES LABELS slow COST 60)

# The checks themselves.
target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/lesson_checks.cpp
  ${CMAKE_CURRENT_LIST_DIR}/streets.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_checks.cpp)
set_source_files_properties(
  ${CMAKE_CURRENT_LIST_DIR}/lesson_checks.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_checks.cpp PROPERTIES
  INCLUDE_DIRECTORIES ${PROJECT_SOURCE_DIR}/src)
