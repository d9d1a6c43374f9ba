# What several rooms' tests share. Drawn towns need room mark, built ones all that read needs.
if("mark" IN_LIST rooms)
  target_sources(loopwright_test PRIVATE ${CMAKE_CURRENT_LIST_DIR}/drawn_town.cpp)
endif()
if("read" IN_LIST rooms)
  target_sources(loopwright_test PRIVATE ${CMAKE_CURRENT_LIST_DIR}/built_town.cpp)
endif()
if("read" IN_LIST rooms AND "find" IN_LIST rooms)
  target_sources(loopwright_test PRIVATE ${CMAKE_CURRENT_LIST_DIR}/honest_loop.cpp)
endif()
target_sources(loopwright_test PRIVATE ${CMAKE_CURRENT_LIST_DIR}/golden.cpp ${CMAKE_CURRENT_LIST_DIR}/random_town.cpp)
set_source_files_properties(${CMAKE_CURRENT_LIST_DIR}/golden.cpp PROPERTIES COMPILE_DEFINITIONS
  "LOOPWRIGHT_GOLDEN=\"${PROJECT_SOURCE_DIR}/tests/golden\";LOOPWRIGHT_GOLDEN_NEW=\"${PROJECT_BINARY_DIR}/golden\"")
