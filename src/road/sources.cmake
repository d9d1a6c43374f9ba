target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/findings.cpp
  ${CMAKE_CURRENT_LIST_DIR}/in_box.cpp
  ${CMAKE_CURRENT_LIST_DIR}/kind.cpp
  ${CMAKE_CURRENT_LIST_DIR}/kind_table.cpp
  ${CMAKE_CURRENT_LIST_DIR}/limit.cpp
  ${CMAKE_CURRENT_LIST_DIR}/note.cpp
  ${CMAKE_CURRENT_LIST_DIR}/report.cpp
  ${CMAKE_CURRENT_LIST_DIR}/roads.cpp
  ${CMAKE_CURRENT_LIST_DIR}/sort.cpp
  ${CMAKE_CURRENT_LIST_DIR}/words.cpp
  # Last, so that the batches before stay what they are (LOOPWRIGHT_BATCHES).
  ${CMAKE_CURRENT_LIST_DIR}/by_id.cpp
  ${CMAKE_CURRENT_LIST_DIR}/junction_near.cpp)
