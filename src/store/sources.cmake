target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/digest.cpp
  ${CMAKE_CURRENT_LIST_DIR}/info.cpp
  ${CMAKE_CURRENT_LIST_DIR}/leftovers.cpp
  ${CMAKE_CURRENT_LIST_DIR}/mapping.cpp
  ${CMAKE_CURRENT_LIST_DIR}/open_area.cpp
  ${CMAKE_CURRENT_LIST_DIR}/structure.cpp
  ${CMAKE_CURRENT_LIST_DIR}/values.cpp
  ${CMAKE_CURRENT_LIST_DIR}/watched.cpp
  ${CMAKE_CURRENT_LIST_DIR}/whole_file.cpp
  ${CMAKE_CURRENT_LIST_DIR}/write_area.cpp)
