target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/candidates.cpp
  ${CMAKE_CURRENT_LIST_DIR}/chain.cpp
  ${CMAKE_CURRENT_LIST_DIR}/departures.cpp
  ${CMAKE_CURRENT_LIST_DIR}/legs.cpp
  ${CMAKE_CURRENT_LIST_DIR}/lesson.cpp
  ${CMAKE_CURRENT_LIST_DIR}/match.cpp
  ${CMAKE_CURRENT_LIST_DIR}/passes.cpp
  ${CMAKE_CURRENT_LIST_DIR}/plan_way.cpp
  ${CMAKE_CURRENT_LIST_DIR}/progress.cpp
  ${CMAKE_CURRENT_LIST_DIR}/read_gpx.cpp
  ${CMAKE_CURRENT_LIST_DIR}/router.cpp
  ${CMAKE_CURRENT_LIST_DIR}/telling.cpp)
