# The towns are built by room read.
if("read" IN_LIST rooms)
  target_sources(loopwright_test PRIVATE
    ${CMAKE_CURRENT_LIST_DIR}/true_answer.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_answer.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_by_the_hour.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_drive.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_honest.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_independent.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_keep_off.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_lesson.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_notes.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_passes.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_rules.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_times.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_wish.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_wish_limits.cpp)
endif()
