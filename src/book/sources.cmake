target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/book.cpp
  ${CMAKE_CURRENT_LIST_DIR}/connection.cpp
  ${CMAKE_CURRENT_LIST_DIR}/fill_log.cpp
  ${CMAKE_CURRENT_LIST_DIR}/lesson.cpp
  ${CMAKE_CURRENT_LIST_DIR}/marking.cpp
  ${CMAKE_CURRENT_LIST_DIR}/migrations.cpp
  ${CMAKE_CURRENT_LIST_DIR}/progress.cpp
  ${CMAKE_CURRENT_LIST_DIR}/pupil.cpp
  ${CMAKE_CURRENT_LIST_DIR}/pupils.cpp
  ${CMAKE_CURRENT_LIST_DIR}/read_lessons.cpp
  ${CMAKE_CURRENT_LIST_DIR}/read_log.cpp
  ${CMAKE_CURRENT_LIST_DIR}/rights.cpp
  ${CMAKE_CURRENT_LIST_DIR}/rows.cpp
  ${CMAKE_CURRENT_LIST_DIR}/scheme.cpp
  ${CMAKE_CURRENT_LIST_DIR}/streets.cpp
  ${CMAKE_CURRENT_LIST_DIR}/words_of_clause.cpp
  ${CMAKE_CURRENT_LIST_DIR}/write_lessons.cpp)
