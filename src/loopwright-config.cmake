# find_package(loopwright) gives the target loopwright::loopwright, a static library. What it is linked with comes from
# the packages that libloopwright-dev names.
include(CMakeFindDependencyMacro)
find_dependency(Threads)
find_dependency(ZLIB)
find_dependency(BZip2)
find_dependency(EXPAT)
find_dependency(OpenSSL)
find_dependency(SQLite3)
find_dependency(SQLiteCpp)
find_dependency(CLI11)
find_dependency(nlohmann_json)
find_dependency(date)
include(${CMAKE_CURRENT_LIST_DIR}/loopwright-targets.cmake)
