target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/bans.cpp
  ${CMAKE_CURRENT_LIST_DIR}/builder.cpp
  ${CMAKE_CURRENT_LIST_DIR}/caps.cpp
  ${CMAKE_CURRENT_LIST_DIR}/describe.cpp
  ${CMAKE_CURRENT_LIST_DIR}/fill.cpp
  ${CMAKE_CURRENT_LIST_DIR}/find_loops.cpp
  ${CMAKE_CURRENT_LIST_DIR}/hunt.cpp
  ${CMAKE_CURRENT_LIST_DIR}/insert.cpp
  ${CMAKE_CURRENT_LIST_DIR}/near.cpp
  ${CMAKE_CURRENT_LIST_DIR}/passes.cpp
  ${CMAKE_CURRENT_LIST_DIR}/plan.cpp
  ${CMAKE_CURRENT_LIST_DIR}/quiet.cpp
  ${CMAKE_CURRENT_LIST_DIR}/reached_chances.cpp
  ${CMAKE_CURRENT_LIST_DIR}/shortfall.cpp
  ${CMAKE_CURRENT_LIST_DIR}/stops.cpp
  ${CMAKE_CURRENT_LIST_DIR}/through.cpp
  ${CMAKE_CURRENT_LIST_DIR}/times.cpp)
