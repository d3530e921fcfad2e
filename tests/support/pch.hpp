#pragma once
// Compiled once for all test programs: what nearly every test includes. Tests still include what they use.

#include <cmath>
#include <string>
#include <vector>

#include <boost/units/pow.hpp>
#include <boost/units/quantity.hpp>
#include <boost/units/systems/si.hpp>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <weldloop/test/print.hpp>
