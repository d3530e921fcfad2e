// Thermal life at the hot end of a lead in its loop.
#include <weldloop/core/literals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/rating/assess.hpp>
#include <weldloop/rating/covering_life.hpp>

#include <algorithm>
#include <array>
#include <string>

#include "support/near.hpp"

namespace {
using namespace weldloop;

station stand(strand_loss in_the_crimp)
{
    station s{.name = "frame stand",
              .job = {.process = process::smaw, .current = 200_A, .duty = duty_cycle::of(6_min, 10_min)},
              .where = {.air = 25_degC}};
    lug end = crimped_lug("clamp lug", square_mm(50));
    end.missing_strands = in_the_crimp;
    s.path = {welding_cable(square_mm(50), 10_m).named("electrode lead"),
              electrode_holder("holder", 400_A),
              arc{},
              work_connection{.clamp = screw_clamp(400_A), .onto = mild_steel, .name = "clamp"},
              end,
              welding_cable(square_mm(50), 10_m).named("work lead")};
    return s;
}

const part_result& part(const assessment& a, const std::string& name)
{
    return *std::find_if(a.parts.begin(), a.parts.end(), [&](const part_result& p) { return p.name == name; });
}

TEST(CoveringLife, ABadCrimpAgesTheEndOfItsLead)
{
    const station good = stand(0.0), bad = stand(0.7);
    const assessment of_good = assess(good), of_bad = assess(bad);
    const covering_age sound = covering_life_of(part(of_good, "work lead"), good, 8_h),
                       hot = covering_life_of(part(of_bad, "work lead"), bad, 8_h);
    EXPECT_GT(sound.poor, sound.typical);
    EXPECT_GT(sound.typical, sound.good);
    EXPECT_GT(hot.typical, 1.05 * sound.typical);
    EXPECT_GT(hot.poor / hot.good, sound.poor / sound.good) << "a bad crimp scatters more";
}

// Far from hot ends the station's lead has the age of the lead by itself: its peak is that of heating_of().
TEST(CoveringLife, AgreesWithTheLeadAlone)
{
    const station s = stand(0.0);
    const assessment a = assess(s);
    const cable& lead = std::get<cable>(s.path[0]);
    const std::array day{shift{.work = {.current = 200_A, .duty = s.job.duty}, .time = 8_h, .where = s.where}};
    const covering_age alone = covering_life_of(lead, day),
                       in_loop = covering_life_of(part(a, "electrode lead"), s, 8_h);
    EXPECT_GE(in_loop.hottest, alone.hottest - in_si<temperature_difference>(1.0));
    EXPECT_LT(in_loop.poor / alone.poor, 30.0);
    EXPECT_GE(in_loop.poor, 0.9 * alone.poor);
}

TEST(CoveringLife, RefusesWhatHasNoLead)
{
    const station s = stand(0.0);
    const assessment a = assess(s);
    EXPECT_THROW((void)covering_life_of(part(a, "holder"), s, 8_h), missing_data_error);
    station melted = s;
    melted.job.current = 5000_A;
    const assessment none = assess(melted);
    ASSERT_FALSE(none.conducts);
    EXPECT_THROW((void)covering_life_of(part(none, "work lead"), melted, 8_h), missing_data_error);
}

}  // namespace
