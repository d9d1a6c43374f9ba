target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/raw_map.cpp
  ${CMAKE_CURRENT_LIST_DIR}/draft.cpp
  ${CMAKE_CURRENT_LIST_DIR}/hardness.cpp
  ${CMAKE_CURRENT_LIST_DIR}/node_kinds.cpp)
