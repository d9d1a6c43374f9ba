target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/test_access.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_barriers.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_bus_lanes.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_draft.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_dual_carriageways.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_limit_changes.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_movement.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_node_kinds.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_one_way.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_ordinary_car.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_piece_facts.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_raw_map.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_runs.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_speed_limits.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_widths.cpp)

# What is found on a whole drawn town.
if("read" IN_LIST rooms)
  target_sources(loopwright_test PRIVATE
    ${CMAKE_CURRENT_LIST_DIR}/chance_texts.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_controls.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_crossings.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_junctions.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_level_crossings.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_limits_among_streets.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_minis.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_roundabout_arms.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_roundabouts.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_signals.cpp)
endif()
