#include <gtest/gtest.h>

#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>

#include <limits>

namespace {
using namespace weldloop;

station small()
{
    station s{.name = "bench", .job = {.process = process::smaw, .current = 150_A, .duty = duty_cycle::of(0.3)}};
    s.path = {welding_cable(awg(2), 10_m), arc{}, crimped_lug("", awg(2)),
              welding_cable(awg(2), 10_m).named("work lead")};
    return s;
}

TEST(Station, CallsPartsWithoutANameByKindAndPlace)
{
    const station s = small();
    EXPECT_EQ(name_of(s.path, 0), "cable 1");
    EXPECT_EQ(name_of(s.path, 2), "lug 3");
    EXPECT_EQ(name_of(s.path, 3), "work lead");
    EXPECT_EQ(index_of(s.path, "lug 3"), 2U);
    EXPECT_THROW(static_cast<void>(name_of(s.path, 4)), out_of_range_error);
    try {
        static_cast<void>(index_of(s.path, "lug 4"));
        FAIL() << "no part has that name";
    } catch (const bad_station_error& e) {
        EXPECT_NE(e.allowed().find("work lead"), std::string::npos);
    }
}

TEST(Station, FindsItsArc)
{
    EXPECT_EQ(checked_arc_index(small()), 1U);
}

TEST(Station, RefusesAPathThatIsNone)
{
    station none = small();
    none.path.erase(none.path.begin() + 1);
    EXPECT_THROW(static_cast<void>(checked_arc_index(none)), bad_station_error);
    station two = small();
    two.path.emplace_back(arc{"second"});
    EXPECT_THROW(static_cast<void>(checked_arc_index(two)), bad_station_error);
    station at_end = small();
    at_end.path = {welding_cable(awg(2), 10_m), arc{}};
    EXPECT_THROW(static_cast<void>(checked_arc_index(at_end)), bad_station_error);
    EXPECT_THROW(static_cast<void>(checked_arc_index(station{})), weldloop::error);
    station same = small();
    std::get<cable>(same.path[0]).name = "work lead";
    EXPECT_THROW(static_cast<void>(checked_arc_index(same)), bad_station_error);
}

TEST(Station, RefusesImpossibleSettings)
{
    station s = small();
    s.job.current = in_si<current>(std::numeric_limits<double>::quiet_NaN());
    EXPECT_THROW(static_cast<void>(checked_arc_index(s)), not_finite_error);
    s = small();
    s.job.current = -10_A;
    EXPECT_THROW(static_cast<void>(checked_arc_index(s)), out_of_range_error);
    s = small();
    s.supply = supply{.kind = supply_kind::constant_voltage};
    EXPECT_THROW(static_cast<void>(checked_arc_index(s)), out_of_range_error);
    s = small();
    s.allowed_drop = 0_V;
    EXPECT_THROW(static_cast<void>(checked_arc_index(s)), out_of_range_error);
}

}  // namespace
