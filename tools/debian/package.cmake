# Three Debian packages by CPack: loopwright (the program), loopwright-heights (the reader of elevation grids, apart
# since GDAL brings a hundred packages) and libloopwright-dev. tools/package builds and tries them.
set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_VERSION ${PROJECT_VERSION})
set(CPACK_PACKAGE_CONTACT "Loopwright maintainers <maintainers@loopwright.example>")
set(CPACK_PACKAGE_DIRECTORY ${PROJECT_BINARY_DIR}/packages)
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)
set(CPACK_COMPONENTS_ALL program heights development)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION ON)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)

set(CPACK_DEBIAN_PROGRAM_PACKAGE_NAME loopwright)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SECTION science)
# Time zones and letters are looked up where these put them; dpkg-shlibdeps finds the rest.
set(CPACK_DEBIAN_PROGRAM_PACKAGE_DEPENDS "tzdata, fonts-lato")
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SUGGESTS "loopwright-heights")
set(CPACK_COMPONENT_PROGRAM_DESCRIPTION "lesson drives for driving instructors, planned on an open map
Plans drives from the pupil's door and back within the hour, with the practice
asked for on the way, on roads where a learner may drive. Writes route cards,
tells which bus lanes may be used at the minute, finds the nearest place to
practise something, and keeps the pupils' records. Works offline, from an
OpenStreetMap extract; an invented county to try it on comes with it.")

set(CPACK_DEBIAN_HEIGHTS_PACKAGE_NAME loopwright-heights)
set(CPACK_DEBIAN_HEIGHTS_PACKAGE_SECTION science)
set(CPACK_DEBIAN_HEIGHTS_PACKAGE_DEPENDS "loopwright (= ${PROJECT_VERSION})")
set(CPACK_COMPONENT_HEIGHTS_DESCRIPTION "lesson drives for driving instructors: reader of elevation grids
The part of Loopwright that reads gradients out of elevation grids (.hgt,
GeoTIFF) when an area is made.")

# A static library: whoever links it needs what it was linked with, where CMake looks for that.
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_NAME libloopwright-dev)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_SECTION libdevel)
string(JOIN ", " CPACK_DEBIAN_DEVELOPMENT_PACKAGE_DEPENDS zlib1g-dev libbz2-dev liblz4-dev libexpat1-dev libcli11-dev
  nlohmann-json3-dev libhowardhinnant-date-dev libxxhash-dev libssl-dev libsqlite3-dev libsqlitecpp-dev libpq-dev
  libnova-dev coinor-libclp-dev libpango1.0-dev libical-dev)
set(CPACK_COMPONENT_DEVELOPMENT_DESCRIPTION "lesson drives for driving instructors: library and headers
What Loopwright's program is made of, for programs of your own, with three
examples. A static library without a promise that it stays as it is.")

# What Debian wants beside the files: /usr/share/doc of each package.
find_program(GZIP gzip REQUIRED)
set(packed_changes ${PROJECT_BINARY_DIR}/changelog.gz)
add_custom_command(OUTPUT ${packed_changes}
  COMMAND ${GZIP} -9nc ${CMAKE_CURRENT_LIST_DIR}/changelog > ${packed_changes}
  DEPENDS ${CMAKE_CURRENT_LIST_DIR}/changelog VERBATIM)
add_custom_target(changes ALL DEPENDS ${packed_changes})
foreach(part program heights development)
  string(TOUPPER ${part} upper)
  set(folder ${CMAKE_INSTALL_DATADIR}/doc/${CPACK_DEBIAN_${upper}_PACKAGE_NAME})
  install(FILES ${CMAKE_CURRENT_LIST_DIR}/copyright ${packed_changes} DESTINATION ${folder} COMPONENT ${part})
endforeach()
include(CPack)
