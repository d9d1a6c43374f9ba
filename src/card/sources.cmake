target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/area_report.cpp
  ${CMAKE_CURRENT_LIST_DIR}/document.cpp
  ${CMAKE_CURRENT_LIST_DIR}/drive_line.cpp
  ${CMAKE_CURRENT_LIST_DIR}/geojson.cpp
  ${CMAKE_CURRENT_LIST_DIR}/gpx.cpp
  ${CMAKE_CURRENT_LIST_DIR}/independent.cpp
  ${CMAKE_CURRENT_LIST_DIR}/lesson.cpp
  ${CMAKE_CURRENT_LIST_DIR}/sections.cpp
  ${CMAKE_CURRENT_LIST_DIR}/sheet.cpp
  ${CMAKE_CURRENT_LIST_DIR}/speech.cpp
  ${CMAKE_CURRENT_LIST_DIR}/stops.cpp
  ${CMAKE_CURRENT_LIST_DIR}/text.cpp
  ${CMAKE_CURRENT_LIST_DIR}/timed.cpp
  ${CMAKE_CURRENT_LIST_DIR}/xml.cpp)
