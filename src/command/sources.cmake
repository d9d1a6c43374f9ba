target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/arguments.cpp
  ${CMAKE_CURRENT_LIST_DIR}/build.cpp
  ${CMAKE_CURRENT_LIST_DIR}/card.cpp
  ${CMAKE_CURRENT_LIST_DIR}/facts.cpp
  ${CMAKE_CURRENT_LIST_DIR}/files.cpp
  ${CMAKE_CURRENT_LIST_DIR}/lanes.cpp
  ${CMAKE_CURRENT_LIST_DIR}/look.cpp
  ${CMAKE_CURRENT_LIST_DIR}/look_node.cpp
  ${CMAKE_CURRENT_LIST_DIR}/look_road.cpp
  ${CMAKE_CURRENT_LIST_DIR}/loop_summary.cpp
  ${CMAKE_CURRENT_LIST_DIR}/loops.cpp
  ${CMAKE_CURRENT_LIST_DIR}/near.cpp
  ${CMAKE_CURRENT_LIST_DIR}/print.cpp
  ${CMAKE_CURRENT_LIST_DIR}/progress_bar.cpp
  ${CMAKE_CURRENT_LIST_DIR}/proof.cpp)
