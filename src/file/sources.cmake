target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/contradictions.cpp
  ${CMAKE_CURRENT_LIST_DIR}/cursor.cpp
  ${CMAKE_CURRENT_LIST_DIR}/geojson.cpp
  ${CMAKE_CURRENT_LIST_DIR}/load_answer.cpp
  ${CMAKE_CURRENT_LIST_DIR}/load_text.cpp
  ${CMAKE_CURRENT_LIST_DIR}/notes_file.cpp
  ${CMAKE_CURRENT_LIST_DIR}/read_answer.cpp
  ${CMAKE_CURRENT_LIST_DIR}/read_note.cpp
  ${CMAKE_CURRENT_LIST_DIR}/read_values.cpp
  ${CMAKE_CURRENT_LIST_DIR}/read_wish.cpp
  ${CMAKE_CURRENT_LIST_DIR}/sha256.cpp
  ${CMAKE_CURRENT_LIST_DIR}/words.cpp
  ${CMAKE_CURRENT_LIST_DIR}/write_answer.cpp
  ${CMAKE_CURRENT_LIST_DIR}/write_note.cpp
  ${CMAKE_CURRENT_LIST_DIR}/write_report.cpp
  ${CMAKE_CURRENT_LIST_DIR}/write_wish.cpp)
