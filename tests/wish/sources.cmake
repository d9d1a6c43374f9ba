target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/test_asked.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_independent.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_lesson.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_parts.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_resolve.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_want.cpp)
