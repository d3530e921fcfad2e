#pragma once
/// @file
/// All drawings of the report.

#include <weldloop/io/draw/budget_drawing.hpp>
#include <weldloop/io/draw/drawing_style.hpp>
#include <weldloop/io/draw/duty_drawing.hpp>
#include <weldloop/io/draw/grip_drawing.hpp>
#include <weldloop/io/draw/grip_map_drawing.hpp>
#include <weldloop/io/draw/loop_column.hpp>
#include <weldloop/io/draw/loop_drawing.hpp>
#include <weldloop/io/draw/peak_drawing.hpp>
#include <weldloop/io/draw/station_grip_map.hpp>
#include <weldloop/io/draw/way_drawing.hpp>
