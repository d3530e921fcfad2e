# MPI for the sweep of examples/plant: target PkgConfig::mpi and WELDLOOP_MPIEXEC, both only where its headers are there too.
# By pkg-config: FindMPI ends the configuration where the programs are installed and the headers are not.
find_package(PkgConfig QUIET)
if(PkgConfig_FOUND)
    pkg_search_module(mpi QUIET IMPORTED_TARGET ompi-c ompi mpich)
endif()
find_program(WELDLOOP_MPIEXEC NAMES mpirun mpiexec DOC "Runs programs of several processes")
mark_as_advanced(WELDLOOP_MPIEXEC)
