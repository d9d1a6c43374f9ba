target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/evaluate.cpp
  ${CMAKE_CURRENT_LIST_DIR}/least_time.cpp
  ${CMAKE_CURRENT_LIST_DIR}/least_time_labels.cpp
  ${CMAKE_CURRENT_LIST_DIR}/least_time_needs.cpp
  ${CMAKE_CURRENT_LIST_DIR}/search.cpp
  ${CMAKE_CURRENT_LIST_DIR}/search_insert.cpp
  ${CMAKE_CURRENT_LIST_DIR}/search_items.cpp
  ${CMAKE_CURRENT_LIST_DIR}/search_ruin.cpp
  ${CMAKE_CURRENT_LIST_DIR}/search_tour.cpp
  ${CMAKE_CURRENT_LIST_DIR}/bound.cpp
  ${CMAKE_CURRENT_LIST_DIR}/bound_branch.cpp
  ${CMAKE_CURRENT_LIST_DIR}/bound_cluster_nodes.cpp
  ${CMAKE_CURRENT_LIST_DIR}/bound_clusters.cpp
  ${CMAKE_CURRENT_LIST_DIR}/bound_cuts.cpp
  ${CMAKE_CURRENT_LIST_DIR}/bound_flow.cpp
  ${CMAKE_CURRENT_LIST_DIR}/bound_formulation.cpp
  ${CMAKE_CURRENT_LIST_DIR}/bound_inflow.cpp
  ${CMAKE_CURRENT_LIST_DIR}/bound_network.cpp
  ${CMAKE_CURRENT_LIST_DIR}/bound_programme.cpp
  ${CMAKE_CURRENT_LIST_DIR}/bound_shrink.cpp
  ${CMAKE_CURRENT_LIST_DIR}/bound_times.cpp
  ${CMAKE_CURRENT_LIST_DIR}/bound_tree.cpp
  ${CMAKE_CURRENT_LIST_DIR}/bound_walk.cpp)

# Rows are counted in int, as the simplex library does; clang's -Wconversion, unlike gcc's, also means
# their use as an index.
set_source_files_properties(
  ${CMAKE_CURRENT_LIST_DIR}/bound_branch.cpp ${CMAKE_CURRENT_LIST_DIR}/bound_cuts.cpp
  ${CMAKE_CURRENT_LIST_DIR}/bound_formulation.cpp ${CMAKE_CURRENT_LIST_DIR}/bound_programme.cpp
  ${CMAKE_CURRENT_LIST_DIR}/bound_tree.cpp PROPERTIES COMPILE_OPTIONS -Wno-sign-conversion)
