target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/hex.cpp
  ${CMAKE_CURRENT_LIST_DIR}/in_parts.cpp
  ${CMAKE_CURRENT_LIST_DIR}/instant.cpp
  ${CMAKE_CURRENT_LIST_DIR}/memory.cpp
  ${CMAKE_CURRENT_LIST_DIR}/nesting.cpp
  ${CMAKE_CURRENT_LIST_DIR}/plain_words.cpp
  ${CMAKE_CURRENT_LIST_DIR}/point.cpp
  ${CMAKE_CURRENT_LIST_DIR}/printable.cpp
  ${CMAKE_CURRENT_LIST_DIR}/region.cpp
  ${CMAKE_CURRENT_LIST_DIR}/table.cpp
  ${CMAKE_CURRENT_LIST_DIR}/text.cpp)
