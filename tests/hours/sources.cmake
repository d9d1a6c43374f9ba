target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/test_any_text.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_conditional.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_days.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_intervals.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_read_hours.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_setting.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_sun.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_terms.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_times.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_timetable.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_unknown.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_words.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_zone.cpp)

add_executable(no_allocation ${CMAKE_CURRENT_LIST_DIR}/no_allocation.cpp)
target_link_libraries(no_allocation PRIVATE loopwright_lib loopwright_options)
add_test(NAME no_allocation COMMAND no_allocation)
set_tests_properties(no_allocation PROPERTIES LABELS unit)

add_executable(hours_told_and_meant ${CMAKE_CURRENT_LIST_DIR}/told_and_meant.cpp)
target_link_libraries(hours_told_and_meant PRIVATE loopwright_lib loopwright_options)
