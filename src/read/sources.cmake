target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/adjacency.cpp
  ${CMAKE_CURRENT_LIST_DIR}/assemble.cpp
  ${CMAKE_CURRENT_LIST_DIR}/build_area.cpp
  ${CMAKE_CURRENT_LIST_DIR}/components.cpp
  ${CMAKE_CURRENT_LIST_DIR}/cut_off.cpp
  ${CMAKE_CURRENT_LIST_DIR}/restriction_tags.cpp
  ${CMAKE_CURRENT_LIST_DIR}/scan_map.cpp
  ${CMAKE_CURRENT_LIST_DIR}/select_roads.cpp
  ${CMAKE_CURRENT_LIST_DIR}/split_roads.cpp
  ${CMAKE_CURRENT_LIST_DIR}/turn_rules.cpp
  ${CMAKE_CURRENT_LIST_DIR}/turn_table.cpp
  ${CMAKE_CURRENT_LIST_DIR}/via_memory.cpp
  ${CMAKE_CURRENT_LIST_DIR}/via_walks.cpp)
