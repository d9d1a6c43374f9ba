target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/asked.cpp
  ${CMAKE_CURRENT_LIST_DIR}/independent.cpp
  ${CMAKE_CURRENT_LIST_DIR}/learners_drive.cpp
  ${CMAKE_CURRENT_LIST_DIR}/parts.cpp
  ${CMAKE_CURRENT_LIST_DIR}/resolve.cpp
  ${CMAKE_CURRENT_LIST_DIR}/turn_round.cpp
  ${CMAKE_CURRENT_LIST_DIR}/variant.cpp
  ${CMAKE_CURRENT_LIST_DIR}/want.cpp)
