target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/evaluate.cpp
  ${CMAKE_CURRENT_LIST_DIR}/search.cpp
  ${CMAKE_CURRENT_LIST_DIR}/search_insert.cpp
  ${CMAKE_CURRENT_LIST_DIR}/search_items.cpp
  ${CMAKE_CURRENT_LIST_DIR}/search_ruin.cpp
  ${CMAKE_CURRENT_LIST_DIR}/search_tour.cpp)
