target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/backwards.cpp
  ${CMAKE_CURRENT_LIST_DIR}/core_graph.cpp
  ${CMAKE_CURRENT_LIST_DIR}/costs.cpp
  ${CMAKE_CURRENT_LIST_DIR}/local_graph.cpp
  ${CMAKE_CURRENT_LIST_DIR}/slow_ways.cpp
  ${CMAKE_CURRENT_LIST_DIR}/snap.cpp
  ${CMAKE_CURRENT_LIST_DIR}/strong_parts.cpp
  ${CMAKE_CURRENT_LIST_DIR}/sweep.cpp)
