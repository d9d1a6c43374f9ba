target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/crossings.cpp
  ${CMAKE_CURRENT_LIST_DIR}/database.cpp
  ${CMAKE_CURRENT_LIST_DIR}/finder.cpp
  ${CMAKE_CURRENT_LIST_DIR}/houses.cpp
  ${CMAKE_CURRENT_LIST_DIR}/letters.cpp
  ${CMAKE_CURRENT_LIST_DIR}/lookup_crossings.cpp
  ${CMAKE_CURRENT_LIST_DIR}/lookup_names.cpp
  ${CMAKE_CURRENT_LIST_DIR}/lookup_streets.cpp
  ${CMAKE_CURRENT_LIST_DIR}/make_index.cpp
  ${CMAKE_CURRENT_LIST_DIR}/names.cpp
  ${CMAKE_CURRENT_LIST_DIR}/narrow.cpp
  ${CMAKE_CURRENT_LIST_DIR}/packed_rows.cpp
  ${CMAKE_CURRENT_LIST_DIR}/spelling.cpp
  ${CMAKE_CURRENT_LIST_DIR}/streets.cpp
  ${CMAKE_CURRENT_LIST_DIR}/typed.cpp)
