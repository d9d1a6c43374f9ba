target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/conditional.cpp
  ${CMAKE_CURRENT_LIST_DIR}/hours.cpp
  ${CMAKE_CURRENT_LIST_DIR}/parse.cpp
  ${CMAKE_CURRENT_LIST_DIR}/week.cpp
  ${CMAKE_CURRENT_LIST_DIR}/words.cpp
  ${CMAKE_CURRENT_LIST_DIR}/zone.cpp)
