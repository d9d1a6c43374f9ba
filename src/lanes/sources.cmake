target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/area_things.cpp
  ${CMAKE_CURRENT_LIST_DIR}/breaches.cpp
  ${CMAKE_CURRENT_LIST_DIR}/bus_lanes_on.cpp
  ${CMAKE_CURRENT_LIST_DIR}/door_kerb.cpp
  ${CMAKE_CURRENT_LIST_DIR}/doubt.cpp
  ${CMAKE_CURRENT_LIST_DIR}/judge.cpp
  ${CMAKE_CURRENT_LIST_DIR}/lane_verdicts.cpp
  ${CMAKE_CURRENT_LIST_DIR}/met.cpp
  ${CMAKE_CURRENT_LIST_DIR}/passage.cpp
  ${CMAKE_CURRENT_LIST_DIR}/pull_up.cpp
  ${CMAKE_CURRENT_LIST_DIR}/stopping.cpp
  ${CMAKE_CURRENT_LIST_DIR}/thing.cpp
  ${CMAKE_CURRENT_LIST_DIR}/thing_verdict.cpp
  ${CMAKE_CURRENT_LIST_DIR}/timed_things.cpp
  ${CMAKE_CURRENT_LIST_DIR}/turns_met.cpp
  ${CMAKE_CURRENT_LIST_DIR}/words.cpp)
