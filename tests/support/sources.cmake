# What several rooms' tests share. Drawn towns need room mark, built ones all that read needs.
if("mark" IN_LIST rooms)
  target_sources(loopwright_test PRIVATE ${CMAKE_CURRENT_LIST_DIR}/drawn_town.cpp)
endif()
if("read" IN_LIST rooms)
  target_sources(loopwright_test PRIVATE ${CMAKE_CURRENT_LIST_DIR}/built_town.cpp)
endif()
