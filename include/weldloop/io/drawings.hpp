#pragma once
/// @file
/// All drawings of the report.

#include <weldloop/io/budget_drawing.hpp>
#include <weldloop/io/drawing_style.hpp>
#include <weldloop/io/duty_drawing.hpp>
#include <weldloop/io/grip_drawing.hpp>
#include <weldloop/io/grip_map_drawing.hpp>
#include <weldloop/io/loop_drawing.hpp>
#include <weldloop/io/peak_drawing.hpp>
#include <weldloop/io/station_grip_map.hpp>
