// Readers of station files and writers of reports, compiled once for a program of several units.
#include <weldloop/io/bodies.hpp>
