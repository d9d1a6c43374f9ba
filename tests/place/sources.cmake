target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/test_spelling.cpp)

# What is found in a whole drawn town.
if("read" IN_LIST rooms)
  target_sources(loopwright_test PRIVATE
    ${CMAKE_CURRENT_LIST_DIR}/test_find.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_index.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_several.cpp)
endif()
