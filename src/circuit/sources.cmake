target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/evaluate.cpp)
