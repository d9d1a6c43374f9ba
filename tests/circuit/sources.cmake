target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/test_evaluate.cpp
  ${CMAKE_CURRENT_LIST_DIR}/made_problems.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_bound.cpp)
