target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/numbers.cpp
  ${CMAKE_CURRENT_LIST_DIR}/pace.cpp)
