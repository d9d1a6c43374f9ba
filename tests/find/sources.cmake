target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/test_by_the_hour.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_certificates.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_find_loops.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_in_the_way.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_independent.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_lane_wants.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_passes.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_planned_stops.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_practised.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_proved.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_pull_ups.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_random_hours.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_stops.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_through.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_variants.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_wishes.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_ways_home.cpp)
