target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/child.cpp
  ${CMAKE_CURRENT_LIST_DIR}/gate.cpp
  ${CMAKE_CURRENT_LIST_DIR}/jobs.cpp
  ${CMAKE_CURRENT_LIST_DIR}/listener.cpp
  ${CMAKE_CURRENT_LIST_DIR}/page.cpp
  ${CMAKE_CURRENT_LIST_DIR}/pupils.cpp
  ${CMAKE_CURRENT_LIST_DIR}/replies.cpp
  ${CMAKE_CURRENT_LIST_DIR}/request.cpp
  ${CMAKE_CURRENT_LIST_DIR}/routes.cpp
  ${CMAKE_CURRENT_LIST_DIR}/scratch.cpp
  ${CMAKE_CURRENT_LIST_DIR}/tile_grid.cpp
  ${CMAKE_CURRENT_LIST_DIR}/tile_roads.cpp
  ${CMAKE_CURRENT_LIST_DIR}/tile_writer.cpp
  ${CMAKE_CURRENT_LIST_DIR}/tiles.cpp
  ${CMAKE_CURRENT_LIST_DIR}/said_words.cpp)
include(${CMAKE_CURRENT_LIST_DIR}/web.cmake)
