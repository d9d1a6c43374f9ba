target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/raw_map.cpp
  ${CMAKE_CURRENT_LIST_DIR}/draft.cpp
  ${CMAKE_CURRENT_LIST_DIR}/hardness.cpp
  ${CMAKE_CURRENT_LIST_DIR}/access.cpp
  ${CMAKE_CURRENT_LIST_DIR}/access_tree.cpp
  ${CMAKE_CURRENT_LIST_DIR}/barriers.cpp
  ${CMAKE_CURRENT_LIST_DIR}/one_way.cpp
  ${CMAKE_CURRENT_LIST_DIR}/ordinary_car.cpp
  ${CMAKE_CURRENT_LIST_DIR}/parking.cpp
  ${CMAKE_CURRENT_LIST_DIR}/widths.cpp
  ${CMAKE_CURRENT_LIST_DIR}/node_kinds.cpp)
