target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/test_area_things.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_bus_lanes_on.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_door_kerb.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_doubt.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_hour_traps.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_judge.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_met.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_stopping.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_timed_things.cpp)
