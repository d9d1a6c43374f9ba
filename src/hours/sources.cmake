target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/condition.cpp
  ${CMAKE_CURRENT_LIST_DIR}/conditional.cpp
  ${CMAKE_CURRENT_LIST_DIR}/day_match.cpp
  ${CMAKE_CURRENT_LIST_DIR}/day_times.cpp
  ${CMAKE_CURRENT_LIST_DIR}/day_words.cpp
  ${CMAKE_CURRENT_LIST_DIR}/evaluate.cpp
  ${CMAKE_CURRENT_LIST_DIR}/hours.cpp
  ${CMAKE_CURRENT_LIST_DIR}/parse.cpp
  ${CMAKE_CURRENT_LIST_DIR}/read_dates.cpp
  ${CMAKE_CURRENT_LIST_DIR}/read_days.cpp
  ${CMAKE_CURRENT_LIST_DIR}/read_times.cpp
  ${CMAKE_CURRENT_LIST_DIR}/spoken_days.cpp
  ${CMAKE_CURRENT_LIST_DIR}/spoken_time.cpp
  ${CMAKE_CURRENT_LIST_DIR}/timetable.cpp
  ${CMAKE_CURRENT_LIST_DIR}/tokens.cpp
  ${CMAKE_CURRENT_LIST_DIR}/words.cpp
  ${CMAKE_CURRENT_LIST_DIR}/zone.cpp)
