target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/test_delays.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_percentiles.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_speeds.cpp)
if("read" IN_LIST rooms)
  target_sources(loopwright_test PRIVATE ${CMAKE_CURRENT_LIST_DIR}/test_noted_humps.cpp)
endif()
