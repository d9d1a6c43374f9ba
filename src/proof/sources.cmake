target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/answer.cpp
  ${CMAKE_CURRENT_LIST_DIR}/by_the_hour.cpp
  ${CMAKE_CURRENT_LIST_DIR}/caps.cpp
  ${CMAKE_CURRENT_LIST_DIR}/claims.cpp
  ${CMAKE_CURRENT_LIST_DIR}/drive.cpp
  ${CMAKE_CURRENT_LIST_DIR}/ends.cpp
  ${CMAKE_CURRENT_LIST_DIR}/lane_verdicts.cpp
  ${CMAKE_CURRENT_LIST_DIR}/lengths.cpp
  ${CMAKE_CURRENT_LIST_DIR}/note_reach.cpp
  ${CMAKE_CURRENT_LIST_DIR}/noted_facts.cpp
  ${CMAKE_CURRENT_LIST_DIR}/pass_claims.cpp
  ${CMAKE_CURRENT_LIST_DIR}/passes.cpp
  ${CMAKE_CURRENT_LIST_DIR}/prove.cpp
  ${CMAKE_CURRENT_LIST_DIR}/rules.cpp
  ${CMAKE_CURRENT_LIST_DIR}/times.cpp
  ${CMAKE_CURRENT_LIST_DIR}/wish.cpp)
