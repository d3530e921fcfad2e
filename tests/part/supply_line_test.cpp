#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/part/supply_line.hpp>

#include <cmath>

namespace {
using namespace weldloop;
using namespace weldloop::literals;

constexpr supply_use stick{process::smaw, 150_A};
constexpr supply_use wire{process::gmaw, 250_A};

TEST(SupplyLine, OfEveryKind)
{
    supply s{.kind = supply_kind::constant_voltage, .setting = 27_V};
    EXPECT_EQ(highest_output_at(s, wire), 27_V);
    s.fall = 20_mohm;
    s.limit = 300_A;
    EXPECT_DOUBLE_EQ(highest_output_at(s, wire).value(), 22.0);
    EXPECT_EQ(highest_output_at(s, {process::gmaw, 301_A}), 0_V);
    EXPECT_EQ(*output_line_of(s, wire).short_circuit(), 300_A);

    s = {.kind = supply_kind::constant_current, .highest_output = 44_V};
    EXPECT_EQ(highest_output_at(s, stick), 44_V);
    // its setting at the conventional load voltage, 20 V + 0.04 V/A x 150 A (IEC 60974-1)
    s.rise = in_si<conductance>(2.0);
    const auto current_at = [](const source_line& line, double volts) {
        return line.meeting([volts](double) { return volts; }).value().current.value();
    };
    EXPECT_NEAR(current_at(output_line_of(s, stick), 26.0), 150.0, 1e-9);
    EXPECT_NEAR(current_at(output_line_of(s, stick), 16.0), 170.0, 1e-9);
    s.current_setting = 120_A;
    EXPECT_NEAR(current_at(output_line_of(s, stick), 24.8), 120.0, 1e-9);

    s = {.kind = supply_kind::drooping};
    s.short_circuit = 200_A;
    s.no_load.peak = 80_V;
    EXPECT_DOUBLE_EQ(highest_output_at(s, stick).value(), 20.0);
    s.shape = droop_shape::by_reactance;
    EXPECT_NEAR(highest_output_at(s, stick).value(), 80.0 * std::sqrt(1.0 - 0.75 * 0.75), 1e-9);
    s.no_load = {.kind = output_current::alternating, .peak = 100_V, .rms = 72_V};  // its effective value counts
    EXPECT_NEAR(highest_output_at(s, stick).value(), 72.0 * std::sqrt(1.0 - 0.75 * 0.75), 1e-9);
    s.no_load.rms.reset();  // a peak says nothing of it
    EXPECT_THROW(static_cast<void>(output_line_of(s, stick)), missing_data_error);

    s = {.kind = supply_kind::engine_driven, .setting = 26_V};
    s.no_load.peak = 95_V;
    EXPECT_NEAR(highest_output_at(s, stick).value(), 26.0, 1e-9);
    EXPECT_NEAR(highest_output_at(s, {process::smaw, 100_A}).value(), 26.0, 1e-9);  // set to the job's current
    s.current_setting = 150_A;
    EXPECT_NEAR(highest_output_at(s, {process::smaw, 100_A}).value(), 95.0 - 69.0 * 100.0 / 150.0, 1e-9);

    s = {.kind = supply_kind::measured};
    s.points = {{0_A, 70_V}, {100_A, 40_V}, {180_A, 10_V}};
    EXPECT_DOUBLE_EQ(highest_output_at(s, {process::smaw, 100_A}).value(), 40.0);
    EXPECT_EQ(highest_output_at(s, {process::smaw, 181_A}), 0_V);
    EXPECT_EQ(voltage_without_load(s, stick), 70_V);
}

TEST(SupplyLine, FlatAndSteep)
{
    supply s{.kind = supply_kind::constant_voltage, .setting = 27_V};
    EXPECT_EQ(steepness_of(s, wire), output_steepness::flat);
    s.fall = 40_mohm;
    EXPECT_EQ(steepness_of(s, wire), output_steepness::flat);
    s.limit = 240_A;  // which it would meet is another question
    EXPECT_EQ(steepness_of(s, wire), output_steepness::flat);
    s.fall = 120_mohm;
    EXPECT_EQ(steepness_of(s, wire), output_steepness::steep);
    EXPECT_EQ(steepness_of({.kind = supply_kind::constant_current, .highest_output = 44_V}, stick),
              output_steepness::steep);
    s = {.kind = supply_kind::drooping};
    s.no_load.peak = 80_V;
    s.short_circuit = 300_A;
    EXPECT_EQ(steepness_of(s, stick), output_steepness::steep);
    s.no_load.peak = 40_V;
    s.short_circuit = 1000_A;  // 0.04 V/A: drooping by name alone
    EXPECT_EQ(steepness_of(s, stick), output_steepness::flat);
}

TEST(SupplyLine, RefusesWhatCannotBe)
{
    const auto refused = [](const supply& s) { static_cast<void>(output_line_of(s, stick)); };
    EXPECT_THROW(refused({.kind = supply_kind::constant_voltage}), out_of_range_error);
    EXPECT_THROW(refused({.kind = supply_kind::constant_current}), out_of_range_error);
    supply s{.kind = supply_kind::drooping};
    EXPECT_THROW(refused(s), missing_data_error);
    s.short_circuit = 200_A;
    EXPECT_THROW(refused(s), missing_data_error);
    EXPECT_THROW(refused({.kind = supply_kind::engine_driven, .setting = 26_V}), missing_data_error);
    EXPECT_THROW(refused({.kind = supply_kind::measured}), out_of_range_error);
    s = {.kind = supply_kind::constant_current, .highest_output = 44_V};
    s.current_setting = in_si<current>(-1.0);
    EXPECT_THROW(refused(s), out_of_range_error);
    s.current_setting = {};
    s.no_load.peak = 40_V;  // below what it holds under load
    EXPECT_THROW(refused(s), out_of_range_error);
}

}  // namespace
