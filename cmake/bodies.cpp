// The answers to the questions that take a network of the whole circuit, compiled once for a program of several units.
#include <weldloop/bodies.hpp>
