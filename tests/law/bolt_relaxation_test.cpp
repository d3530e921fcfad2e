#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/bolt_relaxation.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"

namespace {
using namespace weldloop;
}

// judgement, said so by its source: what the words of the source say, and that force only falls
TEST(BoltRelaxation, SaysWhatItsSourceSays)
{
    EXPECT_EQ(bolt_relaxation_judgement.kind, source_kind::judgement);
    EXPECT_EQ(bolt_force_left(0_s), exactly(1.0));
    EXPECT_NEAR_REL(bolt_force_left(1_h).typical, 1.0 - 0.10 - 0.02 * std::log10(2.0), 1e-12);
    EXPECT_NEAR_REL(bolt_force_left(999_h).typical, 1.0 - 0.10 - 0.06, 1e-12);
    EXPECT_NEAR_REL(bolt_force_left(999_h).low, 1.0 - 0.20 - 0.12, 1e-12);
    EXPECT_NEAR_REL(1.0 - bolt_force_left(999_h, bolted_pair::with_aluminium).typical, 2.0 * 0.16, 1e-12);
    EXPECT_NEAR_REL(1.0 - bolt_force_left(999_h, bolted_pair::with_aluminium, true).typical, 0.16, 1e-12);
    EXPECT_GT(bolt_force_left(999_h, bolted_pair::copper_only, false, true).typical, bolt_force_left(999_h).typical);
    double last = 1.0;
    for (double seconds = 1.0; seconds < 1e9; seconds *= 2.0) {
        const band<double> now = bolt_force_left(in_si<duration>(seconds), bolted_pair::with_aluminium);
        EXPECT_LE(now.typical, last);
        EXPECT_LE(now.low, now.typical);
        EXPECT_LE(now.typical, now.high);
        EXPECT_GE(now.low, 0.0);
        last = now.typical;
    }
    EXPECT_REFUSES_BAD_NUMBERS(bolt_force_left(in_si<duration>(x)));
}
