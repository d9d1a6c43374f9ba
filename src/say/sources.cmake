target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/approach.cpp
  ${CMAKE_CURRENT_LIST_DIR}/briefing.cpp
  ${CMAKE_CURRENT_LIST_DIR}/crossing_words.cpp
  ${CMAKE_CURRENT_LIST_DIR}/distance.cpp
  ${CMAKE_CURRENT_LIST_DIR}/drive.cpp
  ${CMAKE_CURRENT_LIST_DIR}/exits.cpp
  ${CMAKE_CURRENT_LIST_DIR}/junction.cpp
  ${CMAKE_CURRENT_LIST_DIR}/landmark.cpp
  ${CMAKE_CURRENT_LIST_DIR}/lane.cpp
  ${CMAKE_CURRENT_LIST_DIR}/layout.cpp
  ${CMAKE_CURRENT_LIST_DIR}/moments.cpp
  ${CMAKE_CURRENT_LIST_DIR}/phrasing.cpp
  ${CMAKE_CURRENT_LIST_DIR}/phrasing_rings.cpp
  ${CMAKE_CURRENT_LIST_DIR}/say.cpp
  ${CMAKE_CURRENT_LIST_DIR}/signed_to.cpp
  ${CMAKE_CURRENT_LIST_DIR}/words.cpp)
