target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/test_at_home.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_book.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_drive.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_lesson_times.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_lessons.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_log_words.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_marking.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_met.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_mock_test.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_pace_learned.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_progress.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_proposal.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_rights.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_scheme.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_seen.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_stepped_in.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_traced.cpp)
